package org.meadowmark.core.write;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.meadowmark.core.model.OutputExistsException;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.model.WriteAdvice;

/**
 * Writes result tables as one GeoPackage 1.3 file with spatial indexes and column descriptions.
 *
 * <p>Tables with a geometry become feature tables ({@code fid}, {@code geom}, columns), the others
 * attribute tables. Rows are streamed. The same input gives the same bytes.
 *
 * <p>Source: OGC 12-128r17, <i>GeoPackage Encoding Standard</i> 1.3.
 */
public final class GeoPackageWriter {
  private GeoPackageWriter() {}

  /**
   * Writes a file.
   *
   * @param file where to; its folder must exist
   * @param overwrite whether an existing file is replaced
   * @param crsCode reference system of every geometry, {@code AUTHORITY:NUMBER}, or a name for a
   *     system that no authority lists
   * @param crsWkt its well-known text (version 1, as the standard demands)
   * @param tables the tables, with different names
   * @param lastChange time stamp of the contents; a fixed one makes files comparable
   * @throws OutputExistsException if the file exists and {@code overwrite} is false
   * @throws OutputFailedException if it cannot be written
   * @throws IllegalArgumentException if a table breaks its own description
   */
  public static void write(
      Path file,
      boolean overwrite,
      String crsCode,
      String crsWkt,
      List<ResultTable> tables,
      Instant lastChange) {
    write(file, overwrite, crsCode, crsWkt, tables, lastChange, Optional.empty());
  }

  /**
   * Writes a file that says where its figures come from.
   *
   * @param file where to; its folder must exist
   * @param overwrite whether an existing file is replaced
   * @param crsCode reference system of every geometry
   * @param crsWkt its well-known text
   * @param tables the tables, with different names
   * @param lastChange time stamp of the contents; a fixed one makes files comparable
   * @param about what the file says about itself, in the metadata extension of the standard
   * @throws OutputExistsException if the file exists and {@code overwrite} is false
   * @throws OutputFailedException if it cannot be written
   * @throws IllegalArgumentException if a table breaks its own description
   */
  public static void write(
      Path file,
      boolean overwrite,
      String crsCode,
      String crsWkt,
      List<ResultTable> tables,
      Instant lastChange,
      Optional<GeoPackageAbout> about) {
    GeoPackageCrs crs = GeoPackageCrs.of(crsCode, crsWkt);
    checkTableNames(tables);
    AtomicFile.write(
        file, overwrite, temporary -> writeNew(file, temporary, crs, tables, lastChange, about));
  }

  private static void checkTableNames(List<ResultTable> tables) {
    Set<String> names = new HashSet<>();
    for (ResultTable table : tables) {
      TableRules.checkNames(table, GeoPackageTable.ID_COLUMN, GeoPackageTable.GEOMETRY_COLUMN);
      String name = table.name().toLowerCase(Locale.ROOT);
      if (name.startsWith("gpkg_") || name.startsWith("sqlite_") || name.startsWith("rtree_")) {
        throw new IllegalArgumentException("table name " + table.name() + " is reserved");
      }
      if (!names.add(name)) {
        throw new IllegalArgumentException("two tables are named " + table.name());
      }
    }
  }

  private static void writeNew(
      Path file,
      Path temporary,
      GeoPackageCrs crs,
      List<ResultTable> tables,
      Instant lastChange,
      Optional<GeoPackageAbout> about)
      throws IOException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + temporary.toUri())) {
      try (Statement statement = connection.createStatement()) {
        // A failed file is deleted whole, so neither a journal nor syncing earns its time.
        statement.execute("PRAGMA journal_mode = OFF");
        statement.execute("PRAGMA synchronous = OFF");
        statement.execute("PRAGMA encoding = 'UTF-8'");
        statement.execute("PRAGMA application_id = " + GeoPackageSchema.APPLICATION_ID);
        statement.execute("PRAGMA user_version = " + GeoPackageSchema.USER_VERSION);
      }
      connection.setAutoCommit(false);
      GeoPackageSchema.create(connection);
      addReferenceSystems(connection, crs);
      for (ResultTable table : tables) {
        new GeoPackageTable(connection, table, crs, lastChange).write();
      }
      if (about.isPresent()) {
        GeoPackageMetadata.add(connection, about.get(), GeoPackageTable.timeStamp(lastChange));
      }
      connection.commit();
    } catch (SQLException e) {
      throw new OutputFailedException(
          file
              + ": cannot be written ("
              + e.getMessage()
              + "); "
              + WriteAdvice.of(String.valueOf(e.getMessage())),
          e);
    }
  }

  private static void addReferenceSystems(Connection connection, GeoPackageCrs crs)
      throws SQLException {
    List<GeoPackageCrs> required = GeoPackageCrs.REQUIRED;
    for (GeoPackageCrs each : required) {
      addReferenceSystem(connection, each);
    }
    if (required.stream().noneMatch(each -> each.srsId() == crs.srsId())) {
      addReferenceSystem(connection, crs);
    }
  }

  private static void addReferenceSystem(Connection connection, GeoPackageCrs crs)
      throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO gpkg_spatial_ref_sys VALUES (?, ?, ?, ?, ?, NULL)")) {
      insert.setString(1, crs.name());
      insert.setInt(2, crs.srsId());
      insert.setString(3, crs.organization());
      insert.setInt(4, crs.organizationCode());
      insert.setString(5, crs.wkt());
      insert.executeUpdate();
    }
  }
}
