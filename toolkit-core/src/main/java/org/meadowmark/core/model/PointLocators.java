package org.meadowmark.core.model;

import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.algorithm.locate.PointOnGeometryLocator;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Geometry;

/** Chooses how to find whether points are in a shape that is asked about often. */
public final class PointLocators {
  /** Shapes with no more vertices are gone round faster than an index is asked. */
  private static final int FEW_VERTICES = 40;

  private PointLocators() {}

  /**
   * {@return a locator for a shape, safe for use by several threads}
   *
   * @param shape a polygon or several
   */
  public static PointOnGeometryLocator of(Geometry shape) {
    return shape.getNumPoints() <= FEW_VERTICES
        ? new SimplePointInAreaLocator(shape)
        : new IndexedPointInAreaLocator(shape);
  }
}
