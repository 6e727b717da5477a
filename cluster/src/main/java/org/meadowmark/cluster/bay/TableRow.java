package org.meadowmark.cluster.bay;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.cluster.geoparquet.Value;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/**
 * A row of a result table on its way.
 *
 * @param geometry its geometry, where the table has them
 * @param values its values; one that is missing is left out
 */
public record TableRow(Optional<Geometry> geometry, List<Value> values) {
  /** A row whose columns have other places in the table of all bays. */
  static TableRow of(ResultTable table, ResultTable.Row row, int[] places) {
    List<Value> values = new ArrayList<>();
    for (int i = 0; i < row.values().size(); i++) {
      if (row.values().get(i) != null) {
        values.add(Value.of(places[i], row.values().get(i)));
      }
    }
    return new TableRow(row.geometry().map(g -> wrapped(table.geometryKind(), g)), values);
  }

  private static Geometry wrapped(GeometryKind kind, Geometry geometry) {
    if (kind == GeometryKind.MULTILINESTRING && geometry instanceof LineString line) {
      return geometry.getFactory().createMultiLineString(new LineString[] {line});
    }
    if (kind == GeometryKind.MULTIPOLYGON && geometry instanceof Polygon polygon) {
      return geometry.getFactory().createMultiPolygon(new Polygon[] {polygon});
    }
    return geometry;
  }
}
