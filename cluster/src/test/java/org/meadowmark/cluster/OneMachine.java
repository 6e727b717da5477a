package org.meadowmark.cluster;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryCollection;
import org.locationtech.jts.io.WKBWriter;
import org.meadowmark.core.assessment.Assessment;
import org.meadowmark.core.assessment.AssessmentWriter;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.Setting;
import org.meadowmark.core.survey.SurveyFile;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.record.FileDigest;
import org.meadowmark.core.write.record.StageMeter;
import org.meadowmark.core.write.summary.Summary;
import org.meadowmark.core.write.table.ResultTables;

/** What the toolkit gives on one machine, and the cluster's tables in a form to compare with it. */
final class OneMachine {
  /** What a program says that was not packed. */
  static final String VERSION = "unknown version";

  private static final String QUICK_NAME = "connectivity_detail_patches";
  private static final String QUICK_VALUE = "0";

  /** Patch by patch, connectivity takes most of the time, and the core tests it part by part. */
  static final String QUICK = "--set=" + QUICK_NAME + "=" + QUICK_VALUE;

  private OneMachine() {}

  /** The assessment of one survey, under a name. */
  static AssessedSurvey assess(Path survey, String name) {
    ReferenceTables references = ReferenceTablesReader.bundled();
    return new Assessment(
            SurveyFile.draft(survey)
                .withName(name)
                .withSetting(new Setting(QUICK_NAME, List.of(QUICK_VALUE), "test"))
                .define(ParametersTable.bundled(), references),
            references,
            Map.of(),
            VERSION,
            Progress.NONE)
        .assess();
  }

  /** All files of an assessment, with some digests of its input. */
  static void write(AssessedSurvey assessed, List<FileDigest> inputs, Path folder)
      throws IOException {
    new AssessmentWriter(inputs, Map.of(), VERSION, Instant.now(), new StageMeter(Progress.NONE))
        .write(assessed, Summary.text(assessed), folder);
  }

  /** Rows of all tables as text, by table. */
  static Map<String, List<String>> rows(AssessedSurvey assessed) {
    Map<String, List<String>> tables = new LinkedHashMap<>();
    ResultTables.of(assessed).forEach(table -> tables.put(table.name(), rows(table)));
    return tables;
  }

  private static List<String> rows(ResultTable table) {
    List<String> rows = new ArrayList<>();
    for (ResultTable.Row row : table.rows()) {
      StringBuilder text = new StringBuilder();
      for (int i = 0; i < row.values().size(); i++) {
        append(text, table.columns().get(i).name(), row.values().get(i));
      }
      row.geometry().ifPresent(geometry -> text.append(bits(geometry)));
      rows.add(text.toString());
    }
    return rows;
  }

  /** Rows of a table that the cluster wrote, of one bay, in the order of the file. */
  static List<String> written(SparkSession spark, Path folder, String table, String bay) {
    List<String> rows = new ArrayList<>();
    String file = folder.resolve(table + ".parquet").toUri().toString();
    boolean placed = List.of(spark.read().parquet(file).schema().fieldNames()).contains("geometry");
    for (Row row :
        spark.read().format(placed ? "geoparquet" : "parquet").load(file).collectAsList()) {
      if (!row.<String>getAs("bay").equals(bay)) {
        continue;
      }
      StringBuilder text = new StringBuilder();
      for (String name : row.schema().fieldNames()) {
        if (!name.equals("geometry") && !name.equals("bay")) {
          append(text, name, row.getAs(name));
        }
      }
      Geometry geometry = placed ? row.getAs("geometry") : null;
      if (geometry != null) {
        text.append(bits(geometry));
      }
      rows.add(text.toString());
    }
    return rows;
  }

  /** No value is told apart from 0, but not from a column that only other bays need. */
  private static void append(StringBuilder text, String column, Object value) {
    if (value != null) {
      text.append(column).append('=').append(value).append(' ');
    }
  }

  /** Every bit of the coordinates; a multi geometry of one part is that part. */
  private static String bits(Geometry geometry) {
    Geometry single =
        geometry instanceof GeometryCollection && geometry.getNumGeometries() == 1
            ? geometry.getGeometryN(0)
            : geometry;
    return WKBWriter.toHex(new WKBWriter(2).write(single));
  }

  /**
   * Lays converted layers out under the names that they had before, with the survey file of before:
   * what names the files is then the same on the cluster and on one machine.
   */
  static void underNamesOfBefore(Path survey, Path converted, Path target, Move move) {
    List<LayerSource> before = SurveyFile.draft(survey).layers();
    List<LayerSource> after = SurveyFile.draft(converted).layers();
    try {
      Files.createDirectories(target);
      Files.copy(survey.resolve(SurveyFile.NAME), target.resolve(SurveyFile.NAME));
      for (int i = 0; i < before.size(); i++) {
        move.move(after.get(i), target.resolve(before.get(i).fileLabel()));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Moves or copies a layer. */
  interface Move {
    void move(LayerSource layer, Path to) throws IOException;
  }
}
