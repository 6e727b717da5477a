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
    /** No geometry: a plain table. */
    NONE,
    /** One place a row: a mark, a planting unit. */
    POINT,
    /** One unbranched line a row: a channel segment. */
    LINESTRING,
    /** Any number of lines a row: the stretches of a zone, the line of a gap. */
    MULTILINESTRING,
    /** One surface a row, with or without holes: a patch. */
    POLYGON,
    /** Any number of surfaces a row: a bed, a management area. */
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

    /**
     * Keeps a copy of the values that cannot be changed.
     *
     * @param values one a column, null where nothing is known
     * @param geometry geometry, where the table has them
     * @throws NullPointerException if {@code values} itself is null
     */
    public Row {
      values = Collections.unmodifiableList(new ArrayList<>(values));
    }
  }

  /**
   * Keeps a copy of the columns; the rows are not copied, because a table may be too large for
   * that.
   *
   * @param name name of the file or layer, snake case
   * @param description what a row is, one sentence
   * @param columns columns in order
   * @param geometryKind kind of geometry of every row
   * @param rows rows in the order to write
   * @throws NullPointerException if {@code columns} or one of them is null
   */
  public ResultTable {
    columns = List.copyOf(columns);
  }
}
