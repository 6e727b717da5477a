package org.meadowmark.core.measure;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.apache.commons.statistics.descriptive.Quantile;

/**
 * Distribution of widths or distances, in metres; the values are empty where there is none.
 *
 * <p>Quantiles interpolate between order statistics: type 7 of Hyndman, R. J. and Fan, Y. (1996),
 * <i>Sample quantiles in statistical packages</i>, The American Statistician 50:361–365.
 *
 * @param count number of values
 * @param minimumMetres smallest
 * @param medianMetres median
 * @param ninetiethPercentileMetres 90th percentile
 * @param maximumMetres largest
 */
public record LengthDistribution(
    int count,
    OptionalDouble minimumMetres,
    OptionalDouble medianMetres,
    OptionalDouble ninetiethPercentileMetres,
    OptionalDouble maximumMetres) {

  /** The distribution of no value. */
  public static final LengthDistribution NONE =
      new LengthDistribution(
          0,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty());

  /**
   * {@return the distribution of some values, in any order} Time n log n.
   *
   * @param metres the values; the array is left as it is
   */
  public static LengthDistribution of(double[] metres) {
    if (metres.length == 0) {
      return NONE;
    }
    double[] sorted = metres.clone();
    Arrays.sort(sorted);
    return new LengthDistribution(
        sorted.length,
        OptionalDouble.of(sorted[0]),
        OptionalDouble.of(quantile(sorted, 0.5)),
        OptionalDouble.of(quantile(sorted, 0.9)),
        OptionalDouble.of(sorted[sorted.length - 1]));
  }

  static double quantile(double[] values, double probability) {
    // Without the copy the library reorders the array while it selects.
    return Quantile.withDefaults()
        .withCopy(true)
        .with(Quantile.EstimationMethod.HF7)
        .evaluate(values, probability);
  }
}
