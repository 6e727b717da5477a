package org.meadowmark.cluster.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.types.StructType;

/**
 * One row a bay and one for all of them. What adds up is added; a share is taken of the sums.
 *
 * <p>Patches, gaps and connectivity are not added: bays do not hang together.
 */
public final class BayTotals {
  /** Name of the table. */
  public static final String NAME = "bays";

  private static final List<String> COUNTS = List.of("bed_count", "scar_count", "gap_count");
  private static final List<String> SUMS =
      List.of("grass_area_m2", "surveyed_area_m2", "scar_length_m", "scarred_area_m2");
  private static final double PERCENT = 100;

  private BayTotals() {}

  /** Columns. */
  public static StructType schema() {
    StructType schema = new StructType().add("scope", "string", false).add("bay", "string", true);
    for (String count : COUNTS) {
      schema = schema.add(count, "bigint", true);
    }
    for (String sum : SUMS) {
      schema = schema.add(sum, "double", true);
    }
    return schema.add("share_scarred_pct", "double", true);
  }

  /**
   * Rows, bays in the order given, then all.
   *
   * @param wholeBays line for the whole of each bay in the table of areas
   */
  public static List<Row> rows(Map<String, Map<String, Object>> wholeBays) {
    List<Row> rows = new ArrayList<>();
    long[] counts = new long[COUNTS.size()];
    double[] sums = new double[SUMS.size()];
    for (Map.Entry<String, Map<String, Object>> bay : wholeBays.entrySet()) {
      List<Object> cells = new ArrayList<>(List.of("bay", bay.getKey()));
      for (int i = 0; i < counts.length; i++) {
        long count = (Long) bay.getValue().getOrDefault(COUNTS.get(i), 0L);
        counts[i] += count;
        cells.add(count);
      }
      for (int i = 0; i < sums.length; i++) {
        double sum = (Double) bay.getValue().getOrDefault(SUMS.get(i), 0.0);
        sums[i] += sum;
        cells.add(sum);
      }
      cells.add(bay.getValue().get("share_scarred_pct"));
      rows.add(RowFactory.create(cells.toArray()));
    }
    List<Object> cells = new ArrayList<>();
    cells.add("all bays");
    cells.add(null);
    for (long count : counts) {
      cells.add(count);
    }
    for (double sum : sums) {
      cells.add(sum);
    }
    double surveyed = sums[SUMS.indexOf("surveyed_area_m2")];
    cells.add(surveyed > 0 ? PERCENT * sums[SUMS.indexOf("scarred_area_m2")] / surveyed : null);
    rows.add(RowFactory.create(cells.toArray()));
    return rows;
  }
}
