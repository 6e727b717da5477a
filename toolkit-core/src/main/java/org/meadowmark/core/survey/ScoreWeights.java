package org.meadowmark.core.survey;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What each term of the ranking score weighs. Only the proportions matter.
 *
 * @param byTerm a weight of 0 or more for every term, at least one above 0
 */
public record ScoreWeights(Map<ScoreTerm, Double> byTerm) {
  /**
   * Gives terms that are not named the weight 0.
   *
   * @param byTerm a weight of 0 or more for every term, at least one above 0
   * @throws IllegalArgumentException if a weight is negative or not finite, or all are 0
   */
  public ScoreWeights {
    Map<ScoreTerm, Double> all = new EnumMap<>(ScoreTerm.class);
    double sum = 0;
    for (ScoreTerm term : ScoreTerm.values()) {
      double weight = byTerm.getOrDefault(term, 0.0);
      if (!(weight >= 0) || Double.isInfinite(weight)) {
        throw new IllegalArgumentException(term.key() + " has weight " + weight);
      }
      all.put(term, weight);
      sum += weight;
    }
    if (!(sum > 0)) {
      throw new IllegalArgumentException("no term has a weight");
    }
    byTerm = Collections.unmodifiableMap(all);
  }

  /**
   * {@return weight of a term}
   *
   * @param term one of the terms
   */
  public double of(ScoreTerm term) {
    return byTerm.get(term);
  }

  /** As in a survey file: {@code rate:3 hot-spot:2 …}. */
  @Override
  public String toString() {
    return Arrays.stream(ScoreTerm.values())
        .map(term -> term.key() + ":" + PlainNumber.of(byTerm.get(term)))
        .collect(Collectors.joining(" "));
  }
}
