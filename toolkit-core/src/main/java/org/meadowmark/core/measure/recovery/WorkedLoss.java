package org.meadowmark.core.measure.recovery;

import java.util.Arrays;

/**
 * The loss of a survey year by year, by estimate: what the printout shows.
 *
 * @param hectares scarred area that is forecast, overlaps counted once
 * @param alone service lost without planting
 * @param planted service lost with every scar planted in the base year
 */
public record WorkedLoss(double hectares, ByEstimate alone, ByEstimate planted) {

  /**
   * Three courses.
   *
   * @param low low loss
   * @param middle middle loss
   * @param high high loss
   */
  public record ByEstimate(ServiceCourse low, ServiceCourse middle, ServiceCourse high) {
    /**
     * {@return one of the three}
     *
     * @param estimate which one
     */
    public ServiceCourse of(Estimate estimate) {
      return switch (estimate) {
        case LOW -> low;
        case MIDDLE -> middle;
        case HIGH -> high;
      };
    }
  }

  /** Bare hectares summed over scars, year by year and estimate by estimate. */
  static final class Sums {
    private final double[][] bareHectares = new double[Estimate.values().length][0];

    void add(Estimate estimate, ServiceCourse course, double hectares) {
      double[] sums = bareHectares[estimate.ordinal()];
      int years = course.meanShares().size();
      if (sums.length < years) {
        sums = Arrays.copyOf(sums, years);
        bareHectares[estimate.ordinal()] = sums;
      }
      for (int year = 0; year < years; year++) {
        sums[year] += hectares * course.meanShares().get(year);
      }
    }

    ByEstimate shares(double hectares) {
      return new ByEstimate(
          course(Estimate.LOW, hectares),
          course(Estimate.MIDDLE, hectares),
          course(Estimate.HIGH, hectares));
    }

    private ServiceCourse course(Estimate estimate, double hectares) {
      return new ServiceCourse(
          0,
          Arrays.stream(bareHectares[estimate.ordinal()])
              .map(bare -> hectares > 0 ? Math.min(1, bare / hectares) : 0)
              .boxed()
              .toList(),
          false);
    }
  }
}
