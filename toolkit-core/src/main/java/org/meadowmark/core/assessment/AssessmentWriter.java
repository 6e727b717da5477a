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
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.CsvTableWriter;
import org.meadowmark.core.write.GeoPackageAbout;
import org.meadowmark.core.write.GeoPackageWriter;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.chart.Charts;
import org.meadowmark.core.write.chart.Picture;
import org.meadowmark.core.write.loss.WorkedLossText;
import org.meadowmark.core.write.proposal.CrewSheets;
import org.meadowmark.core.write.proposal.CrewSurvey;
import org.meadowmark.core.write.proposal.HearingPaper;
import org.meadowmark.core.write.proposal.ProposalSheets;
import org.meadowmark.core.write.proposal.SheetInput;
import org.meadowmark.core.write.proposal.SurveySheets;
import org.meadowmark.core.write.record.FileDigest;
import org.meadowmark.core.write.record.FindingsReport;
import org.meadowmark.core.write.record.OutputFiles;
import org.meadowmark.core.write.record.RunFacts;
import org.meadowmark.core.write.record.RunRecord;
import org.meadowmark.core.write.record.StageMeter;
import org.meadowmark.core.write.record.Versions;
import org.meadowmark.core.write.report.Report;
import org.meadowmark.core.write.report.ReportChart;
import org.meadowmark.core.write.report.ReportInput;
import org.meadowmark.core.write.style.LayerStyles;
import org.meadowmark.core.write.table.DataDictionary;
import org.meadowmark.core.write.table.ResultTables;

/**
 * Writes every file of an assessment into a folder, the run record last.
 *
 * <p>But for the run record, which tells when and how long, the same survey, digests and version
 * give the same bytes.
 */
public final class AssessmentWriter {
  /** Layers with every result that has a place, and tables without. */
  public static final String GEOPACKAGE = "results.gpkg";

  /** Folder of the tables as CSV. */
  public static final String TABLE_FOLDER = "tables";

  /** Folder of the pictures. */
  public static final String CHART_FOLDER = "charts";

  /** The summary for a terminal. */
  public static final String SUMMARY = "summary.txt";

  /** Every finding. */
  public static final String FINDINGS = "findings.json";

  /** Tables stay byte-identical from run to run, so no table carries the time of the run. */
  public static final Instant CONTENT_TIME = Instant.parse("2000-01-01T00:00:00Z");

  private final List<FileDigest> inputs;
  private final Map<String, String> options;
  private final String toolVersion;
  private final Instant started;
  private final StageMeter meter;

  /**
   * A writer for one run.
   *
   * @param inputs digests of what was read; they stand in the record and on the sheets
   * @param options options as the user gave them, for the run record
   * @param toolVersion version of the program
   * @param started when the run began
   * @param meter has metered the stages before, and meters those of writing
   */
  public AssessmentWriter(
      List<FileDigest> inputs,
      Map<String, String> options,
      String toolVersion,
      Instant started,
      StageMeter meter) {
    this.inputs = List.copyOf(inputs);
    this.options = options;
    this.toolVersion = toolVersion;
    this.started = started;
    this.meter = meter;
  }

  /**
   * Writes the files.
   *
   * @param assessed what to write
   * @param summary the summary for a terminal
   * @param target an empty folder, or one with files that the run record is to list too
   * @throws IOException if a file cannot be written; those written before are left
   */
  public void write(AssessedSurvey assessed, String summary, Path target) throws IOException {
    SurveyDefinition definition = assessed.definition();
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
        WorkedLossText.of(
            definition.name(), assessed.recovery(), assessed.references().scarRecovery()),
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
        assessed.definition().name(),
        assessed.definition().date(),
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
