package org.meadowmark.core.rank.statistics;

import java.util.Arrays;

/**
 * Which metres of which scar lie on which segment. Scars and segments are known by position.
 * Immutable.
 */
public final class ScarParts {
  private final int[] scars;
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
    this.scars = scars.clone();
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

  /**
   * Number of scars by the one segment that has most of each; of two with as much, the lower
   * position.
   */
  int[] scarsByMainSegment(int segmentCount) {
    int scarCount = Arrays.stream(scars).max().orElse(-1) + 1;
    int[] main = new int[scarCount];
    Arrays.fill(main, -1);
    double[] most = new double[scarCount];
    for (int i = 0; i < metres.length; i++) {
      int scar = scars[i];
      boolean first = main[scar] < 0;
      boolean tied = !first && metres[i] == most[scar] && segments[i] < main[scar];
      if (first || metres[i] > most[scar] || tied) {
        main[scar] = segments[i];
        most[scar] = metres[i];
      }
    }
    int[] counts = new int[segmentCount];
    for (int segment : main) {
      if (segment >= 0) {
        counts[segment]++;
      }
    }
    return counts;
  }
}
