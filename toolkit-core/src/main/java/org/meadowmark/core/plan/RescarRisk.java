package org.meadowmark.core.plan;

import java.util.OptionalDouble;

/**
 * How likely the ground of a scar is to be scarred again.
 *
 * <p>Model: new scars fall on the bed in reach of a segment at random and evenly (Poisson). What is
 * seen, scar length times width, has gathered over the time that a scar stays visible, so in a year
 * the scarred part of the bed divided by that time is hit anew, and a point is hit with chance 1 −
 * exp(−rate). The rates of the segments that a scar is attributed to count by its length on each.
 *
 * @param ratePerYear expected hits of a point a year; empty where no segment's rate is known
 * @param rateWithMarker the same with the proposed zones marked
 * @param reScarredShare share of new scar length at its segments on ground scarred in an earlier
 *     season, in 0–1; empty with one season
 * @param isInZone whether a zone is proposed for one of its segments
 */
public record RescarRisk(
    OptionalDouble ratePerYear,
    OptionalDouble rateWithMarker,
    OptionalDouble reScarredShare,
    boolean isInZone) {
  /** Nothing is known. */
  static final RescarRisk UNKNOWN =
      new RescarRisk(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), false);

  /** {@return chance that a point is hit within a year, in 0–1} */
  public OptionalDouble chancePerYear() {
    return chance(ratePerYear);
  }

  /** {@return the same with the proposed zones marked} */
  public OptionalDouble chanceWithMarker() {
    return chance(rateWithMarker);
  }

  /**
   * {@return chance that a point is not hit for some years, in 0–1, without a marker; 1 where
   * nothing is known}
   *
   * @param years how long, 0 or more; parts of years count
   */
  public double staysWhole(double years) {
    return Math.exp(-ratePerYear.orElse(0) * years);
  }

  private static OptionalDouble chance(OptionalDouble rate) {
    return rate.isPresent()
        ? OptionalDouble.of(-Math.expm1(-rate.getAsDouble()))
        : OptionalDouble.empty();
  }
}
