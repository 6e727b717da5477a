package org.meadowmark.core.write;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.meadowmark.core.write.Column.Type;
import org.meadowmark.core.write.ResultTable.GeometryKind;
import org.meadowmark.core.write.ResultTable.Row;

/** Small result tables for the writers' tests. */
final class Tables {
  static final List<Column> COLUMNS =
      List.of(
          new Column("name", Type.TEXT, "", "Name of the thing."),
          new Column("scar_count", Type.INTEGER, "1", "How many."),
          new Column("area_m2", Type.REAL, "m²", "How large."),
          new Column("surveyed", Type.DATE, "", "When."),
          new Column("scarred", Type.BOOLEAN, "", "Whether."));

  static final List<Object> FULL = List.of("Étang", 3L, 59.91, LocalDate.of(2024, 6, 30), true);
  static final List<Object> NOTHING = Arrays.asList(null, null, null, null, null);

  private Tables() {}

  static ResultTable of(String name, GeometryKind kind, Row... rows) {
    return new ResultTable(name, "Rows of a test.", COLUMNS, kind, List.of(rows));
  }

  static Row row(List<Object> values, String wkt) {
    return new Row(values, Optional.of(geometry(wkt)));
  }

  static Row row(List<Object> values) {
    return new Row(values, Optional.empty());
  }

  static Geometry geometry(String wkt) {
    try {
      return new WKTReader().read(wkt);
    } catch (ParseException e) {
      throw new IllegalArgumentException(wkt, e);
    }
  }
}
