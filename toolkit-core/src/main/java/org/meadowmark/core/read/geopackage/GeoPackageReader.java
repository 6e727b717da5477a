package org.meadowmark.core.read.geopackage;

import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.read.DateText;
import org.meadowmark.core.read.FeatureSink;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.read.LayerProblems;
import org.meadowmark.core.read.LayerReader;
import org.meadowmark.core.read.SourceFeature;
import org.meadowmark.core.read.geopackage.FeatureTable.AttributeColumn;
import org.meadowmark.core.survey.LayerSource;
import org.sqlite.SQLiteErrorCode;

/**
 * Reads a feature layer of a GeoPackage, in the order of its ids. Nothing is written to the file or
 * beside it.
 *
 * <p>The reference system is the authority's code where the file has one, with the well-known text;
 * the undefined systems −1 and 0 are no system. A date and time keeps its date. Blobs other than
 * the geometry are left out.
 */
public final class GeoPackageReader implements LayerReader {

  @Override
  public void read(LayerSource source, FeatureSink sink) {
    LayerProblems problems = new LayerProblems(source, "");
    try (SafeConnection safe = SafeConnection.open(source.file(), problems)) {
      FeatureTable table = new GeoPackageCatalog(safe.connection(), problems).find();
      readTable(safe, table, problems.withLayer(table.name()), sink);
    } catch (IOException e) {
      throw problems.unreadable(e);
    } catch (SQLException e) {
      if (e.getErrorCode() == SQLiteErrorCode.SQLITE_INTERRUPT.code) {
        throw problems.refused(
            "takes too long to give a row; a view in it may have no end",
            "write the layer as a table with a GIS",
            e);
      }
      throw problems.refused(
          "is not a readable SQLite file (" + LayerProblems.detail(e) + ")",
          "get a whole copy of the GeoPackage",
          e);
    }
  }

  private static void readTable(
      SafeConnection safe, FeatureTable table, LayerProblems problems, FeatureSink sink)
      throws SQLException {
    Connection connection = safe.connection();
    long count = count(connection, table);
    if (safe.isMoreThanHeld(count)) {
      throw problems.refused(
          "states " + count + " rows, more than the file has bytes",
          "write the layer as a table with a GIS");
    }
    sink.header(
        new LayerHeader(
            table.name(),
            table.columns().stream().map(AttributeColumn::name).toList(),
            table.crs(),
            count));
    GeoPackageBinary binary = new GeoPackageBinary();
    try (PreparedStatement query = connection.prepareStatement(select(table));
        ResultSet rows = query.executeQuery()) {
      long position = 0;
      while (rows.next()) {
        safe.rowCame();
        position++;
        String id = table.idColumn().isPresent() ? rows.getString(1) : Long.toString(position);
        try {
          Object stored = rows.getObject(2);
          Optional<Geometry> geometry =
              stored == null ? Optional.empty() : Optional.of(decode(binary, stored));
          sink.feature(
              new SourceFeature(problems.ref(id), geometry, attributes(rows, table.columns())));
        } catch (ParseException e) {
          sink.finding(
              problems.skipped(
                  id,
                  FindingCode.UNREADABLE_FEATURE,
                  "its geometry cannot be read (" + LayerProblems.detail(e) + ")"));
        }
      }
    }
  }

  private static Geometry decode(GeoPackageBinary binary, Object stored) throws ParseException {
    if (stored instanceof byte[] bytes) {
      return binary.decode(bytes);
    }
    throw new ParseException("not a blob");
  }

  private static long count(Connection connection, FeatureTable table) throws SQLException {
    try (PreparedStatement query =
            connection.prepareStatement("SELECT count(*) FROM " + quoted(table.name()));
        ResultSet row = query.executeQuery()) {
      return row.next() ? row.getLong(1) : -1;
    }
  }

  private static String select(FeatureTable table) {
    StringBuilder sql = new StringBuilder("SELECT ");
    sql.append(table.idColumn().map(GeoPackageReader::quoted).orElse("NULL"));
    sql.append(", ").append(quoted(table.geometryColumn()));
    for (AttributeColumn column : table.columns()) {
      sql.append(", ").append(quoted(column.name()));
    }
    sql.append(" FROM ").append(quoted(table.name()));
    table.idColumn().ifPresent(id -> sql.append(" ORDER BY ").append(quoted(id)));
    return sql.toString();
  }

  private static Map<String, Object> attributes(ResultSet rows, List<AttributeColumn> columns)
      throws SQLException {
    Map<String, Object> values = new HashMap<>();
    for (int i = 0; i < columns.size(); i++) {
      AttributeColumn column = columns.get(i);
      Object value = value(column.type(), rows.getObject(i + 3));
      if (value != null) {
        values.put(column.name(), value);
      }
    }
    return values;
  }

  private static Object value(FeatureTable.Type type, Object stored) {
    if (stored == null || stored instanceof byte[]) {
      return null;
    }
    if (stored instanceof Double || stored instanceof Float) {
      return ((Number) stored).doubleValue();
    }
    if (stored instanceof Number number) {
      return type == FeatureTable.Type.BOOLEAN
          ? (Object) (number.longValue() != 0)
          : number.longValue();
    }
    String text = stored.toString();
    return switch (type) {
      case DATE, DATE_TIME -> DateText.dateOfDateTime(text).<Object>map(d -> d).orElse(text);
      default -> text;
    };
  }

  private static String quoted(String name) {
    return '"' + name.replace("\"", "\"\"") + '"';
  }
}
