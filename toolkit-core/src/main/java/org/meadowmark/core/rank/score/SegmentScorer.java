package org.meadowmark.core.rank.score;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.meadowmark.core.rank.evidence.SegmentEvidence;
import org.meadowmark.core.rank.statistics.SegmentStatistics;
import org.meadowmark.core.survey.RankingParameters;
import org.meadowmark.core.survey.ScoreTerm;

/**
 * Scores segments: the weighted mean of the terms that are known. A missing term is left out and
 * the others weigh as much more; a segment that comes into the top ten only so is labelled.
 *
 * <p>Time is linear in segments, and in draws times segments for the steadiness of the top ten.
 */
public final class SegmentScorer {
  private final RankingParameters parameters;
  private final long seed;
  private final Map<String, Double> widthVariationByCause;

  /**
   * Creates a scorer.
   *
   * @param parameters weights, their spread and the number of draws
   * @param seed seed of the draws
   * @param widthVariationByCause coefficient of variation of the default width of each cause
   */
  public SegmentScorer(
      RankingParameters parameters, long seed, Map<String, Double> widthVariationByCause) {
    this.parameters = parameters;
    this.seed = seed;
    this.widthVariationByCause = Map.copyOf(widthVariationByCause);
  }

  /**
   * Scores segments that have a rate, given in the order of their ids so that ties fall to the
   * lower id.
   *
   * @param ids segment ids
   * @param evidence evidence of each
   * @param statistics statistics of each
   * @param exposuresHectares bed in reach of each, more than 0
   * @return scores in the same order; a segment none of whose weighted terms is known scores 0
   */
  public List<SegmentScore> score(
      List<String> ids,
      List<SegmentEvidence> evidence,
      List<SegmentStatistics> statistics,
      double[] exposuresHectares) {
    TermTable terms = TermTable.of(evidence, statistics, exposuresHectares);
    double[] weights = weights();
    WeightedMean mean = new WeightedMean(weights);
    double[] scores =
        IntStream.range(0, terms.size()).mapToDouble(i -> mean.of(terms, i)).toArray();
    TopTen leading = new TopTen();
    for (int i = 0; i < scores.length; i++) {
      leading.offer(i, scores[i]);
    }
    OptionalDouble[] steadiness =
        new TopTenSteadiness(terms, scores, parameters, seed)
            .shares(ids, evidence, exposuresHectares, widthVariationByCause);
    boolean[] doubtful = new boolean[scores.length];
    for (int place = 0; place < leading.size(); place++) {
      int segment = leading.segment(place);
      doubtful[segment] = isHighForWantOfData(segment, terms, weights, scores);
    }
    List<SegmentScore> result = new ArrayList<>();
    for (int i = 0; i < scores.length; i++) {
      result.add(
          new SegmentScore(
              scores[i], known(terms, i), missing(terms, i), doubtful[i], steadiness[i]));
    }
    return result;
  }

  private double[] weights() {
    double[] weights = new double[ScoreTerm.values().length];
    for (ScoreTerm term : ScoreTerm.values()) {
      weights[term.ordinal()] = parameters.scoreWeights().of(term);
    }
    return weights;
  }

  /** Whether ten others come before the segment once its missing terms are the survey's medians. */
  private boolean isHighForWantOfData(
      int segment, TermTable terms, double[] weights, double[] scores) {
    List<ScoreTerm> missing = missing(terms, segment);
    if (missing.isEmpty()) {
      return false;
    }
    double sum = 0;
    double weight = 0;
    for (ScoreTerm term : ScoreTerm.values()) {
      int t = term.ordinal();
      double value = terms.value(t, segment);
      if (missing.contains(term)) {
        value = terms.median(t);
      }
      if (!Double.isNaN(value)) {
        sum += weights[t] * value;
        weight += weights[t];
      }
    }
    double ordinary = sum / weight;
    long before =
        IntStream.range(0, scores.length)
            .filter(i -> i != segment)
            .filter(i -> scores[i] > ordinary || scores[i] == ordinary && i < segment)
            .count();
    return before >= TopTen.SIZE;
  }

  private static Map<ScoreTerm, Double> known(TermTable terms, int segment) {
    Map<ScoreTerm, Double> known = new EnumMap<>(ScoreTerm.class);
    for (ScoreTerm term : ScoreTerm.values()) {
      double value = terms.value(term.ordinal(), segment);
      if (!Double.isNaN(value)) {
        known.put(term, value);
      }
    }
    return known;
  }

  private List<ScoreTerm> missing(TermTable terms, int segment) {
    List<ScoreTerm> missing = new ArrayList<>();
    for (ScoreTerm term : ScoreTerm.values()) {
      if (Double.isNaN(terms.value(term.ordinal(), segment))
          && parameters.scoreWeights().of(term) > 0
          && !terms.isMissingEverywhere(term)) {
        missing.add(term);
      }
    }
    return missing;
  }
}
