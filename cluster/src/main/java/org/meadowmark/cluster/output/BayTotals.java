package org.meadowmark.cluster.output;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.types.StructType;
import org.meadowmark.cluster.bay.TableRow;
import org.meadowmark.cluster.geoparquet.RowBytes;
import org.meadowmark.cluster.geoparquet.Value;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.write.Column;
import org.meadowmark.core.write.ResultTable;

/**
 * One row a bay and one for all of them. What adds up is added; a share is taken of the sums.
 *
 * <p>Patches, gaps and connectivity are not added: bays do not hang together.
 */
public final class BayTotals {
  /** Name of the table. */
  public static final String NAME = "bays";

  private static final String SURVEYED = "surveyed_area_m2";
  private static final String SCARRED = "scarred_area_m2";
  private static final String SHARE = "share_scarred_pct";
  private static final String REPAIR_COST = "repair_cost";
  private static final double PERCENT = 100;

  /** Taken from the line for the whole survey in the table of areas. */
  private static final List<String> OF_AREAS =
      List.of(
          "bed_count",
          "scar_count",
          "gap_count",
          "grass_area_m2",
          SURVEYED,
          "scar_length_m",
          SCARRED,
          SHARE);

  private static final StructType SCHEMA =
      new StructType()
          .add("scope", "string", false)
          .add("bay", "string", true)
          .add("bed_count", "bigint", true)
          .add("scar_count", "bigint", true)
          .add("gap_count", "bigint", true)
          .add("grass_area_m2", "double", true)
          .add(SURVEYED, "double", true)
          .add("scar_length_m", "double", true)
          .add(SCARRED, "double", true)
          .add(SHARE, "double", true)
          .add("segment_count", "bigint", true)
          .add("zone_count", "bigint", true)
          .add("zone_length_m", "double", true)
          .add("repaired_scar_count", "bigint", true)
          .add(REPAIR_COST, "double", true);

  private BayTotals() {}

  /** Columns. */
  public static StructType schema() {
    return SCHEMA;
  }

  /**
   * Rows, bays in order, then all.
   *
   * @param rows rows of all tables of all bays
   * @param bays names of the bays
   * @param layouts the tables without rows
   */
  public static List<Row> of(
      Dataset<Row> rows, Collection<String> bays, List<ResultTable> layouts) {
    Map<String, Map<String, Object>> figures = new TreeMap<>(Ids.ORDER);
    bays.forEach(bay -> figures.put(bay, new TreeMap<>()));
    each(
        rows,
        layouts,
        "areas",
        (bay, line) -> {
          if ("whole survey".equals(line.get("scope"))) {
            OF_AREAS.forEach(name -> add(figures.get(bay), name, line.get(name)));
          }
        });
    TableFiles.rowsOf(rows, number(layouts, "segments"))
        .groupBy("bay")
        .count()
        .collectAsList()
        .forEach(row -> add(figures.get(row.getString(0)), "segment_count", row.getLong(1)));
    each(
        rows,
        layouts,
        "zones",
        (bay, line) -> {
          add(figures.get(bay), "zone_count", 1L);
          add(figures.get(bay), "zone_length_m", line.get("length_m"));
        });
    each(
        rows,
        layouts,
        "repair_seasons",
        (bay, line) -> {
          add(figures.get(bay), "repaired_scar_count", line.get("scar_count"));
          add(figures.get(bay), REPAIR_COST, line.get("cost"));
        });
    return rows(figures);
  }

  private interface Line {
    void take(String bay, Map<String, Object> values);
  }

  private static int number(List<ResultTable> layouts, String table) {
    return layouts.stream().map(ResultTable::name).toList().indexOf(table);
  }

  private static void each(Dataset<Row> rows, List<ResultTable> layouts, String table, Line line) {
    int number = number(layouts, table);
    List<String> names = layouts.get(number).columns().stream().map(Column::name).toList();
    for (Row row : TableFiles.rowsOf(rows, number).collectAsList()) {
      Map<String, Object> values = new TreeMap<>();
      for (Value value : RowBytes.read(TableRow.class, row.<byte[]>getAs("bytes")).values()) {
        values.put(names.get(value.column()), value.object());
      }
      line.take(row.getString(0), values);
    }
  }

  private static void add(Map<String, Object> figures, String name, Object value) {
    if (value instanceof Long count) {
      figures.merge(name, count, (a, b) -> (Long) a + (Long) b);
    } else if (value instanceof Double sum) {
      figures.merge(name, sum, (a, b) -> (Double) a + (Double) b);
    }
  }

  private static List<Row> rows(Map<String, Map<String, Object>> figures) {
    List<Row> rows = new ArrayList<>();
    Map<String, Object> all = new TreeMap<>();
    figures.forEach(
        (bay, values) -> {
          rows.add(row("bay", bay, values));
          values.forEach((name, value) -> add(all, name, value));
        });
    all.remove(SHARE);
    double surveyed = (Double) all.getOrDefault(SURVEYED, 0.0);
    if (surveyed > 0) {
      all.put(SHARE, PERCENT * (Double) all.getOrDefault(SCARRED, 0.0) / surveyed);
    }
    rows.add(row("all bays", null, all));
    return rows;
  }

  /** Nothing counted is none; but where nothing is planned there is no cost, which is not 0. */
  private static Row row(String scope, String bay, Map<String, Object> values) {
    return RowFactory.create(
        Arrays.stream(SCHEMA.fields())
            .map(
                field ->
                    switch (field.name()) {
                      case "scope" -> scope;
                      case "bay" -> bay;
                      case SHARE, REPAIR_COST -> values.get(field.name());
                      default ->
                          values.getOrDefault(
                              field.name(),
                              field.dataType().typeName().equals("long")
                                  ? (Object) 0L
                                  : (Object) 0.0);
                    })
            .toArray());
  }
}
