package org.meadowmark.core.write;

import static org.meadowmark.core.write.GeoPackageSchema.execute;
import static org.meadowmark.core.write.GeoPackageSchema.quoted;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** Writes one table of a GeoPackage with its descriptions and its spatial index. */
final class GeoPackageTable {
  static final String ID_COLUMN = "fid";
  static final String GEOMETRY_COLUMN = "geom";

  private static final int ROWS_PER_BATCH = 1_000;
  private static final DateTimeFormatter TIME_STAMP =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS'Z'", Locale.ROOT)
          .withZone(ZoneOffset.UTC);

  private final Connection connection;
  private final ResultTable table;
  private final GeoPackageCrs crs;
  private final Instant lastChange;
  private final boolean hasGeometry;
  private final Envelope extent = new Envelope();

  GeoPackageTable(Connection connection, ResultTable table, GeoPackageCrs crs, Instant lastChange) {
    this.connection = connection;
    this.table = table;
    this.crs = crs;
    this.lastChange = lastChange;
    this.hasGeometry = table.geometryKind() != GeometryKind.NONE;
  }

  void write() throws SQLException {
    createTable();
    if (hasGeometry) {
      createIndex();
      insertFeatures();
      // Only now: this connection lacks the functions that the triggers call.
      GeoPackageSchema.createIndexTriggers(connection, table.name(), GEOMETRY_COLUMN, ID_COLUMN);
    } else {
      insertAttributes();
    }
    addContents();
    if (hasGeometry) {
      addGeometryColumn();
    }
    addColumnDescriptions();
  }

  private void createTable() throws SQLException {
    StringBuilder sql = new StringBuilder("CREATE TABLE " + quoted(table.name()) + " (\n  ");
    sql.append(quoted(ID_COLUMN)).append(" INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL");
    if (hasGeometry) {
      sql.append(",\n  ").append(quoted(GEOMETRY_COLUMN)).append(' ').append(table.geometryKind());
    }
    for (Column column : table.columns()) {
      sql.append(",\n  ").append(quoted(column.name())).append(' ').append(sqlType(column.type()));
    }
    execute(connection, sql.append("\n)").toString());
  }

  private static String sqlType(Column.Type type) {
    return switch (type) {
      case TEXT -> "TEXT";
      case INTEGER -> "INTEGER";
      case REAL -> "REAL";
      case DATE -> "DATE";
      case BOOLEAN -> "BOOLEAN";
    };
  }

  private void createIndex() throws SQLException {
    execute(
        connection,
        "CREATE VIRTUAL TABLE "
            + quoted(GeoPackageSchema.indexName(table.name(), GEOMETRY_COLUMN))
            + " USING rtree(id, minx, maxx, miny, maxy)");
    update(
        "INSERT INTO gpkg_extensions VALUES (?, ?, 'gpkg_rtree_index',"
            + " 'http://www.geopackage.org/spec130/#extension_rtree', 'write-only')",
        table.name(),
        GEOMETRY_COLUMN);
  }

  private void insertFeatures() throws SQLException {
    GeoPackageGeometry encoder = new GeoPackageGeometry(crs.srsId());
    String index = quoted(GeoPackageSchema.indexName(table.name(), GEOMETRY_COLUMN));
    try (PreparedStatement insert = connection.prepareStatement(insertSql());
        PreparedStatement insertBox =
            connection.prepareStatement("INSERT INTO " + index + " VALUES (?, ?, ?, ?, ?)")) {
      long fid = 0;
      for (ResultTable.Row row : table.rows()) {
        fid++;
        List<Object> values = TableRules.values(table, row);
        Optional<Geometry> geometry = TableRules.geometry(table, row);
        insert.setLong(1, fid);
        insert.setObject(2, geometry.map(encoder::encode).orElse(null));
        bind(insert, 3, values);
        insert.addBatch();
        if (geometry.isPresent() && !geometry.get().isEmpty()) {
          Envelope box = geometry.get().getEnvelopeInternal();
          extent.expandToInclude(box);
          insertBox.setLong(1, fid);
          insertBox.setDouble(2, box.getMinX());
          insertBox.setDouble(3, box.getMaxX());
          insertBox.setDouble(4, box.getMinY());
          insertBox.setDouble(5, box.getMaxY());
          insertBox.addBatch();
        }
        if (fid % ROWS_PER_BATCH == 0) {
          insert.executeBatch();
          insertBox.executeBatch();
        }
      }
      insert.executeBatch();
      insertBox.executeBatch();
    }
  }

  private void insertAttributes() throws SQLException {
    try (PreparedStatement insert = connection.prepareStatement(insertSql())) {
      long fid = 0;
      for (ResultTable.Row row : table.rows()) {
        fid++;
        insert.setLong(1, fid);
        bind(insert, 2, TableRules.values(table, row));
        insert.addBatch();
        if (fid % ROWS_PER_BATCH == 0) {
          insert.executeBatch();
        }
      }
      insert.executeBatch();
    }
  }

  private String insertSql() {
    int parameters = 1 + (hasGeometry ? 1 : 0) + table.columns().size();
    return "INSERT INTO "
        + quoted(table.name())
        + " VALUES (?"
        + ", ?".repeat(parameters - 1)
        + ")";
  }

  private static void bind(PreparedStatement statement, int first, List<Object> values)
      throws SQLException {
    for (int i = 0; i < values.size(); i++) {
      Object value = values.get(i);
      int parameter = first + i;
      if (value == null) {
        statement.setNull(parameter, Types.NULL);
      } else if (value instanceof String text) {
        statement.setString(parameter, text);
      } else if (value instanceof Double number) {
        statement.setDouble(parameter, number);
      } else if (value instanceof Boolean truth) {
        statement.setInt(parameter, truth ? 1 : 0);
      } else if (value instanceof Number number) {
        statement.setLong(parameter, number.longValue());
      } else {
        statement.setString(parameter, value.toString());
      }
    }
  }

  private void addContents() throws SQLException {
    boolean hasExtent = hasGeometry && !extent.isNull();
    update(
        "INSERT INTO gpkg_contents VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        table.name(),
        hasGeometry ? "features" : "attributes",
        table.name(),
        table.description(),
        timeStamp(lastChange),
        hasExtent ? extent.getMinX() : null,
        hasExtent ? extent.getMinY() : null,
        hasExtent ? extent.getMaxX() : null,
        hasExtent ? extent.getMaxY() : null,
        hasGeometry ? crs.srsId() : null);
  }

  private void addGeometryColumn() throws SQLException {
    update(
        "INSERT INTO gpkg_geometry_columns VALUES (?, ?, ?, ?, 0, 0)",
        table.name(),
        GEOMETRY_COLUMN,
        table.geometryKind().name(),
        crs.srsId());
  }

  private void addColumnDescriptions() throws SQLException {
    for (Column column : table.columns()) {
      String unit = column.unit().isEmpty() ? "" : " [" + column.unit() + "]";
      String description = (column.description() + unit).strip();
      if (!description.isEmpty()) {
        update(
            "INSERT INTO gpkg_data_columns VALUES (?, ?, ?, NULL, ?, NULL, NULL)",
            table.name(),
            column.name(),
            column.name(),
            description);
      }
    }
  }

  /** A time as the standard writes it. */
  static String timeStamp(Instant time) {
    return TIME_STAMP.format(time);
  }

  private void update(String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setObject(i + 1, values[i]);
      }
      statement.executeUpdate();
    }
  }
}
