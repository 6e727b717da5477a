package org.meadowmark.core.read.geojson;

import java.util.List;
import java.util.Optional;
import org.meadowmark.core.model.CrsText;

/**
 * What a GeoJSON file holds, found before its features are read.
 *
 * @param root the type of the outermost object
 * @param name its name member, where there is one
 * @param attributeNames names of properties in the order of first use
 * @param crs reference system: as the {@code crs} member says, WGS 84 where there is none
 * @param unknownCrs the {@code crs} member as text, where it cannot be understood
 * @param featureCount number of features
 */
record GeoJsonOutline(
    Root root,
    Optional<String> name,
    List<String> attributeNames,
    Optional<CrsText> crs,
    Optional<String> unknownCrs,
    long featureCount) {

  /** Type of the outermost object. */
  enum Root {
    FEATURE_COLLECTION,
    FEATURE,
    GEOMETRY
  }
}
