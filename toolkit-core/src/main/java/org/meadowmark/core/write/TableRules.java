package org.meadowmark.core.write;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** What every writer demands of a table: values of the stated type, geometries of the kind. */
final class TableRules {
  private TableRules() {}

  /** Refuses two columns of one name (compared without case) or a reserved name. */
  static void checkNames(ResultTable table, String... reserved) {
    Set<String> seen = new HashSet<>();
    for (String name : reserved) {
      seen.add(name.toLowerCase(Locale.ROOT));
    }
    for (Column column : table.columns()) {
      if (!seen.add(column.name().toLowerCase(Locale.ROOT))) {
        throw new IllegalArgumentException(
            "table " + table.name() + ": column name " + column.name() + " is taken");
      }
    }
  }

  /** The values of a row once their number and types are known to be right. */
  static List<Object> values(ResultTable table, ResultTable.Row row) {
    List<Object> values = row.values();
    if (values.size() != table.columns().size()) {
      throw new IllegalArgumentException(
          "table %s: %d values for %d columns"
              .formatted(table.name(), values.size(), table.columns().size()));
    }
    for (int i = 0; i < values.size(); i++) {
      if (!fits(table.columns().get(i).type(), values.get(i))) {
        throw new IllegalArgumentException(
            "table %s: column %s does not take %s"
                .formatted(table.name(), table.columns().get(i), values.get(i)));
      }
    }
    return values;
  }

  private static boolean fits(Column.Type type, Object value) {
    if (value == null) {
      return true;
    }
    return switch (type) {
      case TEXT -> value instanceof String;
      case INTEGER -> value instanceof Long || value instanceof Integer;
      case REAL -> value instanceof Double number && Double.isFinite(number);
      case DATE -> value instanceof LocalDate;
      case BOOLEAN -> value instanceof Boolean;
    };
  }

  /** The geometry of a row, wrapped in a multi geometry where the table's kind is one. */
  static Optional<Geometry> geometry(ResultTable table, ResultTable.Row row) {
    return row.geometry().map(geometry -> asKind(table, geometry));
  }

  private static Geometry asKind(ResultTable table, Geometry geometry) {
    GeometryFactory factory = geometry.getFactory();
    Geometry wrapped = geometry;
    if (table.geometryKind() == GeometryKind.MULTILINESTRING
        && geometry instanceof LineString line) {
      wrapped = factory.createMultiLineString(new LineString[] {line});
    } else if (table.geometryKind() == GeometryKind.MULTIPOLYGON
        && geometry instanceof Polygon polygon) {
      wrapped = factory.createMultiPolygon(new Polygon[] {polygon});
    }
    if (!isOfKind(table.geometryKind(), wrapped)) {
      throw new IllegalArgumentException(
          "table %s takes %s, not %s"
              .formatted(table.name(), table.geometryKind(), geometry.getGeometryType()));
    }
    return wrapped;
  }

  private static boolean isOfKind(GeometryKind kind, Geometry geometry) {
    return switch (kind) {
      case NONE -> false;
      case GEOMETRY -> true;
      default -> kind.name().equalsIgnoreCase(geometry.getGeometryType());
    };
  }
}
