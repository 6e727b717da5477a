package org.meadowmark.core.rank.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.TestParameters;
import org.meadowmark.core.measure.uncertainty.WidthError;
import org.meadowmark.core.rank.evidence.BedsInReach;
import org.meadowmark.core.rank.evidence.EdgeContact;
import org.meadowmark.core.rank.evidence.ScarDepth;
import org.meadowmark.core.rank.evidence.ScarPattern;
import org.meadowmark.core.rank.evidence.ScarredArea;
import org.meadowmark.core.rank.evidence.SegmentEvidence;
import org.meadowmark.core.rank.statistics.SegmentStatistics;
import org.meadowmark.core.rank.statistics.ShrunkenRate;
import org.meadowmark.core.survey.ScoreTerm;

class SegmentScorerTest {
  private static final double NONE = Double.NaN;
  private static final Map<String, Double> VARIATION = Map.of("propeller", 0.3);

  private final List<String> ids = new ArrayList<>();
  private final List<SegmentEvidence> evidence = new ArrayList<>();
  private final List<SegmentStatistics> statistics = new ArrayList<>();

  /** A segment with 1 ha in reach; what is not a number is missing. */
  private void segment(
      double rate, double p, double edge, double shallow, double severity, ScarredArea area) {
    ids.add(String.format(Locale.ROOT, "s%05d", ids.size()));
    evidence.add(
        new SegmentEvidence(
            Optional.of(new EdgeContact(edge, edge)),
            Optional.empty(),
            ScarPattern.NONE,
            Double.isNaN(shallow) ? Optional.empty() : Optional.of(new ScarDepth(1, shallow, 0.5)),
            new BedsInReach(1, Map.of()),
            "",
            optional(severity),
            area,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            List.of()));
    statistics.add(
        new SegmentStatistics(
            new ShrunkenRate(OptionalDouble.of(rate), optional(rate), optional(rate), false),
            optional(p),
            optional(p),
            optional(p),
            false,
            "",
            ""));
  }

