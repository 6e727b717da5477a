package org.meadowmark.cluster.geoparquet;

import java.io.Serializable;
import java.math.BigDecimal;
import java.sql.Date;
import java.sql.Timestamp;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.types.StructType;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;
import org.meadowmark.core.read.LayerProblems;

/** Turns rows of a layer into features on their way. */
public final class FeatureEncoder implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final int NONE = -1;

  private final int[] attributes;
  private final int geometry;
  private final int id;
  private final int order;

  /** An encoder for the rows of a layer. */
  public FeatureEncoder(GeoParquetLayer layer) {
    StructType schema = layer.rows().schema();
    List<String> names = Arrays.asList(schema.fieldNames());
    attributes = layer.attributes().stream().mapToInt(names::indexOf).toArray();
    geometry = names.indexOf(layer.geometryColumn());
    id = names.indexOf(GeoParquetColumns.FEATURE_ID);
    order = names.indexOf(GeoParquetColumns.FEATURE_ORDER);
  }

  /** The feature of a row. */
  public FeatureRow encode(Row row) {
    List<Value> values = new ArrayList<>();
    for (int i = 0; i < attributes.length; i++) {
      if (!row.isNullAt(attributes[i])) {
        values.add(Value.of(i, plain(row.get(attributes[i]))));
      }
    }
    Optional<Geometry> read = Optional.empty();
    String problem = "";
    if (!row.isNullAt(geometry)) {
      try {
        read = Optional.of(new WKBReader().read(row.<byte[]>getAs(geometry)));
      } catch (ParseException | IllegalArgumentException e) {
        problem = LayerProblems.detail(e);
      }
    }
    return new FeatureRow(
        id == NONE || row.isNullAt(id) ? "" : row.get(id).toString(),
        order == NONE || row.isNullAt(order) ? 0 : row.getLong(order),
        read,
        problem,
        values);
  }

  private static Object plain(Object value) {
    if (value instanceof Date date) {
      return date.toLocalDate();
    } else if (value instanceof Timestamp time) {
      return time.toLocalDateTime().toLocalDate();
    } else if (value instanceof LocalDateTime time) {
      return time.toLocalDate();
    } else if (value instanceof Float || value instanceof BigDecimal) {
      return ((Number) value).doubleValue();
    } else if (value instanceof Byte || value instanceof Short) {
      return ((Number) value).longValue();
    }
    return value;
  }
}
