package org.meadowmark.core.model;

import java.util.Objects;
import org.locationtech.jts.geom.Geometry;

/**
 * A channel centreline.
 *
 * @param id unique in the layer
 * @param ref where it was read
 * @param geometry LineString or MultiLineString
 * @param name name of the channel, or empty; several lines may share one
 */
public record Channel(String id, FeatureRef ref, Geometry geometry, String name)
    implements Located {
  /**
   * Refuses a channel of which a part is missing.
   *
   * @param id unique in the layer
   * @param ref where it was read
   * @param geometry LineString or MultiLineString
   * @param name name of the channel, or empty; several lines may share one
   * @throws NullPointerException if anything is null
   */
  public Channel {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(ref, "ref");
    Objects.requireNonNull(geometry, "geometry");
    Objects.requireNonNull(name, "name");
  }

  @Override
  public Channel withGeometry(Geometry other) {
    return new Channel(id, ref, other, name);
  }
}
