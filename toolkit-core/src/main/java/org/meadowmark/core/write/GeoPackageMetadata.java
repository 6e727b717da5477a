package org.meadowmark.core.write;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;

/**
 * The tables of the metadata extension.
 *
 * <p>Source: OGC 12-128r17, <i>GeoPackage Encoding Standard</i> 1.3, annex F.8.
 */
final class GeoPackageMetadata {
  private static final List<String> TABLES =
      List.of(
          """
          CREATE TABLE gpkg_metadata (
            id INTEGER CONSTRAINT m_pk PRIMARY KEY ASC NOT NULL,
            md_scope TEXT NOT NULL DEFAULT 'dataset',
            md_standard_uri TEXT NOT NULL,
            mime_type TEXT NOT NULL DEFAULT 'text/xml',
            metadata TEXT NOT NULL DEFAULT ''
          )""",
          """
          CREATE TABLE gpkg_metadata_reference (
            reference_scope TEXT NOT NULL,
            table_name TEXT,
            column_name TEXT,
            row_id_value INTEGER,
            timestamp DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
            md_file_id INTEGER NOT NULL,
            md_parent_id INTEGER,
            CONSTRAINT crmr_mfi_fk FOREIGN KEY (md_file_id) REFERENCES gpkg_metadata(id),
            CONSTRAINT crmr_mpi_fk FOREIGN KEY (md_parent_id) REFERENCES gpkg_metadata(id)
          )""",
          """
          INSERT INTO gpkg_extensions VALUES
            ('gpkg_metadata', NULL, 'gpkg_metadata',
             'http://www.geopackage.org/spec130/#extension_metadata', 'read-write'),
            ('gpkg_metadata_reference', NULL, 'gpkg_metadata',
             'http://www.geopackage.org/spec130/#extension_metadata', 'read-write')""");

  private GeoPackageMetadata() {}

  /** Adds the tables and one entry about the whole file. */
  static void add(Connection connection, GeoPackageAbout about, String timeStamp)
      throws SQLException {
    for (String table : TABLES) {
      GeoPackageSchema.execute(connection, table);
    }
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO gpkg_metadata VALUES (1, 'dataset', ?, 'text/xml', ?)")) {
      insert.setString(1, GeoPackageAbout.STANDARD);
      insert.setString(2, about.xml());
      insert.executeUpdate();
    }
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO gpkg_metadata_reference VALUES"
                + " ('geopackage', NULL, NULL, NULL, ?, 1, NULL)")) {
      insert.setString(1, timeStamp);
      insert.executeUpdate();
    }
  }
}
