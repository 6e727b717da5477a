package org.meadowmark.core.rank.score;

/**
 * The ten highest of scores that come one by one; of equal scores the earlier stays ahead. A score
 * costs one comparison where it is not among them.
 */
final class TopTen {
  static final int SIZE = 10;

  private final double[] scores = new double[SIZE];
  private final int[] segments = new int[SIZE];
  private int size;

  /** A score that does not exceed this cannot enter. */
  double threshold() {
    return size < SIZE ? Double.NEGATIVE_INFINITY : scores[SIZE - 1];
  }

  void offer(int segment, double score) {
    if (!(score > threshold())) {
      return;
    }
    int place = size < SIZE ? size++ : SIZE - 1;
    while (place > 0 && scores[place - 1] < score) {
      scores[place] = scores[place - 1];
      segments[place] = segments[place - 1];
      place--;
    }
    scores[place] = score;
    segments[place] = segment;
  }

  int size() {
    return size;
  }

  /** Segment at a place, 0 the highest. */
  int segment(int place) {
    return segments[place];
  }
}
