package org.meadowmark.core.assessment;

import java.util.List;
import java.util.OptionalInt;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.measure.Barriers;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.recovery.ScarRecovery;
import org.meadowmark.core.measure.recovery.SurveyRecovery;
import org.meadowmark.core.measure.recovery.SurveyRecoveryEstimator;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.plan.RepairPlan;
import org.meadowmark.core.plan.RepairPlanner;
import org.meadowmark.core.project.GeodesicTrueNorth;
import org.meadowmark.core.rank.ChannelRanker;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.rank.evidence.MeasuredEvidence;
import org.meadowmark.core.rank.zone.ZonePlan;
import org.meadowmark.core.rank.zone.ZonePlanner;
import org.meadowmark.core.rank.zone.ZoneSegment;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.AssessedSurvey;

/**
 * What follows measuring: ranks channels, plans zones, forecasts recovery and plans repairs.
 *
 * <p>It does not matter whether the survey was measured in one go, in parts, or on other machines:
 * the same survey and measurement give the same results, whatever the number of threads. The
 * parallel work runs in the fork join pool of the calling thread, or in the common pool.
 */
public final class SurveyAssessor {
  private final SurveyDefinition definition;
  private final ReferenceTables tables;
  private final Progress progress;

  /**
   * An assessor of one survey.
   *
   * @param definition what to assess
   * @param tables reference tables that the survey was read and measured with
   * @param progress hears how far the work is
   */
  public SurveyAssessor(SurveyDefinition definition, ReferenceTables tables, Progress progress) {
    this.definition = definition;
    this.tables = tables;
    this.progress = progress;
  }

  /**
   * Assesses a survey of which no earlier one is known.
   *
   * @param loaded the survey as read
   * @param measurement what was measured in it
   * @return the survey with everything that is known about it
   * @throws org.meadowmark.core.model.SurveyInputException if the survey was read with an error
   */
  public AssessedSurvey assess(LoadedSurvey loaded, Measurement measurement) {
    return assess(loaded, measurement, MeasuredEvidence.of(measurement));
  }

  /**
   * Assesses a survey with what is known besides its measurement.
   *
   * @param loaded the survey as read
   * @param measurement what was measured in it
   * @param evidence what channels are ranked by
   * @return the survey with everything that is known about it
   * @throws org.meadowmark.core.model.SurveyInputException if the survey was read with an error
   */
  public AssessedSurvey assess(
      LoadedSurvey loaded, Measurement measurement, MeasuredEvidence evidence) {
    MetricSurvey survey = loaded.orThrow();
    ChannelRanking ranking =
        new ChannelRanker(survey, evidence, definition.parameters(), tables, progress).rank();
    ZonePlan zones = zones(survey, ranking);
    SurveyRecovery recovery = recovery(measurement);
    return new AssessedSurvey(
        definition,
        survey,
        measurement,
        ranking,
        zones,
        recovery,
        repairs(survey, measurement, ranking, zones, recovery.scars()),
        loaded.findings(),
        loaded.counts(),
        tables);
  }

  private SurveyRecovery recovery(Measurement measurement) {
    OptionalInt year =
        definition.date().map(date -> OptionalInt.of(date.getYear())).orElse(OptionalInt.empty());
    return new SurveyRecoveryEstimator(definition.parameters(), tables, year, progress)
        .estimate(measurement);
  }

  private ZonePlan zones(MetricSurvey survey, ChannelRanking ranking) {
    progress.begin("Planning zones", -1);
    ZonePlanner planner =
        new ZonePlanner(
            definition.parameters().zones(),
            tables.deviceRules(),
            definition.parameters().ranking().channelHalfWidthMetres(),
            new Barriers(survey.barriers(), new GeometryFactory()),
            survey.scale(),
            GeodesicTrueNorth.ofWkt(survey.gridWkt()));
    ZonePlan zones = planner.plan(ranking.segments().stream().map(ZoneSegment::of).toList());
    progress.end();
    return zones;
  }

  private RepairPlan repairs(
      MetricSurvey survey,
      Measurement measurement,
      ChannelRanking ranking,
      ZonePlan zones,
      List<ScarRecovery> recoveries) {
    progress.begin("Planning repairs", -1);
    RepairPlan repairs =
        new RepairPlanner(survey, definition.date(), definition.parameters())
            .plan(measurement, ranking, zones, recoveries);
    progress.end();
    return repairs;
  }
}
