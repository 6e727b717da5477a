package org.meadowmark.core.rank.statistics;

import java.util.OptionalDouble;

/**
 * A rate drawn towards the rate of other segments, as far as its own exposure is small.
 *
 * @param estimate smoothed rate, in units of amount per exposure; empty without exposure
 * @param low lower limit of the interval; empty where the estimate is
 * @param high upper limit of the interval; empty where the estimate is
 * @param collapsed whether the rates differ no more than chance makes them differ, so that every
 *     estimate is the mean and the interval has no width; this is no sign of certainty
 */
public record ShrunkenRate(
    OptionalDouble estimate, OptionalDouble low, OptionalDouble high, boolean collapsed) {
  static final ShrunkenRate UNDEFINED =
      new ShrunkenRate(
          OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), false);

  static ShrunkenRate at(double mean) {
    return new ShrunkenRate(
        OptionalDouble.of(mean), OptionalDouble.of(mean), OptionalDouble.of(mean), true);
  }
}
