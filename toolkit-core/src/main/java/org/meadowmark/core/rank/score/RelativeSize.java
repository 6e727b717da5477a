package org.meadowmark.core.rank.score;

import java.util.Arrays;
import org.apache.commons.statistics.descriptive.Median;
import org.apache.commons.statistics.descriptive.Quantile;

/**
 * Brings a quantity of 0 or more without an upper limit into 0–1: x/(x + q), q the 90th percentile
 * of the survey's values above 0. So 0 stays 0 and q is 0.5. Dividing by the largest value would
 * let one extreme press all others towards 0; the median in place of q would tell the worst
 * segments hardly apart. Not a published measure: common practice, no source.
 *
 * <p>The percentile is of type 7 of Hyndman, R. J. & Fan, Y. (1996), <i>Sample quantiles in
 * statistical packages</i>, The American Statistician 50:361–365.
 */
final class RelativeSize {
  private static final double HIGH = 0.9;

  private final double high;

  private RelativeSize(double high) {
    this.high = high;
  }

  /** Scale of values, of which those that are not a number are left out. */
  static RelativeSize among(double[] values) {
    double[] positive = Arrays.stream(values).filter(value -> value > 0).toArray();
    return new RelativeSize(
        positive.length == 0
            ? 1
            : Quantile.withDefaults().with(Quantile.EstimationMethod.HF7).evaluate(positive, HIGH));
  }

  /** Median of values; of an even number the mean of the middle two. */
  static double median(double[] values) {
    return Median.withDefaults().evaluate(values.clone());
  }

  /** The value in 0–1; what is not a number stays so. */
  double of(double value) {
    return value / (value + high);
  }

  double[] of(double[] values) {
    return Arrays.stream(values).map(this::of).toArray();
  }
}
