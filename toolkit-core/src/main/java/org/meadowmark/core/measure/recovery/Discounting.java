package org.meadowmark.core.measure.recovery;

import org.meadowmark.core.survey.WithinYear;

/**
 * How service in later years is discounted.
 *
 * @param ratePerYear discount rate a year, 0.03 for 3 %; 0 is no discounting
 * @param withinYear when a year's service counts
 */
public record Discounting(double ratePerYear, WithinYear withinYear) {
  /**
   * Refuses figures out of their limits.
   *
   * @param ratePerYear discount rate a year, 0.03 for 3 %; 0 is no discounting
   * @param withinYear when a year's service counts
   * @throws IllegalArgumentException if the rate is negative or not finite
   */
  public Discounting {
    if (!(ratePerYear >= 0) || Double.isInfinite(ratePerYear)) {
      throw new IllegalArgumentException("discount rate must be 0 or more: " + ratePerYear);
    }
  }

  /**
   * {@return weight of a year's service, (1 + r)^−(years + moment within the year)}
   *
   * @param yearsFromBase whole years from the base year to the year; negative for earlier years
   */
  public double factor(int yearsFromBase) {
    return Math.pow(1 + ratePerYear, -(yearsFromBase + withinYear.years()));
  }

  /**
   * {@return sum of the weights of a year and all years after it; infinite without discounting}
   *
   * @param yearsFromBase whole years from the base year to the first one that counts; negative for
   *     earlier years
   */
  public double factorFromThenOn(int yearsFromBase) {
    return ratePerYear == 0
        ? Double.POSITIVE_INFINITY
        : factor(yearsFromBase) * (1 + ratePerYear) / ratePerYear;
  }
}
