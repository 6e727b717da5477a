package org.meadowmark.core.assessment;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.assessment.comparison.EarlierSurveys;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.Barriers;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.SurveyMeasurer;
import org.meadowmark.core.measure.recovery.ScarRecovery;
import org.meadowmark.core.measure.recovery.SurveyRecovery;
import org.meadowmark.core.measure.recovery.SurveyRecoveryEstimator;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.partition.MeasuringInParts;
import org.meadowmark.core.partition.PartSize;
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
import org.meadowmark.core.store.DiskRows;
import org.meadowmark.core.store.RowStore;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.CsvTableWriter;
import org.meadowmark.core.write.GeoPackageAbout;
import org.meadowmark.core.write.GeoPackageWriter;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.chart.Charts;
import org.meadowmark.core.write.chart.Picture;
import org.meadowmark.core.write.folder.OutputFolder;
import org.meadowmark.core.write.loss.WorkedLossText;
import org.meadowmark.core.write.proposal.CrewSheets;
import org.meadowmark.core.write.proposal.CrewSurvey;
import org.meadowmark.core.write.proposal.HearingPaper;
import org.meadowmark.core.write.proposal.ProposalSheets;
import org.meadowmark.core.write.proposal.SheetInput;
import org.meadowmark.core.write.proposal.SurveySheets;
import org.meadowmark.core.write.record.FileDigest;
import org.meadowmark.core.write.record.FindingsReport;
import org.meadowmark.core.write.record.InputFiles;
import org.meadowmark.core.write.record.OutputFiles;
import org.meadowmark.core.write.record.RunFacts;
import org.meadowmark.core.write.record.RunRecord;
import org.meadowmark.core.write.record.StageMeter;
import org.meadowmark.core.write.record.Versions;
import org.meadowmark.core.write.report.Report;
import org.meadowmark.core.write.report.ReportChart;
import org.meadowmark.core.write.report.ReportInput;
import org.meadowmark.core.write.style.LayerStyles;
import org.meadowmark.core.write.summary.Summary;
import org.meadowmark.core.write.table.DataDictionary;
import org.meadowmark.core.write.table.ResultTables;

/**
 * A whole assessment: read, check, project, measure, rank, plan, write.
 *
 * <p>Results do not depend on threads or on the order of the input. The parallel work runs in the
 * fork join pool of the calling thread, or in the common pool.
 */
public final class Assessment {
  /** Layers with every result that has a place, and tables without. */
  public static final String GEOPACKAGE = "results.gpkg";

  /** Folder of the tables as CSV. */
  public static final String TABLE_FOLDER = "tables";

  /** Folder of the pictures. */
  public static final String CHART_FOLDER = "charts";

  /** The summary that is also returned. */
  public static final String SUMMARY = "summary.txt";

  /** Every finding. */
  public static final String FINDINGS = "findings.json";

  /** Tables stay byte-identical from run to run, so no table carries the time of the run. */
  public static final Instant CONTENT_TIME = Instant.parse("2000-01-01T00:00:00Z");

  private final SurveyDefinition definition;
  private final List<SurveyDefinition> earlier;
  private final ReferenceTables tables;
  private final Map<String, String> options;
  private final String toolVersion;
  private final Instant started = Instant.now();
  private final StageMeter meter;
  private final Optional<InParts> inParts;

  /**
   * How to measure a survey that is too large to be measured in one go.
   *
   * @param size how large a part may be
   * @param temporaryFolder folder for temporary files, which hold scars and rows
   */
  public record InParts(PartSize size, Path temporaryFolder) {}

  /**
   * What was written.
   *
   * @param summary the summary for a terminal
   * @param whole totals of the survey
   * @param scarCount scars that were used
   */
  public record Done(String summary, AreaMeasure whole, int scarCount) {}

  /** Digests of what was read, taken at once: later changes of the files are none of the run's. */
  private final List<FileDigest> inputs = new ArrayList<>();

  /**
   * Prepares an assessment.
   *
   * @param definition what to assess
   * @param tables reference tables
   * @param options options as the user gave them, for the run record
   * @param toolVersion version of the program, for the run record
   * @param progress hears how far the work is
   */
  public Assessment(
      SurveyDefinition definition,
      ReferenceTables tables,
      Map<String, String> options,
      String toolVersion,
      Progress progress) {
    this(definition, List.of(), tables, options, toolVersion, progress);
  }

  /**
   * Prepares an assessment that knows earlier surveys of the place.
   *
   * @param definition what to assess
   * @param earlier earlier surveys, which tell where the ground was scarred before; may be none
   * @param tables reference tables
   * @param options options as the user gave them, for the run record
   * @param toolVersion version of the program, for the run record
   * @param progress hears how far the work is
   */
  public Assessment(
      SurveyDefinition definition,
      List<SurveyDefinition> earlier,
      ReferenceTables tables,
      Map<String, String> options,
      String toolVersion,
      Progress progress) {
    this(definition, earlier, tables, options, toolVersion, progress, Optional.empty());
  }

