package org.meadowmark.core.model;

import java.util.function.DoubleUnaryOperator;

/**
 * A figure that is known only within limits.
 *
 * @param low low end
 * @param middle what is thought most fitting; not less than {@code low}
 * @param high high end; not less than {@code middle}
 */
public record Range(double low, double middle, double high) {
  /**
   * Checks the order.
   *
   * @param low low end
   * @param middle what is thought most fitting; not less than {@code low}
   * @param high high end; not less than {@code middle}
   * @throws IllegalArgumentException if the three are not finite or not in ascending order
   */
  public Range {
    if (!(low <= middle && middle <= high) || Double.isInfinite(low) || Double.isInfinite(high)) {
      throw new IllegalArgumentException("no range: " + low + ", " + middle + ", " + high);
    }
  }

  /**
   * {@return a figure without doubt}
   *
   * @param value the figure, which is low end, middle and high end at once; finite
   */
  public static Range exactly(double value) {
    return new Range(value, value, value);
  }

  /**
   * {@return the range that holds a middle figure and two others, whichever of them is the larger}
   *
   * @param middle the figure that is thought most fitting
   * @param one another figure that the range is to hold
   * @param other a third one
   * @throws IllegalArgumentException if one of the three is not finite
   */
  public static Range around(double middle, double one, double other) {
    return new Range(
        Math.min(middle, Math.min(one, other)), middle, Math.max(middle, Math.max(one, other)));
  }

  /**
   * {@return the range of a figure that grows with this one}
   *
   * @param rising how the other figure follows from this one; must not fall as this one grows
   * @throws IllegalArgumentException if the results are not finite or not in ascending order
   */
  public Range map(DoubleUnaryOperator rising) {
    return new Range(
        rising.applyAsDouble(low), rising.applyAsDouble(middle), rising.applyAsDouble(high));
  }

  /**
   * {@return sum, low with low and high with high: the two are wrong together}
   *
   * @param other the range to add, in the same unit
   */
  public Range plus(Range other) {
    return new Range(low + other.low, middle + other.middle, high + other.high);
  }
}
