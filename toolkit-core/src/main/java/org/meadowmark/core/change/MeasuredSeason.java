package org.meadowmark.core.change;

import java.time.LocalDate;
import java.util.Objects;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.recovery.SurveyRecovery;
import org.meadowmark.core.model.MetricSurvey;

/**
 * A survey with what was measured in it.
 *
 * @param survey the survey
 * @param measurement scars, beds and areas
 * @param recovery how its scars are expected to close
 */
public record MeasuredSeason(
    SeasonSurvey survey, Measurement measurement, SurveyRecovery recovery) {
  /**
   * Refuses a season of which a part is missing.
   *
   * @param survey the survey
   * @param measurement scars, beds and areas
   * @param recovery how its scars are expected to close
   * @throws NullPointerException if anything is null
   */
  public MeasuredSeason {
    Objects.requireNonNull(survey, "survey");
    Objects.requireNonNull(measurement, "measurement");
    Objects.requireNonNull(recovery, "recovery");
  }

  /** {@return day of the survey} */
  public LocalDate date() {
    return survey.date();
  }

  /** {@return what was mapped} */
  public MetricSurvey mapped() {
    return survey.survey();
  }
}
