package org.meadowmark.core.change;

import java.time.LocalDate;
import java.util.Objects;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.survey.PositionalAccuracy;

/**
 * One of several surveys of the same place.
 *
 * @param date when it was made; surveys are told apart by it
 * @param survey what it mapped, on the grid that all surveys share
 * @param accuracy error of the positions it mapped, as stated
 */
public record SeasonSurvey(LocalDate date, MetricSurvey survey, PositionalAccuracy accuracy) {
  /**
   * Refuses a survey of which a part is missing.
   *
   * @param date when it was made; surveys are told apart by it
   * @param survey what it mapped, on the grid that all surveys share
   * @param accuracy error of the positions it mapped, as stated
   * @throws NullPointerException if anything is null
   */
  public SeasonSurvey {
    Objects.requireNonNull(date, "date");
    Objects.requireNonNull(survey, "survey");
    Objects.requireNonNull(accuracy, "accuracy");
  }
}
