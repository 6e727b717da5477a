package org.meadowmark.core.rank.score;

import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.meadowmark.core.measure.uncertainty.WidthError;
import org.meadowmark.core.rank.evidence.ScarredArea;
import org.meadowmark.core.rank.evidence.SegmentEvidence;
import org.meadowmark.core.survey.RankingParameters;
import org.meadowmark.core.survey.ScoreTerm;

/**
 * How often a segment stays in the top ten when weights and widths are drawn.
 *
 * <p>Each weight is drawn evenly from the stated share below to the stated share above its value.
 * Widths act on one term, scarred area: default widths of a cause err together by one lognormal
 * factor a draw, measured widths of a segment by a lognormal factor with the coefficient of
 * variation that independent errors of its scars add up to. Severity classes of beds, lengths,
 * angles and depths are held.
 *
 * <p>Time is linear in draws times segments: the top ten are selected, not sorted. Segments come in
 * the order of the measured score, so that most are passed over because even the largest possible
 * scarred area would not bring them in; that changes no result. Draws do not depend on threads.
 */
final class TopTenSteadiness {
  private static final int SCARRED_AREA = ScoreTerm.SCARRED_AREA.ordinal();

  private final TermTable terms;
  private final RankingParameters parameters;
  private final long seed;
  private final int[] order;

  TopTenSteadiness(TermTable terms, double[] scores, RankingParameters parameters, long seed) {
    this.terms = terms;
    this.parameters = parameters;
    this.seed = seed;
    this.order =
        IntStream.range(0, scores.length)
            .boxed()
            .sorted(Comparator.comparingDouble((Integer i) -> -scores[i]))
            .mapToInt(Integer::intValue)
            .toArray();
  }

  /** The error of the widths of one segment. */
  private record SegmentWidths(
      double measured, WidthError measuredError, int[] causes, double[] defaults, double exposure) {

    double squareMetresPerHectare(int draw, double[] factorByCause) {
      double area = measured > 0 ? measured * measuredError.factor(draw) : 0;
      for (int c = 0; c < causes.length; c++) {
        area += defaults[c] * factorByCause[causes[c]];
      }
      return area / exposure;
    }
  }

  OptionalDouble[] shares(
      List<String> ids,
      List<SegmentEvidence> evidence,
      double[] exposures,
      Map<String, Double> widthVariationByCause) {
    OptionalDouble[] shares = new OptionalDouble[terms.size()];
    if (parameters.scoreDraws() == 0) {
      Arrays.fill(shares, OptionalDouble.empty());
      return shares;
    }
    List<String> causes =
        evidence.stream()
            .flatMap(e -> e.scarredArea().defaultSquareMetres().keySet().stream())
            .distinct()
            .sorted()
            .toList();
    List<WidthError> errors =
        causes.stream()
            .map(
                cause ->
                    WidthError.shared(seed, cause, widthVariationByCause.getOrDefault(cause, 0.0)))
            .toList();
    SegmentWidths[] widths = widths(ids, evidence, exposures, causes);
    double[][] weights = weights();
    int[] hits =
        IntStream.range(0, parameters.scoreDraws())
            .parallel()
            .mapToObj(
                draw ->
                    draw(
                        weights[draw],
                        widths,
                        errors.stream().mapToDouble(error -> error.factor(draw)).toArray(),
                        draw))
            .collect(
                () -> new int[terms.size()],
                (counts, top) -> {
                  for (int place = 0; place < top.size(); place++) {
                    counts[top.segment(place)]++;
                  }
                },
                (counts, others) -> Arrays.setAll(counts, i -> counts[i] + others[i]));
    Arrays.setAll(shares, i -> OptionalDouble.of((double) hits[i] / parameters.scoreDraws()));
    return shares;
  }

  private TopTen draw(double[] weights, SegmentWidths[] widths, double[] factorByCause, int draw) {
    WeightedMean mean = new WeightedMean(weights);
    TopTen top = new TopTen();
    for (int segment : order) {
      int missing = terms.missingBits(segment);
      double others = mean.sum(terms, segment, SCARRED_AREA);
      double most = mean.mean(others + mean.weight(SCARRED_AREA), missing);
      if (most >= top.threshold()) {
        double area = widths[segment].squareMetresPerHectare(draw, factorByCause);
        double term = terms.scarredAreaScale().of(area);
        top.offer(segment, mean.mean(others + mean.weight(SCARRED_AREA) * term, missing));
      }
    }
    return top;
  }

  private double[][] weights() {
    SplittableRandom random = new SplittableRandom(seed);
    double spread = parameters.scoreWeightSpread();
    double[][] weights = new double[parameters.scoreDraws()][ScoreTerm.values().length];
    for (double[] drawn : weights) {
      for (ScoreTerm term : ScoreTerm.values()) {
        double factor = 1 + spread * (2 * random.nextDouble() - 1);
        drawn[term.ordinal()] = parameters.scoreWeights().of(term) * factor;
      }
    }
    return weights;
  }

  private SegmentWidths[] widths(
      List<String> ids, List<SegmentEvidence> evidence, double[] exposures, List<String> causes) {
    Map<String, Integer> places = new HashMap<>();
    causes.forEach(cause -> places.put(cause, places.size()));
    SegmentWidths[] widths = new SegmentWidths[ids.size()];
    for (int i = 0; i < widths.length; i++) {
      ScarredArea area = evidence.get(i).scarredArea();
      double measured = area.measuredSquareMetres();
      widths[i] =
          new SegmentWidths(
              measured,
              WidthError.own(
                  seed,
                  ids.get(i),
                  measured > 0 ? area.measuredDeviationSquareMetres() / measured : 0),
              area.defaultSquareMetres().keySet().stream().mapToInt(places::get).toArray(),
              area.defaultSquareMetres().values().stream()
                  .mapToDouble(Double::doubleValue)
                  .toArray(),
              exposures[i]);
    }
    return widths;
  }
}