  private static OptionalDouble optional(double value) {
    return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  private static ScarredArea measured(double squareMetres, double variation) {
    return new ScarredArea(squareMetres, squareMetres * variation, Map.of());
  }

  private List<SegmentScore> score(Object... choices) {
    double[] exposures = new double[ids.size()];
    Arrays.fill(exposures, 1);
    var parameters = TestParameters.of(choices);
    return new SegmentScorer(parameters.ranking(), parameters.seed(), VARIATION)
        .score(ids, evidence, statistics, exposures);
  }

  /**
   * By hand: rates 10, 20, 40 have the 90th percentile 20 + 0.8·20 = 36 and give 10/46, 20/56,
   * 40/76; p 0.01, 0.3, 0.8 give 0.98, 0.4, 0; areas 3, 1, 1 have 1 + 0.8·2 = 2.6 and give 3/5.6,
   * 1/3.6. Edge and shallow water are parts of the rate's term.
   */
  @Test
  void scoreIsTheWeightedMeanOfTheTerms() {
    segment(10, 0.01, 0.5, 1, 0.25, measured(3, 0));
    segment(20, 0.3, 0, 0.5, 1, measured(1, 0));
    segment(40, 0.8, 1, 0, NONE, measured(1, 0));
    List<SegmentScore> scores =
        score(
            "score_weights",
            "rate:3 hot-spot:2 edge:1 shallow:1 scarred-area:1 severity:1 connectivity:5",
            "score_draws",
            0);
    assertThat(scores.get(0).score())
        .isCloseTo(((3 + 0.5 + 1) * 10.0 / 46 + 2 * 0.98 + 3 / 5.6 + 0.25) / 9, within(1e-12));
    assertThat(scores.get(1).score())
        .isCloseTo(((3 + 0 + 0.5) * 20.0 / 56 + 2 * 0.4 + 1 / 3.6 + 1) / 9, within(1e-12));
    assertThat(scores.get(2).score())
        .isCloseTo(((3 + 1 + 0) * 40.0 / 76 + 0 + 1 / 3.6) / 8, within(1e-12));
    assertThat(scores.get(2).missing()).containsExactly(ScoreTerm.SEVERITY);
    assertThat(scores.get(2).term(ScoreTerm.SEVERITY)).isEmpty();
    assertThat(scores.get(0).missing()).isEmpty();
    assertThat(scores.get(0).term(ScoreTerm.CONNECTIVITY)).isEmpty();
    assertThat(scores.get(0).topTenShare()).isEmpty();
  }

  /** Twelve segments; the first has no depth, and its other terms are as good as the best. */
  @Test
  void aSegmentThatIsHighOnlyForWantOfDataIsLabelled() {
    segment(20, 0.5, 0.9, NONE, NONE, measured(0, 0));
    for (int i = 0; i < 11; i++) {
      segment(20, 0.5, 0.9, i < 10 ? 0.8 : 0.1, NONE, measured(0, 0));
    }
    String weights = "edge:1 shallow:1";
    // The rate's term is a half. Alone 0.45; with the median of 0.4 it is 0.425, as ten others of a
    // later id: still in.
    List<SegmentScore> kept = score("score_weights", weights, "score_draws", 0);
    assertThat(kept.get(0).score()).isCloseTo(0.45, within(1e-12));
    assertThat(kept.get(0).highForWantOfData()).isFalse();

    ids.clear();
    evidence.clear();
    statistics.clear();
    segment(20, 0.5, 0.88, NONE, NONE, measured(0, 0));
    for (int i = 0; i < 11; i++) {
      segment(20, 0.5, 0.9, i < 10 ? 0.8 : 0.1, NONE, measured(0, 0));
    }
    // Alone 0.44, the highest; with the median 0.42, behind ten of 0.425.
    List<SegmentScore> labelled = score("score_weights", weights, "score_draws", 0);
    assertThat(labelled.get(0).highForWantOfData()).isTrue();
    assertThat(labelled.stream().filter(SegmentScore::highForWantOfData)).hasSize(1);
  }

  @Test
  void withoutSpreadAndWidthErrorsTheTopTenIsCertain() {
    for (int i = 0; i < 30; i++) {
      segment(1 + i, 0.5, i / 30.0, NONE, NONE, measured(i, 0));
    }
    List<SegmentScore> scores = score("score_weight_spread", 0, "score_draws", 20);
    for (int i = 0; i < 30; i++) {
      assertThat(scores.get(i).topTenShare()).hasValue(i >= 20 ? 1 : 0);
    }
  }

  /**
   * Nine segments are far ahead and two contend for the tenth place by scarred area alone. With
   * areas a and b and lognormal factors of log-deviation s each, the first wins with probability
   * Φ(ln(a/b) / (s·√2)), by the normal distribution of a general statistics library.
   */
  @Test
  void widthsDecideBetweenTwoSegmentsAsTheNormalDistributionSays() {
    for (int i = 0; i < 9; i++) {
      segment(1, 0.5, 0, NONE, NONE, measured(1e6, 0));
    }
    segment(1, 0.5, 0, NONE, NONE, measured(120, 0.3));
    segment(1, 0.5, 0, NONE, NONE, measured(100, 0.3));
    int draws = 20_000;
    List<SegmentScore> scores =
        score("score_weights", "scarred-area:1", "score_draws", draws, "score_weight_spread", 0);
    double deviation = Math.sqrt(Math.log1p(0.09));
    double expected =
        NormalDistribution.of(0, 1).cumulativeProbability(Math.log(1.2) / deviation / Math.sqrt(2));
    assertThat(expected).isBetween(0.6, 0.7);
    double standardError = Math.sqrt(expected * (1 - expected) / draws);
    assertThat(scores.get(9).topTenShare().orElseThrow())
        .isCloseTo(expected, within(4 * standardError));
    assertThat(scores.get(10).topTenShare().orElseThrow())
        .isCloseTo(1 - expected, within(4 * standardError));
  }

  /** Default widths of one cause err together, so they never change the order of two segments. */
  @Test
  void defaultWidthsOfACauseErrTogether() {
    for (int i = 0; i < 9; i++) {
      segment(1, 0.5, 0, NONE, NONE, measured(1e6, 0));
    }
    segment(1, 0.5, 0, NONE, NONE, new ScarredArea(0, 0, Map.of("propeller", 101.0)));
    segment(1, 0.5, 0, NONE, NONE, new ScarredArea(0, 0, Map.of("propeller", 100.0)));
    List<SegmentScore> scores = score("score_weights", "scarred-area:1", "score_draws", 500);
    assertThat(scores.get(9).topTenShare()).hasValue(1);
    assertThat(scores.get(10).topTenShare()).hasValue(0);
  }

  /** Weights of two terms drawn evenly in ±50 %: a contender with a against b wins by w₁ > w₂. */
  @Test
  void weightsDecideBetweenTwoSegmentsHalfTheTime() {
    for (int i = 0; i < 9; i++) {
      segment(1, 0, 1, 1, 1, measured(0, 0));
    }
    segment(1, 0.5, 0.6, 0.4, NONE, measured(0, 0));
    segment(1, 0.5, 0.4, 0.6, NONE, measured(0, 0));
    int draws = 10_000;
    List<SegmentScore> scores = score("score_weights", "edge:1 shallow:1", "score_draws", draws);
    assertThat(scores.get(9).topTenShare().orElseThrow())
        .isCloseTo(0.5, within(4 * Math.sqrt(0.25 / draws)));
  }

  /** Against every draw worked out in full and sorted, without passing anything over. */
  @Test
  void selectionAgreesWithSortingEveryDraw() {
    Random random = new Random(5);
    for (int i = 0; i < 300; i++) {
      double area = random.nextInt(4) == 0 ? 0 : 50 * random.nextDouble();
      segment(
          100 * random.nextDouble(),
          random.nextInt(5) == 0 ? NONE : random.nextDouble(),
          random.nextDouble(),
          random.nextInt(3) == 0 ? NONE : random.nextDouble(),
          random.nextDouble(),
          new ScarredArea(
              area, area * 0.3, random.nextBoolean() ? Map.of("propeller", 30.0) : Map.of()));
    }
    int draws = 200;
    List<SegmentScore> scores = score("score_draws", draws, "seed", 9);
    var choices = TestParameters.of().ranking();
    int[] hits = new int[ids.size()];
    double[] areas = evidence.stream().mapToDouble(e -> e.scarredArea().squareMetres()).toArray();
    RelativeSize scale = RelativeSize.among(areas);
    SplittableRandom weightDraws = new SplittableRandom(9);
    for (int draw = 0; draw < draws; draw++) {
      double[] weights = new double[ScoreTerm.values().length];
      for (ScoreTerm term : ScoreTerm.values()) {
        weights[term.ordinal()] =
            choices.scoreWeights().of(term)
                * (1 + choices.scoreWeightSpread() * (2 * weightDraws.nextDouble() - 1));
      }
      double shared = WidthError.shared(9, "propeller", 0.3).factor(draw);
      double[] drawn = new double[ids.size()];
      for (int i = 0; i < drawn.length; i++) {
        double sum = 0;
        double weight = 0;
        for (ScoreTerm term : ScoreTerm.values()) {
          OptionalDouble value = scores.get(i).term(term);
          if (term == ScoreTerm.SCARRED_AREA) {
            ScarredArea area = evidence.get(i).scarredArea();
            double own =
                area.measuredSquareMetres() > 0
                    ? area.measuredSquareMetres() * WidthError.own(9, ids.get(i), 0.3).factor(draw)
                    : 0;
            value =
                OptionalDouble.of(
                    scale.of(
                        own + shared * area.defaultSquareMetres().getOrDefault("propeller", 0.0)));
          }
          if (value.isPresent()) {
            sum += weights[term.ordinal()] * value.getAsDouble();
            weight += weights[term.ordinal()];
          }
        }
        drawn[i] = sum / weight;
      }
      IntStream.range(0, drawn.length)
          .boxed()
          .sorted(Comparator.comparingDouble(i -> -drawn[i]))
          .limit(10)
          .forEach(i -> hits[i]++);
    }
    assertThat(scores.stream().map(s -> s.topTenShare().orElseThrow()).toList())
        .isEqualTo(IntStream.of(hits).mapToObj(h -> (double) h / draws).toList());
    assertThat(IntStream.of(hits).filter(h -> h > 0 && h < draws).count()).isGreaterThan(5);
  }

  @Test
  void equalScoresFallToTheLowerId() {
    for (int i = 0; i < 15; i++) {
      segment(5, 0.5, 0.5, 0.5, 0.5, measured(1, 0));
    }
    List<SegmentScore> scores = score("score_draws", 10);
    for (int i = 0; i < 15; i++) {
      assertThat(scores.get(i).topTenShare()).hasValue(i < 10 ? 1 : 0);
    }
  }

  @Test
  void noSegmentGivesNoScore() {
    assertThat(score()).isEmpty();
  }
}
