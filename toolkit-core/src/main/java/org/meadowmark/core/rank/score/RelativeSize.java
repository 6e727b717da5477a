package org.meadowmark.core.rank.score;

import java.util.Arrays;

/**
 * Brings a quantity of 0 or more without an upper limit into 0–1: x/(x + m), m the median of the
 * survey's values above 0. So 0 stays 0, the median is 0.5, and one extreme value does not press
 * all others towards 0, as dividing by the largest would. Not a published measure: common practice,
 * no source.
 */
final class RelativeSize {
  private final double middle;

  private RelativeSize(double middle) {
    this.middle = middle;
  }

  /** Scale of values, of which those that are not a number are left out. */
  static RelativeSize among(double[] values) {
    double[] positive = Arrays.stream(values).filter(value -> value > 0).toArray();
    return new RelativeSize(positive.length == 0 ? 1 : median(positive));
  }

  /** Median of values; of an even number the mean of the middle two. */
  static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }

  /** The value in 0–1; what is not a number stays so. */
  double of(double value) {
    return value / (value + middle);
  }

  double[] of(double[] values) {
    return Arrays.stream(values).map(this::of).toArray();
  }
}
