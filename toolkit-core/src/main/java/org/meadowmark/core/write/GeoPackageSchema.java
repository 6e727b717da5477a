package org.meadowmark.core.write;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/** The tables that describe a GeoPackage, and the triggers of its spatial indexes. */
final class GeoPackageSchema {
  /** "GPKG" in ASCII. */
  static final int APPLICATION_ID = 0x47504B47;

  /** GeoPackage 1.3.0. */
  static final int USER_VERSION = 10_300;

  private static final List<String> TABLES =
      List.of(
          """
          CREATE TABLE gpkg_spatial_ref_sys (
            srs_name TEXT NOT NULL,
            srs_id INTEGER NOT NULL PRIMARY KEY,
            organization TEXT NOT NULL,
            organization_coordsys_id INTEGER NOT NULL,
            definition TEXT NOT NULL,
            description TEXT
          )""",
          """
          CREATE TABLE gpkg_contents (
            table_name TEXT NOT NULL PRIMARY KEY,
            data_type TEXT NOT NULL,
            identifier TEXT UNIQUE,
            description TEXT DEFAULT '',
            last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
            min_x DOUBLE,
            min_y DOUBLE,
            max_x DOUBLE,
            max_y DOUBLE,
            srs_id INTEGER,
            CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id)
          )""",
          """
          CREATE TABLE gpkg_geometry_columns (
            table_name TEXT NOT NULL,
            column_name TEXT NOT NULL,
            geometry_type_name TEXT NOT NULL,
            srs_id INTEGER NOT NULL,
            z TINYINT NOT NULL,
            m TINYINT NOT NULL,
            CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
            CONSTRAINT uk_gc_table_name UNIQUE (table_name),
            CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
            CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id)
          )""",
          """
          CREATE TABLE gpkg_extensions (
            table_name TEXT,
            column_name TEXT,
            extension_name TEXT NOT NULL,
            definition TEXT NOT NULL,
            scope TEXT NOT NULL,
            CONSTRAINT ge_tce UNIQUE (table_name, column_name, extension_name)
          )""",
          """
          CREATE TABLE gpkg_data_columns (
            table_name TEXT NOT NULL,
            column_name TEXT NOT NULL,
            name TEXT,
            title TEXT,
            description TEXT,
            mime_type TEXT,
            constraint_name TEXT,
            CONSTRAINT pk_gdc PRIMARY KEY (table_name, column_name),
            CONSTRAINT gdc_tn UNIQUE (table_name, name)
          )""",
          """
          CREATE TABLE gpkg_data_column_constraints (
            constraint_name TEXT NOT NULL,
            constraint_type TEXT NOT NULL,
            value TEXT,
            min NUMERIC,
            min_is_inclusive BOOLEAN,
            max NUMERIC,
            max_is_inclusive BOOLEAN,
            description TEXT,
            CONSTRAINT gdcc_ntv UNIQUE (constraint_name, constraint_type, value)
          )""",
          """
          INSERT INTO gpkg_extensions VALUES
            ('gpkg_data_columns', NULL, 'gpkg_schema',
             'http://www.geopackage.org/spec130/#extension_schema', 'read-write'),
            ('gpkg_data_column_constraints', NULL, 'gpkg_schema',
             'http://www.geopackage.org/spec130/#extension_schema', 'read-write')""");

  /**
   * Triggers that keep an index in step with its table (annex F.3 of the standard). {@code {t}} is
   * the table, {@code {c}} the geometry column, {@code {i}} the key, {@code {r}} the index, {@code
   * {p}} the name prefix.
   */
  private static final List<String> INDEX_TRIGGERS =
      List.of(
          """
          CREATE TRIGGER {p}_insert" AFTER INSERT ON {t}
            WHEN (NEW.{c} NOT NULL AND NOT ST_IsEmpty(NEW.{c}))
          BEGIN
            INSERT OR REPLACE INTO {r} VALUES (NEW.{i}, ST_MinX(NEW.{c}), ST_MaxX(NEW.{c}),
              ST_MinY(NEW.{c}), ST_MaxY(NEW.{c}));
          END""",
          """
          CREATE TRIGGER {p}_update1" AFTER UPDATE OF {c} ON {t}
            WHEN OLD.{i} = NEW.{i} AND (NEW.{c} NOTNULL AND NOT ST_IsEmpty(NEW.{c}))
          BEGIN
            INSERT OR REPLACE INTO {r} VALUES (NEW.{i}, ST_MinX(NEW.{c}), ST_MaxX(NEW.{c}),
              ST_MinY(NEW.{c}), ST_MaxY(NEW.{c}));
          END""",
          """
          CREATE TRIGGER {p}_update2" AFTER UPDATE OF {c} ON {t}
            WHEN OLD.{i} = NEW.{i} AND (NEW.{c} ISNULL OR ST_IsEmpty(NEW.{c}))
          BEGIN
            DELETE FROM {r} WHERE id = OLD.{i};
          END""",
          """
          CREATE TRIGGER {p}_update3" AFTER UPDATE ON {t}
            WHEN OLD.{i} != NEW.{i} AND (NEW.{c} NOTNULL AND NOT ST_IsEmpty(NEW.{c}))
          BEGIN
            DELETE FROM {r} WHERE id = OLD.{i};
            INSERT OR REPLACE INTO {r} VALUES (NEW.{i}, ST_MinX(NEW.{c}), ST_MaxX(NEW.{c}),
              ST_MinY(NEW.{c}), ST_MaxY(NEW.{c}));
          END""",
          """
          CREATE TRIGGER {p}_update4" AFTER UPDATE ON {t}
            WHEN OLD.{i} != NEW.{i} AND (NEW.{c} ISNULL OR ST_IsEmpty(NEW.{c}))
          BEGIN
            DELETE FROM {r} WHERE id IN (OLD.{i}, NEW.{i});
          END""",
          """
          CREATE TRIGGER {p}_delete" AFTER DELETE ON {t}
            WHEN OLD.{c} NOT NULL
          BEGIN
            DELETE FROM {r} WHERE id = OLD.{i};
          END""");

  private GeoPackageSchema() {}

  static void create(Connection connection) throws SQLException {
    for (String table : TABLES) {
      execute(connection, table);
    }
  }

  static String indexName(String table, String geometryColumn) {
    return "rtree_" + table + "_" + geometryColumn;
  }

  static void createIndexTriggers(
      Connection connection, String table, String geometryColumn, String idColumn)
      throws SQLException {
    String index = quoted(indexName(table, geometryColumn));
    for (String trigger : INDEX_TRIGGERS) {
      execute(
          connection,
          trigger
              .replace("{p}", index.substring(0, index.length() - 1))
              .replace("{r}", index)
              .replace("{t}", quoted(table))
              .replace("{c}", quoted(geometryColumn))
              .replace("{i}", quoted(idColumn)));
    }
  }

  static void execute(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  /** An SQL identifier. */
  static String quoted(String name) {
    return '"' + name.replace("\"", "\"\"") + '"';
  }
}
