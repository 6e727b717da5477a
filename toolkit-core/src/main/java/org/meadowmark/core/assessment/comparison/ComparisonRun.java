package org.meadowmark.core.assessment.comparison;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.meadowmark.core.assessment.AssessmentWriter;
import org.meadowmark.core.assessment.comparison.MarkerReader.MarkerFile;
import org.meadowmark.core.change.comparability.Aspect;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.ComparedSurveys;
import org.meadowmark.core.write.CsvTableWriter;
import org.meadowmark.core.write.GeoPackageWriter;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.chart.ComparisonCharts;
import org.meadowmark.core.write.chart.Picture;
import org.meadowmark.core.write.folder.OutputFolder;
import org.meadowmark.core.write.record.ComparisonRecord;
import org.meadowmark.core.write.record.FileDigest;
import org.meadowmark.core.write.record.InputFiles;
import org.meadowmark.core.write.record.OutputFiles;
import org.meadowmark.core.write.record.RunFacts;
import org.meadowmark.core.write.record.RunRecord;
import org.meadowmark.core.write.record.StageMeter;
import org.meadowmark.core.write.record.Versions;
import org.meadowmark.core.write.summary.ComparisonSummary;
import org.meadowmark.core.write.table.ComparisonTables;
import org.meadowmark.core.write.table.DataDictionary;

/**
 * A whole comparison of surveys, from files to an output folder.
 *
 * <p>Results do not depend on threads, on the order of surveys or on that of their features. The
 * parallel work runs in the fork join pool of the calling thread, or in the common pool.
 */
public final class ComparisonRun {
  private final List<SurveyDefinition> surveys;
  private final ReferenceTables tables;
  private final Set<Aspect> despite;
  private final Optional<MarkerFile> markers;
  private final Map<String, String> options;
  private final String toolVersion;
  private final Instant started = Instant.now();
  private final StageMeter meter;

  /**
   * Prepares a comparison.
   *
   * @param surveys two surveys or more, in any order, each with a date of its own
   * @param tables reference tables
   * @param despite differences that are let pass although they are unsafe
   * @param markers which segments were marked and when, where given
   * @param options options as the user gave them, for the run record
   * @param toolVersion version of the program, for the run record
   * @param progress hears how far the work is
   */
  public ComparisonRun(
      List<SurveyDefinition> surveys,
      ReferenceTables tables,
      Set<Aspect> despite,
      Optional<MarkerFile> markers,
      Map<String, String> options,
      String toolVersion,
      Progress progress) {
    this.surveys = List.copyOf(surveys);
    this.tables = tables;
    this.despite = Set.copyOf(despite);
    this.markers = markers;
    this.options = options;
    this.toolVersion = toolVersion;
    this.meter = new StageMeter(progress);
  }

  /**
   * Reads, measures and compares.
   *
   * @return the surveys, with what changed between them
   * @throws org.meadowmark.core.model.MeadowmarkException if a survey cannot be used, or two differ
   *     so much that a comparison would mislead
   */
  public ComparedSurveys compare() {
    return comparison().compare();
  }

  private SeasonComparison comparison() {
    return new SeasonComparison(surveys, tables, despite, markers, meter);
  }

  /**
   * Compares and writes the output folder, all of it or nothing.
   *
   * @param folder folder to write
   * @param overwrite whether an earlier output there may be replaced
   * @return the summary for a terminal
   * @throws org.meadowmark.core.model.MeadowmarkException if the input cannot be used or the folder
   *     cannot be written
   */
  public String compareInto(Path folder, boolean overwrite) {
    OutputFolder output = new OutputFolder(folder, overwrite, inputPaths());
    SeasonComparison comparison = comparison();
    ComparedSurveys compared = comparison.compare();
    String summary = ComparisonSummary.text(compared);
    output.write(target -> write(compared, comparison.inputs(), summary, target));
    return summary;
  }

  private List<Path> inputPaths() {
    List<Path> paths = new ArrayList<>();
    surveys.forEach(survey -> paths.addAll(InputFiles.paths(survey).values()));
    markers.ifPresent(file -> paths.add(file.path()));
    return paths;
  }

  private void write(
      ComparedSurveys compared, List<List<FileDigest>> surveyInputs, String summary, Path target)
      throws IOException {
    List<ResultTable> results = ComparisonTables.of(compared);
    meter.begin("Writing tables", results.size());
    Path csvFolder = Files.createDirectory(target.resolve(AssessmentWriter.TABLE_FOLDER));
    for (ResultTable table : results) {
      CsvTableWriter.write(csvFolder.resolve(table.name() + ".csv"), false, table, false);
      meter.advance(1);
    }
    meter.end();

    meter.begin("Writing layers", -1);
    GeoPackageWriter.write(
        target.resolve(AssessmentWriter.GEOPACKAGE),
        false,
        compared.last().mapped().gridLabel(),
        compared.last().mapped().gridWkt(),
        results,
        AssessmentWriter.CONTENT_TIME);
    Files.writeString(
        target.resolve(DataDictionary.FILE_NAME),
        DataDictionary.of(results),
        StandardCharsets.UTF_8);
    meter.end();

    meter.begin("Drawing charts", -1);
    Path chartFolder = Files.createDirectory(target.resolve(AssessmentWriter.CHART_FOLDER));
    for (Picture picture : ComparisonCharts.of(compared)) {
      picture.writePng(chartFolder);
      picture.writeSvg(chartFolder);
    }
    meter.end();

    Files.writeString(target.resolve(AssessmentWriter.SUMMARY), summary, StandardCharsets.UTF_8);
    List<List<FileDigest>> inputs = new ArrayList<>(surveyInputs);
    if (markers.isPresent()) {
      Path path = markers.get().path();
      inputs.add(List.of(FileDigest.of(path.toString(), path)));
    }
    RunFacts facts =
        new RunFacts(
            Versions.current(toolVersion), options, started, Instant.now(), meter.stages());
    Files.writeString(
        target.resolve(RunRecord.FILE_NAME),
        new ComparisonRecord(compared, facts, inputs, OutputFiles.digests(target)).toJson(),
        StandardCharsets.UTF_8);
  }
}
