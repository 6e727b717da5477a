package org.meadowmark.core.measure;

import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * What is left of a shape where it is cut, and what was cut out.
 *
 * <p>The overlays go without the check of their nodes, which takes as long as finding them: that
 * both parts make up the shape is the check. Where they do not, robust overlays are taken.
 *
 * @param left what is left
 * @param cutOut what was cut out
 */
record ShapeCut(List<Polygon> left, List<Polygon> cutOut) {
  private static final double AREA_TOLERANCE = 1e-9;

  static ShapeCut of(Geometry shape, Geometry cutter) {
    try {
      ShapeCut cut =
          parts(
              UncheckedOverlay.of(shape, cutter, OverlayNG.DIFFERENCE),
              UncheckedOverlay.of(shape, cutter, OverlayNG.INTERSECTION));
      double whole = shape.getArea();
      if (Math.abs(area(cut.left) + area(cut.cutOut) - whole) <= AREA_TOLERANCE * whole) {
        return cut;
      }
    } catch (TopologyException e) {
      // Nodes too near each other; below they are snapped.
    }
    return parts(
        OverlayNGRobust.overlay(shape, cutter, OverlayNG.DIFFERENCE),
        OverlayNGRobust.overlay(shape, cutter, OverlayNG.INTERSECTION));
  }

  private static ShapeCut parts(Geometry left, Geometry cutOut) {
    return new ShapeCut(
        CompactPolygons.of(Scarring.polygonsOf(left)),
        CompactPolygons.of(Scarring.polygonsOf(cutOut)));
  }

  private static double area(List<Polygon> polygons) {
    return polygons.stream().mapToDouble(Polygon::getArea).sum();
  }
}
