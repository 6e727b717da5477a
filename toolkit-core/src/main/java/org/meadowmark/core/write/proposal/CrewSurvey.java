package org.meadowmark.core.write.proposal;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import org.meadowmark.core.plan.RepairPlan;
import org.meadowmark.core.survey.RepairParameters;

/**
 * What the crew sheets of a survey are made from.
 *
 * @param name name of the survey
 * @param date date of the survey, where stated
 * @param gridLabel the analysis grid
 * @param gridWkt its well-known text
 * @param choices choices for the plan
 * @param plan the plan
 */
public record CrewSurvey(
    String name,
    Optional<LocalDate> date,
    String gridLabel,
    String gridWkt,
    RepairParameters choices,
    RepairPlan plan) {

  /**
   * Takes the parts as they are.
   *
   * @param name name of the survey
   * @param date date of the survey, where stated
   * @param gridLabel the analysis grid
   * @param gridWkt its well-known text; where it names no projected system there are no waypoints
   * @param choices choices for the plan
   * @param plan the plan
   * @throws NullPointerException if anything is null
   */
  public CrewSurvey {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(date, "date");
    Objects.requireNonNull(gridLabel, "gridLabel");
    Objects.requireNonNull(gridWkt, "gridWkt");
    Objects.requireNonNull(choices, "choices");
    Objects.requireNonNull(plan, "plan");
  }
}
