package org.meadowmark.core.rank.statistics;

/**
 * Which metres of which scar lie on which segment. Scars and segments are known by position.
 * Immutable.
 */
public final class ScarParts {
  private final int[] segments;
  private final double[] metres;

  /**
   * Takes parts in any order; a scar has at most one part on a segment.
   *
   * @param scars scar of each part
   * @param segments segment of each part
   * @param metres length of each part
   * @throws IllegalArgumentException if the arrays differ in length, a position is negative, or a
   *     length is negative or not finite
   */
  public ScarParts(int[] scars, int[] segments, double[] metres) {
    if (scars.length != segments.length || scars.length != metres.length) {
      throw new IllegalArgumentException("scars, segments and metres differ in number");
    }
    for (int i = 0; i < scars.length; i++) {
      if (scars[i] < 0 || segments[i] < 0 || !(metres[i] >= 0) || Double.isInfinite(metres[i])) {
        throw new IllegalArgumentException(
            "no part: scar " + scars[i] + " segment " + segments[i] + " metres " + metres[i]);
      }
    }
    this.segments = segments.clone();
    this.metres = metres.clone();
  }

  /** Length of each part. */
  double[] metres() {
    return metres.clone();
  }

  /** Metres of scar on each segment. */
  double[] metresBySegment(int segmentCount) {
    double[] sums = new double[segmentCount];
    for (int i = 0; i < metres.length; i++) {
      sums[segments[i]] += metres[i];
    }
    return sums;
  }
}
