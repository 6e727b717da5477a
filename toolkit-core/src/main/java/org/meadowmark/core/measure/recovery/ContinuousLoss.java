package org.meadowmark.core.measure.recovery;

/**
 * Discounted service-hectare-years that scars stand for while they close, the simple form of
 * habitat equivalency analysis: service is lost in full at first and comes back in a straight line.
 *
 * <p>∫₀ᵀ (1 − t/T)·(1 + r)^−t dt = 1/d − (1 − e^(−d·T))/(d²·T) with d = ln(1 + r); T/2 without
 * discount. Source of the method: NOAA (1995, revised 2000, 2006), <i>Habitat Equivalency Analysis:
 * An Overview</i>; time runs continuously here, where {@link ServiceCourse} sums years.
 */
public final class ContinuousLoss {
  /** Below this rate the closed form loses digits and the discount does not show. */
  private static final double NO_RATE = 1e-6;

  private ContinuousLoss() {}

  /**
   * {@return service-years lost for each unit of area}
   *
   * @param recoveryYears time to close, more than 0
   * @param discountRate rate a year, 0 or more
   */
  public static double yearsLost(double recoveryYears, double discountRate) {
    double d = Math.log1p(discountRate);
    if (d < NO_RATE) {
      return recoveryYears / 2;
    }
    return 1 / d + Math.expm1(-d * recoveryYears) / (d * d * recoveryYears);
  }
}