  /**
   * Prepares an assessment that may be measured in parts.
   *
   * @param definition what to assess
   * @param earlier earlier surveys, which tell where the ground was scarred before; may be none
   * @param tables reference tables
   * @param options options as the user gave them, for the run record
   * @param toolVersion version of the program, for the run record
   * @param progress hears how far the work is
   * @param inParts how; empty for one go
   */
  public Assessment(
      SurveyDefinition definition,
      List<SurveyDefinition> earlier,
      ReferenceTables tables,
      Map<String, String> options,
      String toolVersion,
      Progress progress,
      Optional<InParts> inParts) {
    this.inParts = inParts;
    this.definition = definition;
    this.earlier = List.copyOf(earlier);
    this.tables = tables;
    this.options = options;
    this.toolVersion = toolVersion;
    this.meter = new StageMeter(progress);
  }

  /**
   * Reads, checks, projects, measures, ranks and plans.
   *
   * @return the survey with everything that is known about it
   * @throws org.meadowmark.core.model.SurveyInputException if the input cannot be used
   */
  public AssessedSurvey assess() {
    LoadedSurvey loaded = load(Optional.empty());
    return assess(
        loaded,
        new SurveyMeasurer(loaded.orThrow(), definition.parameters(), tables, meter).measure());
  }

  private LoadedSurvey load(Optional<RowStore> store) {
    SurveyLoader.Watched read = new SurveyLoader(definition, tables, meter, store).loadWatched();
    inputs.clear();
    inputs.addAll(read.inputs());
    return read.loaded();
  }

