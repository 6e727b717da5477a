package org.meadowmark.core.read.geopackage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.CrsText.AxisOrder;
import org.meadowmark.core.read.LayerProblems;
import org.meadowmark.core.read.geopackage.FeatureTable.AttributeColumn;

/** Finds the wanted feature table of a GeoPackage and what the file says about it. */
final class GeoPackageCatalog {
  private final Connection connection;
  private final LayerProblems problems;

  GeoPackageCatalog(Connection connection, LayerProblems problems) {
    this.connection = connection;
    this.problems = problems;
  }

  FeatureTable find() throws SQLException {
    if (!isGeoPackage()) {
      throw problems.refused(
          "is a SQLite file but no GeoPackage (it has no gpkg_contents)", "give a GeoPackage");
    }
    return describe(choose(featureTableNames()));
  }

  private boolean isGeoPackage() throws SQLException {
    return queryOne(
            "SELECT count(*) FROM sqlite_master WHERE name IN"
                + " ('gpkg_contents', 'gpkg_geometry_columns', 'gpkg_spatial_ref_sys')")
        .equals(Optional.of("3"));
  }

  private List<String> featureTableNames() throws SQLException {
    List<String> names = new ArrayList<>();
    try (PreparedStatement query =
            connection.prepareStatement(
                "SELECT c.table_name FROM gpkg_contents c JOIN gpkg_geometry_columns g"
                    + " ON lower(g.table_name) = lower(c.table_name)"
                    + " WHERE c.data_type = 'features' ORDER BY c.table_name");
        ResultSet rows = query.executeQuery()) {
      while (rows.next()) {
        names.add(rows.getString(1));
      }
    }
    return names;
  }

  private String choose(List<String> names) {
    if (names.isEmpty()) {
      throw problems.refused("has no feature layer", "give a GeoPackage with features");
    }
    String list = LayerProblems.oneLine(String.join(", ", names));
    Optional<String> wanted = problems.source().layer();
    if (wanted.isEmpty()) {
      if (names.size() > 1) {
        throw problems.refused(
            "has " + names.size() + " feature layers", "name the layer, one of: " + list);
      }
      return names.get(0);
    }
    return names.stream()
        .filter(wanted.get()::equals)
        .findFirst()
        .or(() -> names.stream().filter(wanted.get()::equalsIgnoreCase).findFirst())
        .orElseThrow(
            () ->
                problems.refused(
                    "has no feature layer '" + LayerProblems.oneLine(wanted.get()) + "'",
                    "use one of: " + list));
  }

  private FeatureTable describe(String name) throws SQLException {
    String geometryColumn;
    int srsId;
    try (PreparedStatement query =
        connection.prepareStatement(
            "SELECT column_name, srs_id FROM gpkg_geometry_columns"
                + " WHERE lower(table_name) = lower(?)")) {
      query.setString(1, name);
      try (ResultSet row = query.executeQuery()) {
        row.next();
        geometryColumn = row.getString(1);
        srsId = row.getInt(2);
      }
    }
    List<AttributeColumn> columns = new ArrayList<>();
    Optional<String> idColumn = Optional.empty();
    boolean geometryFound = false;
    try (PreparedStatement query =
        connection.prepareStatement(
            "SELECT name, type, pk FROM pragma_table_info(?) ORDER BY cid")) {
      query.setString(1, name);
      try (ResultSet rows = query.executeQuery()) {
        while (rows.next()) {
          String column = rows.getString(1);
          String type = String.valueOf(rows.getString(2)).toUpperCase(Locale.ROOT);
          if (column.equalsIgnoreCase(geometryColumn)) {
            geometryFound = true;
          } else if (rows.getInt(3) == 1 && type.equals("INTEGER") && idColumn.isEmpty()) {
            idColumn = Optional.of(column);
          } else {
            columns.add(new AttributeColumn(column, typeOf(type)));
          }
        }
      }
    }
    if (!geometryFound) {
      throw problems
          .withLayer(name)
          .refused(
              "its geometry column '"
                  + LayerProblems.oneLine(String.valueOf(geometryColumn))
                  + "' does not exist",
              "write the file anew with a GIS");
    }
    return new FeatureTable(name, geometryColumn, idColumn, columns, referenceSystem(srsId));
  }

  private static FeatureTable.Type typeOf(String declared) {
    return switch (declared) {
      case "BOOLEAN" -> FeatureTable.Type.BOOLEAN;
      case "DATE" -> FeatureTable.Type.DATE;
      case "DATETIME" -> FeatureTable.Type.DATE_TIME;
      default -> FeatureTable.Type.STORED;
    };
  }

  /** The authority's code first; its text too, for systems that no authority knows. */
  private Optional<CrsText> referenceSystem(int srsId) throws SQLException {
    if (srsId == 0 || srsId == -1) {
      return Optional.empty();
    }
    try (PreparedStatement query =
        connection.prepareStatement(
            "SELECT organization, organization_coordsys_id, definition"
                + " FROM gpkg_spatial_ref_sys WHERE srs_id = ?")) {
      query.setInt(1, srsId);
      try (ResultSet row = query.executeQuery()) {
        if (!row.next()) {
          return Optional.empty();
        }
        String organization = String.valueOf(row.getString(1)).strip().toUpperCase(Locale.ROOT);
        int number = row.getInt(2);
        Optional<String> wkt =
            Optional.ofNullable(row.getString(3))
                .map(String::strip)
                .filter(text -> !text.isEmpty() && !text.equalsIgnoreCase("undefined"));
        Optional<String> code =
            organization.matches("[A-Z]+") && !organization.equals("NONE") && number > 0
                ? Optional.of(organization + ":" + number)
                : Optional.empty();
        return code.isEmpty() && wkt.isEmpty()
            ? Optional.empty()
            : Optional.of(new CrsText(code, wkt, AxisOrder.EAST_FIRST));
      }
    }
  }

  private Optional<String> queryOne(String sql) throws SQLException {
    try (PreparedStatement query = connection.prepareStatement(sql);
        ResultSet row = query.executeQuery()) {
      return row.next() ? Optional.ofNullable(row.getString(1)) : Optional.empty();
    }
  }
}
