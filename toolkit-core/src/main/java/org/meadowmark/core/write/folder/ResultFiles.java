package org.meadowmark.core.write.folder;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.CsvTableWriter;
import org.meadowmark.core.write.GeoPackageWriter;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.chart.Charts;
import org.meadowmark.core.write.chart.Picture;
import org.meadowmark.core.write.record.FileDigest;
import org.meadowmark.core.write.record.RunFacts;
import org.meadowmark.core.write.record.RunRecord;
import org.meadowmark.core.write.record.StageMeter;
import org.meadowmark.core.write.record.Versions;
import org.meadowmark.core.write.summary.Summary;
import org.meadowmark.core.write.table.ResultTables;

/**
 * All files of an assessment: {@code tables/*.csv}, {@code results.gpkg}, {@code charts/*.png},
 * {@code summary.txt} and the run record.
 *
 * <p>Everything but the run record is the same for the same results (pictures, as far as the fonts
 * of the computer are).
 *
 * @param assessed results
 * @param inputs digests of the files that were read
 * @param versions versions in use
 * @param options options as the user gave them
 * @param started when the run began
 * @param meter stages so far; the writing stages are added
 * @param clock tells when the record is written
 * @param progress hears how far the writing is
 */
public record ResultFiles(
    AssessedSurvey assessed,
    List<FileDigest> inputs,
    Versions versions,
    Map<String, String> options,
    Instant started,
    StageMeter meter,
    Clock clock,
    Progress progress)
    implements OutputFolder.Content {

  /** Name of the GeoPackage in an output folder. */
  public static final String GEOPACKAGE = "results.gpkg";

  /** Folder of the CSV tables in an output folder. */
  public static final String TABLES = "tables";

  /** Folder of the pictures in an output folder. */
  public static final String CHARTS = "charts";

  /** Name of the text summary in an output folder. */
  public static final String SUMMARY = "summary.txt";

  /** Stands for an unknown survey date where a format demands a time stamp. */
  private static final LocalDate NO_DATE = LocalDate.EPOCH;

  public ResultFiles {
    inputs = List.copyOf(inputs);
  }

  @Override
  public void writeTo(Path folder) throws IOException {
    List<ResultTable> tables = ResultTables.of(assessed);
    meter.measure("writing tables", () -> writeTables(folder, tables));
    meter.measure("writing the GeoPackage", () -> writeGeoPackage(folder, tables));
    meter.measure("drawing charts", () -> drawCharts(folder));
    Files.writeString(folder.resolve(SUMMARY), Summary.text(assessed), StandardCharsets.UTF_8);
    List<FileDigest> outputs = new ArrayList<>();
    for (String file : FolderTree.files(folder)) {
      outputs.add(FileDigest.of(file, folder.resolve(file)));
    }
    RunFacts facts = new RunFacts(versions, options, started, clock.instant(), meter.stages());
    Files.writeString(
        folder.resolve(RunRecord.FILE_NAME),
        new RunRecord(assessed, facts, inputs, outputs).toJson(),
        StandardCharsets.UTF_8);
  }

  private void writeTables(Path folder, List<ResultTable> tables) {
    Path place = newFolder(folder, TABLES);
    progress.begin("writing tables", tables.size());
    for (ResultTable table : tables) {
      CsvTableWriter.write(place.resolve(table.name() + ".csv"), false, table, false);
      progress.advance(1);
    }
    progress.end();
  }

  private void writeGeoPackage(Path folder, List<ResultTable> tables) {
    progress.begin("writing the GeoPackage", -1);
    Instant stamp =
        assessed.definition().date().orElse(NO_DATE).atStartOfDay(ZoneOffset.UTC).toInstant();
    GeoPackageWriter.write(
        folder.resolve(GEOPACKAGE),
        false,
        assessed.survey().gridLabel(),
        assessed.survey().gridWkt(),
        tables,
        stamp);
    progress.end();
  }

  private void drawCharts(Path folder) {
    Path place = newFolder(folder, CHARTS);
    List<Picture> pictures = Charts.of(assessed);
    progress.begin("drawing charts", pictures.size());
    for (Picture picture : pictures) {
      picture.writePng(place);
      progress.advance(1);
    }
    progress.end();
  }

  private static Path newFolder(Path parent, String name) {
    try {
      return Files.createDirectory(parent.resolve(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
