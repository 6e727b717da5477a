package org.meadowmark.cluster.assign;

import java.util.Arrays;
import java.util.List;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.functions;
import org.meadowmark.cluster.geoparquet.GeoParquetColumns;
import org.meadowmark.cluster.geoparquet.GeoParquetLayer;

/** Features that are in no bay, in a form in which layers of all kinds can stand together. */
public final class OutsideFeatures {
  /** Name of the table. */
  public static final String NAME = "features_in_no_bay";

  private OutsideFeatures() {}

  /**
   * A row for each feature without a bay: role, file, id and place in the file where the layer has
   * them, and its geometry as it is in the layer.
   *
   * @param assigned rows of the layer, see {@link BayPolygons#assign}
   * @param layer the layer
   */
  public static Dataset<Row> of(Dataset<Row> assigned, GeoParquetLayer layer) {
    List<String> names = Arrays.asList(assigned.schema().fieldNames());
    return assigned
        .filter(functions.col(BayPolygons.BAY).isNull())
        .select(
            functions.lit(layer.source().role().key()).alias("role"),
            functions.lit(layer.source().fileLabel()).alias("file"),
            known(names, GeoParquetColumns.FEATURE_ID, "string").alias("feature_id"),
            known(names, GeoParquetColumns.FEATURE_ORDER, "bigint").alias("feature_order"),
            functions.col("`" + layer.geometryColumn() + "`").alias("well_known_binary"));
  }

  private static Column known(List<String> names, String column, String type) {
    return (names.contains(column) ? functions.col(column) : functions.lit(null)).cast(type);
  }
}
