package org.meadowmark.core.model;

import java.util.Objects;
import org.locationtech.jts.geom.Geometry;

/**
 * A named piece of the map: a management area, a part of the surveyed area, or a barrier.
 *
 * @param id unique in the layer
 * @param ref where it was read
 * @param geometry polygonal; lines are allowed for barriers
 * @param name name, or empty
 */
public record MapArea(String id, FeatureRef ref, Geometry geometry, String name)
    implements Located {
  /**
   * Refuses an area of which a part is missing.
   *
   * @param id unique in the layer
   * @param ref where it was read
   * @param geometry polygonal; lines are allowed for barriers
   * @param name name, or empty
   * @throws NullPointerException if anything is null
   */
  public MapArea {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(ref, "ref");
    Objects.requireNonNull(geometry, "geometry");
    Objects.requireNonNull(name, "name");
  }

  /** {@return the name where there is one, else the id} */
  public String label() {
    return name.isEmpty() ? id : name;
  }

  @Override
  public MapArea withGeometry(Geometry other) {
    return new MapArea(id, ref, other, name);
  }
}
