package org.meadowmark.core.read.geopackage;

import java.util.List;
import java.util.Optional;
import org.meadowmark.core.model.CrsText;

/**
 * A feature table of a GeoPackage.
 *
 * @param name table name
 * @param geometryColumn column with the geometry
 * @param idColumn integer primary key; empty for a view
 * @param columns the other columns, in order
 * @param crs reference system, where the file defines one
 */
record FeatureTable(
    String name,
    String geometryColumn,
    Optional<String> idColumn,
    List<AttributeColumn> columns,
    Optional<CrsText> crs) {

  /**
   * A column that is neither key nor geometry.
   *
   * @param name column name
   * @param type how its values are to be taken
   */
  record AttributeColumn(String name, Type type) {}

  /** What the declared type of a column adds to what SQLite stores. */
  enum Type {
    STORED,
    BOOLEAN,
    DATE,
    DATE_TIME
  }
}
