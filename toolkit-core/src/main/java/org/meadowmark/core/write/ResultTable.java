package org.meadowmark.core.write;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;

/**
 * A table of results, with or without a geometry a row, that any format can be written from.
 *
 * @param name name of the file or layer, snake case
 * @param description what a row is, one sentence
 * @param columns columns in order; the geometry is not one of them
 * @param geometryKind kind of geometry of every row
 * @param rows rows in the order to write
 */
public record ResultTable(
    String name,
    String description,
    List<Column> columns,
    GeometryKind geometryKind,
    Iterable<Row> rows) {

  /** Kind of geometry. Multi kinds take single geometries too: the writer wraps them. */
  public enum GeometryKind {
    NONE,
    POINT,
    LINESTRING,
    MULTILINESTRING,
    POLYGON,
    MULTIPOLYGON,
    /** Mixed: scars are lines or polygons. */
    GEOMETRY
  }

  /**
   * A row.
   *
   * @param values one a column, null where nothing is known
   * @param geometry geometry, where the table has them
   */
  public record Row(List<Object> values, Optional<Geometry> geometry) {
    public Row {
      values = Collections.unmodifiableList(new ArrayList<>(values));
    }
  }

  public ResultTable {
    columns = List.copyOf(columns);
  }
}