  private AssessedSurvey assess(LoadedSurvey loaded, Measurement measurement) {
    MetricSurvey survey = loaded.orThrow();
    ChannelRanking ranking =
        new ChannelRanker(
                survey, evidence(loaded, measurement), definition.parameters(), tables, meter)
            .rank();
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

  private MeasuredEvidence evidence(LoadedSurvey loaded, Measurement measurement) {
    MeasuredEvidence evidence = MeasuredEvidence.of(measurement);
    if (earlier.isEmpty()) {
      return evidence;
    }
    EarlierSurveys surveys = new EarlierSurveys(earlier, tables, meter);
    MeasuredEvidence withEarlier = evidence.withEarlier(surveys.scars(definition, loaded));
    surveys
        .inputs()
        .forEach(
            (survey, files) ->
                files.forEach(
                    file ->
                        inputs.add(
                            new FileDigest(
                                survey + ": " + file.file(), file.bytes(), file.sha256()))));
    return withEarlier;
  }

  private SurveyRecovery recovery(Measurement measurement) {
    OptionalInt year =
        definition.date().map(date -> OptionalInt.of(date.getYear())).orElse(OptionalInt.empty());
    return new SurveyRecoveryEstimator(definition.parameters(), tables, year, meter)
        .estimate(measurement);
  }

  private ZonePlan zones(MetricSurvey survey, ChannelRanking ranking) {
    meter.begin("Planning zones", -1);
    ZonePlanner planner =
        new ZonePlanner(
            definition.parameters().zones(),
            tables.deviceRules(),
            definition.parameters().ranking().channelHalfWidthMetres(),
            new Barriers(survey.barriers(), new GeometryFactory()),
            survey.scale(),
            GeodesicTrueNorth.ofWkt(survey.gridWkt()));
    ZonePlan zones = planner.plan(ranking.segments().stream().map(ZoneSegment::of).toList());
    meter.end();
    return zones;
  }

  private RepairPlan repairs(
      MetricSurvey survey,
      Measurement measurement,
      ChannelRanking ranking,
      ZonePlan zones,
      List<ScarRecovery> recoveries) {
    meter.begin("Planning repairs", -1);
    RepairPlan repairs =
        new RepairPlanner(survey, definition.date(), definition.parameters())
            .plan(measurement, ranking, zones, recoveries);
    meter.end();
    return repairs;
  }

  /**
   * Assesses and writes the output folder, all of it or nothing.
   *
   * @param folder folder to write
   * @param overwrite whether an earlier output there may be replaced
   * @return the summary for a terminal
   * @throws org.meadowmark.core.model.MeadowmarkException if the input cannot be used or the folder
   *     cannot be written
   */
  public String assessInto(Path folder, boolean overwrite) {
    return run(folder, overwrite).summary();
  }

  /**
   * Does the same and tells what it came to.
   *
   * @param folder folder to write
   * @param overwrite whether an earlier output there may be replaced
   * @return the summary, with totals of the survey
   * @throws org.meadowmark.core.model.MeadowmarkException if the input cannot be used or the folder
   *     cannot be written
   */
  public Done run(Path folder, boolean overwrite) {
    OutputFolder output =
        new OutputFolder(
            folder,
            overwrite,
            Stream.concat(Stream.of(definition), earlier.stream())
                .flatMap(survey -> InputFiles.paths(survey).values().stream())
                .toList());
    if (inParts.isEmpty()) {
      return run(output, assess(), Optional.empty());
    }
    try (RowStore store = DiskRows.in(inParts.get().temporaryFolder())) {
      LoadedSurvey loaded = load(Optional.of(store));
      MeasuringInParts.Outcome outcome =
          new MeasuringInParts(
                  loaded.orThrow(), definition.parameters(), tables, inParts.get().size(), meter)
              .measure(store);
      return run(output, assess(loaded, outcome.measurement()), Optional.of(outcome));
    }
  }

  private Done run(
      OutputFolder output, AssessedSurvey assessed, Optional<MeasuringInParts.Outcome> parts) {
    String summary =
        Summary.text(assessed)
            + parts.map(outcome -> PartsText.summary(outcome) + System.lineSeparator()).orElse("");
    output.write(
        target -> {
          if (parts.isPresent()) {
            Files.writeString(
                target.resolve(PartsText.FILE_NAME),
                PartsText.table(parts.get()),
                StandardCharsets.UTF_8);
          }
          write(assessed, summary, target);
        });
    return new Done(summary, assessed.measurement().whole(), assessed.measurement().scars().size());
  }

  private void write(AssessedSurvey assessed, String summary, Path target) throws IOException {
    List<ResultTable> results = ResultTables.of(assessed);
    meter.begin("Writing tables", results.size());
    Path csvFolder = Files.createDirectory(target.resolve(TABLE_FOLDER));
    for (ResultTable table : results) {
      CsvTableWriter.write(csvFolder.resolve(table.name() + ".csv"), false, table, false);
      meter.advance(1);
    }
    meter.end();

    meter.begin("Writing layers", -1);
    GeoPackageWriter.write(
        target.resolve(GEOPACKAGE),
        false,
        assessed.survey().gridLabel(),
        assessed.survey().gridWkt(),
        results,
        CONTENT_TIME,
        Optional.of(about(assessed)));
    LayerStyles.write(target, assessed);
    Files.writeString(
        target.resolve(DataDictionary.FILE_NAME),
        DataDictionary.of(results),
        StandardCharsets.UTF_8);
    meter.end();

    meter.begin("Drawing charts", -1);
    Path chartFolder = Files.createDirectory(target.resolve(CHART_FOLDER));
    List<Picture> pictures = Charts.of(assessed);
    for (Picture picture : pictures) {
      picture.writePng(chartFolder);
      picture.writeSvg(chartFolder);
    }
    meter.end();

    meter.begin("Writing proposals", assessed.zones().zones().size());
    List<SheetInput> sheetInputs =
        inputs.stream().map(input -> new SheetInput(input.file(), input.sha256())).toList();
    ProposalSheets.write(target, SurveySheets.of(assessed, sheetInputs, toolVersion));
    HearingPaper.write(target, assessed, Report.answers(assessed), sheetInputs, toolVersion);
    meter.end();

    Files.writeString(
        target.resolve(WorkedLossText.FILE_NAME),
        WorkedLossText.of(definition.name(), assessed.recovery(), tables.scarRecovery()),
        StandardCharsets.UTF_8);
    meter.begin("Writing crew sheets", assessed.repairs().seasons().size());
    CrewSheets.write(
        target,
        new CrewSurvey(
            definition.name(),
            definition.date(),
            assessed.survey().gridLabel(),
            assessed.survey().gridWkt(),
            definition.parameters().repair(),
            assessed.repairs()));
    meter.end();

    meter.begin("Writing report", -1);
    List<ReportChart> charts = new ArrayList<>();
    for (Picture picture : pictures) {
      charts.add(ReportChart.of(picture, chartFolder));
    }
    Report.write(target, new ReportInput(assessed, charts, toolVersion));
    meter.end();

    Files.writeString(target.resolve(SUMMARY), summary, StandardCharsets.UTF_8);
    Files.writeString(
        target.resolve(FINDINGS),
        new FindingsReport(assessed.findings(), assessed.counts()).toJson(),
        StandardCharsets.UTF_8);
    RunFacts facts =
        new RunFacts(
            Versions.current(toolVersion), options, started, Instant.now(), meter.stages());
    RunRecord runRecord = new RunRecord(assessed, facts, inputs, OutputFiles.digests(target));
    Files.writeString(
        target.resolve(RunRecord.FILE_NAME), runRecord.toJson(), StandardCharsets.UTF_8);
  }

  private GeoPackageAbout about(AssessedSurvey assessed) {
    return new GeoPackageAbout(
        definition.name(),
        definition.date(),
        "Damage that boats did to beds, and what follows from it: one layer or table for each kind"
            + " of result. Columns are described in this file; units stand in their names.",
        assessed.survey().gridLabel()
            + ", the grid on which everything was measured; lengths and areas are ground values"
            + " unless the run record says otherwise",
        "Meadowmark "
            + toolVersion
            + "; run-record.json, written beside this file, lists inputs, options and digests");
  }
}
