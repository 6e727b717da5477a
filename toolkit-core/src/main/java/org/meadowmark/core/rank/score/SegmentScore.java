package org.meadowmark.core.rank.score;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.meadowmark.core.survey.ScoreTerm;

/**
 * The score of a segment.
 *
 * @param score mean of the terms known, weighted, in 0–1
 * @param terms the terms known, each in 0–1
 * @param missing terms with a weight that are not known here though they are elsewhere in the
 *     survey, in the order of {@link ScoreTerm}
 * @param highForWantOfData whether the segment is in the top ten only because missing terms are
 *     left out: with each at the survey's median it would not be
 * @param topTenShare share of draws, in 0–1, in which the segment is in the top ten; empty where
 *     nothing was drawn
 */
public record SegmentScore(
    double score,
    Map<ScoreTerm, Double> terms,
    List<ScoreTerm> missing,
    boolean highForWantOfData,
    OptionalDouble topTenShare) {
  /**
   * Keeps copies that cannot be changed, the terms in the order of {@link ScoreTerm}.
   *
   * @param score mean of the terms known, weighted, in 0–1
   * @param terms the terms known, each in 0–1
   * @param missing terms with a weight that are not known here though they are elsewhere in the
   *     survey, in the order of {@link ScoreTerm}
   * @param highForWantOfData whether the segment is in the top ten only because missing terms are
   *     left out: with each at the survey's median it would not be
   * @param topTenShare share of draws, in 0–1, in which the segment is in the top ten; empty where
   *     nothing was drawn
   * @throws NullPointerException if the terms, the list or an entry of the list is null
   */
  public SegmentScore {
    Map<ScoreTerm, Double> inOrder = new EnumMap<>(ScoreTerm.class);
    inOrder.putAll(terms);
    terms = Collections.unmodifiableMap(inOrder);
    missing = List.copyOf(missing);
  }

  /**
   * {@return value of a term, in 0–1; empty where it is missing}
   *
   * @param term which of the terms
   */
  public OptionalDouble term(ScoreTerm term) {
    Double value = terms.get(term);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
