package org.meadowmark.core.change.rates;

/**
 * How long one scar was seen to stay open.
 *
 * @param species key of the species of its bed, or empty
 * @param distanceMetres way that its edges had to go when it was first seen: half its width, longer
 *     where it was dug out
 * @param openYears longest time after that at which it was seen open still; 0 where it was gone at
 *     the next survey
 * @param closedYears first survey at which it was gone, in years after it was first seen; infinite
 *     where it was never seen gone
 */
public record ClosingObservation(
    String species, double distanceMetres, double openYears, double closedYears) {
  /**
   * Checks the way and the times.
   *
   * @param species key of the species of its bed, or empty
   * @param distanceMetres way that its edges had to go when it was first seen: half its width,
   *     longer where it was dug out
   * @param openYears longest time after that at which it was seen open still; 0 where it was gone
   *     at the next survey
   * @param closedYears first survey at which it was gone, in years after it was first seen;
   *     infinite where it was never seen gone
   * @throws IllegalArgumentException if the way is not above 0, or the times are not in order
   */
  public ClosingObservation {
    if (!(distanceMetres > 0) || !(openYears >= 0) || !(closedYears > openYears)) {
      throw new IllegalArgumentException(
          "no observation: "
              + distanceMetres
              + " m, "
              + openYears
              + " to "
              + closedYears
              + " years");
    }
  }

  /** Its edges moved at least so fast. */
  double slowestMetresPerYear() {
    return Double.isInfinite(closedYears) ? 0 : distanceMetres / closedYears;
  }

  /** Its edges moved slower than this. */
  double fastestMetresPerYear() {
    return openYears == 0 ? Double.POSITIVE_INFINITY : distanceMetres / openYears;
  }

  boolean isClosed() {
    return !Double.isInfinite(closedYears);
  }
}
