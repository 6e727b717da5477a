package org.meadowmark.core.rank.evidence;

import org.meadowmark.core.survey.RankingParameters;

/**
 * How the scars of a segment lie to its channel; shares of scar length, in 0–1.
 *
 * @param meanAngleDegrees mean angle to the channel at the nearest point, 0–90, weighted by length
 * @param alongShare at a small angle
 * @param alongEdgeShare the part of that near the channel's edge
 * @param insideBendShare the part of that on the inside of a bend
 * @param acrossShare at a large angle
 */
public record ScarLie(
    double meanAngleDegrees,
    double alongShare,
    double alongEdgeShare,
    double insideBendShare,
    double acrossShare) {

  /**
   * {@return the first pattern, in the order of {@link ScarPattern}, that has the share needed;
   * {@link ScarPattern#NONE} where none has it}
   *
   * @param limits share of scar length that makes a pattern
   */
  public ScarPattern pattern(RankingParameters limits) {
    if (insideBendShare >= limits.patternShare()) {
      return ScarPattern.CORNER_CUTTING;
    }
    if (alongEdgeShare >= limits.patternShare()) {
      return ScarPattern.ALONG_EDGE;
    }
    return acrossShare >= limits.patternShare() ? ScarPattern.SHORT_CUT : ScarPattern.NONE;
  }
}
