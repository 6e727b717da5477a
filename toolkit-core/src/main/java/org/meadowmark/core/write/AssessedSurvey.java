package org.meadowmark.core.write;

import java.util.List;
import java.util.Objects;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.recovery.SurveyRecovery;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.plan.RepairPlan;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.rank.zone.ZonePlan;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.SurveyDefinition;

/**
 * Everything the writing stage turns into files.
 *
 * @param definition what the user asked for
 * @param survey the survey on the analysis grid
 * @param measurement what was measured
 * @param ranking channel segments by rank
 * @param zones zones proposed for marking
 * @param recovery recovery of scars and the loss until then
 * @param repairs the repair plan
 * @param findings every finding of the run, in {@link Finding#ORDER} whatever order was given
 * @param counts features by layer, in order of role, file and layer whatever order was given
 * @param references reference tables that were used
 */
public record AssessedSurvey(
    SurveyDefinition definition,
    MetricSurvey survey,
    Measurement measurement,
    ChannelRanking ranking,
    ZonePlan zones,
    SurveyRecovery recovery,
    RepairPlan repairs,
    List<Finding> findings,
    List<LayerCount> counts,
    ReferenceTables references) {

  /**
   * Sorts findings and counts, so that the files do not depend on the order they were made in.
   *
   * @param definition what the user asked for
   * @param survey the survey on the analysis grid
   * @param measurement what was measured
   * @param ranking channel segments by rank
   * @param zones zones proposed for marking
   * @param recovery recovery of scars and the loss until then
   * @param repairs the repair plan
   * @param findings every finding of the run, in any order
   * @param counts features by layer, in any order
   * @param references reference tables that were used
   * @throws NullPointerException if anything is null
   */
  public AssessedSurvey {
    Objects.requireNonNull(definition, "definition");
    Objects.requireNonNull(survey, "survey");
    Objects.requireNonNull(measurement, "measurement");
    Objects.requireNonNull(ranking, "ranking");
    Objects.requireNonNull(zones, "zones");
    Objects.requireNonNull(recovery, "recovery");
    Objects.requireNonNull(repairs, "repairs");
    Objects.requireNonNull(references, "references");
    findings = findings.stream().sorted(Finding.ORDER).toList();
    counts = counts.stream().sorted(LayerCount.ORDER).toList();
  }
}
