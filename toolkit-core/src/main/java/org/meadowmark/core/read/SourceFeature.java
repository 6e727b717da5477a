package org.meadowmark.core.read;

import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.FeatureRef;

/**
 * A feature as read.
 *
 * @param ref where it was read; the id is the format's own (fid, record, line number)
 * @param geometry geometry in the file's coordinates, empty where the file has none
 * @param attributes values by attribute name: String, Long, Double, Boolean, LocalDate or absent
 *     where the file has none
 */
public record SourceFeature(
    FeatureRef ref, Optional<Geometry> geometry, Map<String, Object> attributes) {
  /**
   * Keeps a copy of the values.
   *
   * @param ref where it was read; the id is the format's own (fid, record, line number)
   * @param geometry geometry in the file's coordinates, empty where the file has none
   * @param attributes values by attribute name: String, Long, Double, Boolean, LocalDate or absent
   *     where the file has none
   * @throws NullPointerException if there are no values, or a name or value is null
   */
  public SourceFeature {
    attributes = Map.copyOf(attributes);
  }
}
