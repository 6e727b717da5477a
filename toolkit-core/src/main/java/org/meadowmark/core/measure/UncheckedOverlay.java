package org.meadowmark.core.measure;

import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.noding.IntersectionAdder;
import org.locationtech.jts.noding.MCIndexNoder;
import org.locationtech.jts.operation.overlayng.OverlayNG;

/**
 * An overlay without the check of its nodes, which takes about as long as finding them. Callers
 * check the result instead.
 */
final class UncheckedOverlay {
  private UncheckedOverlay() {}

  /**
   * Overlays.
   *
   * @throws org.locationtech.jts.geom.TopologyException if nodes were too near each other
   */
  static Geometry of(Geometry first, Geometry second, int operation) {
    return OverlayNG.overlay(
        first,
        second,
        operation,
        new MCIndexNoder(new IntersectionAdder(new RobustLineIntersector())));
  }
}
