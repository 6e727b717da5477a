package org.meadowmark.core.measure.recovery;

import java.util.OptionalInt;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.RecoveryParameters;

/**
 * What every loss is counted by.
 *
 * @param discounting rate and moment within a year
 * @param horizonYears years after which nothing counts
 * @param baseYear calendar year of year 0, in which every scar is taken as fresh, where known
 * @param projectStartYears years until a compensating planting begins
 * @param projectGrowthYears time in which its service rises in a straight line from none to all
 * @param projectLifeYears years from its start after which its service no longer counts
 */
public record LossConventions(
    Discounting discounting,
    int horizonYears,
    OptionalInt baseYear,
    int projectStartYears,
    double projectGrowthYears,
    int projectLifeYears) {

  /**
   * {@return the conventions that a user chose}
   *
   * @param parameters choices of the user: discount rate, horizon, base year, compensating planting
   * @param surveyYear year of the survey, for where no base year is stated
   */
  public static LossConventions of(Parameters parameters, OptionalInt surveyYear) {
    RecoveryParameters recovery = parameters.recovery();
    return new LossConventions(
        new Discounting(parameters.zones().discountRate(), recovery.withinYear()),
        recovery.lossHorizonYears(),
        recovery.lossBaseYear().isPresent()
            ? OptionalInt.of((int) recovery.lossBaseYear().getAsDouble())
            : surveyYear,
        recovery.projectStartYears(),
        recovery.projectGrowthYears(),
        recovery.projectLifeYears());
  }

  /** {@return service that a compensating planting gains, year by year} */
  public ServiceCourse project() {
    return ServiceCourse.of(
        projectStartYears, projectLifeYears, time -> Math.min(1, time / projectGrowthYears));
  }

  /** {@return discounted service-hectare-years that one hectare of it gains} */
  public double projectGainPerHectare() {
    return project().serviceHectareYears(1, discounting);
  }
}
