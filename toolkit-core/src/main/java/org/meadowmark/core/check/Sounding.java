package org.meadowmark.core.check;

import java.util.Objects;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Located;

/**
 * A point with a water depth.
 *
 * @param id unique in the layer
 * @param ref where it was read
 * @param geometry Point or MultiPoint
 * @param depthMetres depth, positive downwards
 */
public record Sounding(String id, FeatureRef ref, Geometry geometry, double depthMetres)
    implements Located {
  /**
   * Refuses a sounding of which a part is missing, or whose depth is none.
   *
   * @param id unique in the layer
   * @param ref where it was read
   * @param geometry Point or MultiPoint
   * @param depthMetres depth, positive downwards
   * @throws NullPointerException if the id, the reference or the geometry is null
   * @throws IllegalArgumentException if the depth is not finite
   */
  public Sounding {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(ref, "ref");
    Objects.requireNonNull(geometry, "geometry");
    if (!Double.isFinite(depthMetres)) {
      throw new IllegalArgumentException("depth must be a finite number: " + depthMetres);
    }
  }

  @Override
  public Sounding withGeometry(Geometry other) {
    return new Sounding(id, ref, other, depthMetres);
  }
}
