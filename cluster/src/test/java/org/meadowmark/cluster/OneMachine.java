package org.meadowmark.cluster;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryCollection;
import org.locationtech.jts.io.WKBWriter;
import org.meadowmark.core.assessment.LoadedSurvey;
import org.meadowmark.core.assessment.SurveyLoader;
import org.meadowmark.core.measure.SurveyMeasurer;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.Setting;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.survey.SurveyFile;
import org.meadowmark.core.write.Column;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.table.ResultTables;

/**
 * Tables of the toolkit on one machine and of the cluster, as rows of text that can be compared.
 */
final class OneMachine {
  /** They name the file, which is another one after conversion. */
  private static final List<String> OF_THE_FILE = List.of("source_file", "source_layer");

  private static final String QUICK_NAME = "connectivity_detail_patches";
  private static final String QUICK_VALUE = "0";

  /** Patch by patch, connectivity takes most of the time, and the core tests it part by part. */
  static final String QUICK = "--set=" + QUICK_NAME + "=" + QUICK_VALUE;

  private OneMachine() {}

  /** Rows by table, as the toolkit gives them without a cluster. */
  static Map<String, List<String>> measured(Path survey) {
    ReferenceTables references = ReferenceTablesReader.bundled();
    SurveyDefinition definition =
        SurveyFile.draft(survey)
            .withSetting(new Setting(QUICK_NAME, List.of(QUICK_VALUE), "test"))
            .define(ParametersTable.bundled(), references);
    LoadedSurvey loaded = new SurveyLoader(definition, references, Progress.NONE).load();
    Map<String, List<String>> tables = new LinkedHashMap<>();
    for (ResultTable table :
        ResultTables.measured(
            new SurveyMeasurer(loaded.orThrow(), definition.parameters(), references, Progress.NONE)
                .measure(),
            definition.parameters(),
            references)) {
      tables.put(table.name(), rows(table));
    }
    return tables;
  }

  private static List<String> rows(ResultTable table) {
    List<String> rows = new ArrayList<>();
    for (ResultTable.Row row : table.rows()) {
      StringBuilder text = new StringBuilder();
      for (int i = 0; i < row.values().size(); i++) {
        Column column = table.columns().get(i);
        if (!OF_THE_FILE.contains(column.name())) {
          text.append(column.name()).append('=').append(row.values().get(i)).append(' ');
        }
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
      Geometry geometry = null;
      for (String name : row.schema().fieldNames()) {
        if (name.equals("geometry")) {
          geometry = row.getAs(name);
        } else if (!name.equals("bay") && !OF_THE_FILE.contains(name)) {
          text.append(name).append('=').append(row.<Object>getAs(name)).append(' ');
        }
      }
      if (geometry != null) {
        text.append(bits(geometry));
      }
      rows.add(text.toString());
    }
    return rows;
  }

  /** Every bit of the coordinates; a multi geometry of one part is that part. */
  private static String bits(Geometry geometry) {
    Geometry single =
        geometry instanceof GeometryCollection && geometry.getNumGeometries() == 1
            ? geometry.getGeometryN(0)
            : geometry;
    return WKBWriter.toHex(new WKBWriter(2).write(single));
  }
}
