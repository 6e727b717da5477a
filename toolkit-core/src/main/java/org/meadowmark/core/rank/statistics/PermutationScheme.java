package org.meadowmark.core.rank.statistics;

/**
 * What is drawn at random to see how often chance gives as high a Gi*.
 *
 * <p>The two ask different questions: Sokal, Oden &amp; Thomson (1998), <i>Local spatial
 * autocorrelation in a biological model</i>, Geographical Analysis 30:331–354 (from memory).
 */
public enum PermutationScheme {
  /**
   * The segment keeps its value, its neighbours are drawn from all others: is the segment among
   * high neighbours? Finds nothing in a hot spot of few segments, whose ends have one high
   * neighbour each. A segment without neighbours cannot be tested.
   */
  CONDITIONAL,
  /**
   * The segment and its neighbours are drawn from all segments: is the stretch as a whole high? It
   * is the arrangement whose mean and variance Gi* is made with, since Gi* counts the segment
   * itself: Ord &amp; Getis (1995), Geographical Analysis 27:286–306.
   */
  TOTAL
}
