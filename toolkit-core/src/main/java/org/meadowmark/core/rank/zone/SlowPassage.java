package org.meadowmark.core.rank.zone;

/**
 * What a slow zone costs a boat that passes through it.
 *
 * @param usualKilometresPerHour speed without the zone
 * @param slowKilometresPerHour speed in the zone
 * @param extraMinutes additional time for one passage over the zone's length; 0 where the usual
 *     speed is no higher than the slow one
 */
public record SlowPassage(
    double usualKilometresPerHour, double slowKilometresPerHour, double extraMinutes) {

  /** The international nautical mile, by definition. */
  private static final double KILOMETRES_PER_NAUTICAL_MILE = 1.852;

  private static final double MINUTES_PER_HOUR = 60;
  private static final double METRES_PER_KILOMETRE = 1000;

  /** The passage over a length. */
  static SlowPassage over(double lengthMetres, double usualKmPerHour, double slowKmPerHour) {
    double minutesAtOne = MINUTES_PER_HOUR * lengthMetres / METRES_PER_KILOMETRE;
    double extra = minutesAtOne / slowKmPerHour - minutesAtOne / usualKmPerHour;
    return new SlowPassage(usualKmPerHour, slowKmPerHour, Math.max(0, extra));
  }

  /** {@return speed without the zone, in knots} */
  public double usualKnots() {
    return usualKilometresPerHour / KILOMETRES_PER_NAUTICAL_MILE;
  }

  /** {@return speed in the zone, in knots} */
  public double slowKnots() {
    return slowKilometresPerHour / KILOMETRES_PER_NAUTICAL_MILE;
  }
}
