package org.meadowmark.core.change.effect;

import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.TDistribution;
import org.meadowmark.core.change.Interval;

/**
 * Difference of two means whose variances need not be equal: Welch (1947), Biometrika 34:28–35,
 * with the degrees of freedom of Satterthwaite (1946), Biometrics Bulletin 2:110–114 (both from
 * memory).
 *
 * @param difference first mean less second
 * @param standardError of the difference; NaN where a group has one member
 * @param degreesOfFreedom for Student's t
 */
record DifferenceOfMeans(double difference, double standardError, double degreesOfFreedom) {

  static DifferenceOfMeans of(GroupChange first, GroupChange second) {
    double variance = first.variance() + second.variance();
    double degrees =
        variance
            * variance
            / (first.variance() * first.variance() / first.degreesOfFreedom()
                + second.variance() * second.variance() / second.degreesOfFreedom());
    return new DifferenceOfMeans(first.mean() - second.mean(), Math.sqrt(variance), degrees);
  }

  /** Difference in standard errors; 0 where both are 0, infinite where only the error is. */
  double t() {
    if (standardError > 0) {
      return difference / standardError;
    }
    return difference == 0 ? 0 : Math.copySign(Double.POSITIVE_INFINITY, difference);
  }

  private boolean isKnown() {
    return standardError > 0 && degreesOfFreedom > 0;
  }

  /** Interval of the difference; empty where the standard error is 0 or not known. */
  Optional<Interval> interval(double confidence) {
    if (!isKnown()) {
      return Optional.empty();
    }
    double half =
        TDistribution.of(degreesOfFreedom).inverseSurvivalProbability((1 - confidence) / 2)
            * standardError;
    return Optional.of(new Interval(difference - half, difference + half));
  }

  /** Two-sided p-value of Student's t; empty where the standard error is 0 or not known. */
  OptionalDouble pValue() {
    return isKnown()
        ? OptionalDouble.of(
            2 * TDistribution.of(degreesOfFreedom).survivalProbability(Math.abs(t())))
        : OptionalDouble.empty();
  }
}
