package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Union of many polygons that cross each other, as far as it lies in a window.
 *
 * <p>What lies outside the window is cut off first, and pairs are united without the check of their
 * nodes. The result is checked instead: it must be valid and hold a point of every polygon. Where
 * it is not sound robust overlays are taken.
 */
final class WindowUnion {
  private WindowUnion() {}

  /**
   * Unites.
   *
   * @param polygons polygonal geometries, each valid
   * @param window what lies outside it may be cut off
   * @param factory of the result
   */
  static Geometry of(List<Geometry> polygons, Envelope window, GeometryFactory factory) {
    List<Polygon> inside = new ArrayList<>();
    for (Geometry geometry : polygons) {
      for (Polygon polygon : Scarring.polygonsOf(geometry)) {
        addClipped(polygon, window, factory, inside);
      }
    }
    if (inside.size() > 1) {
      try {
        Geometry united =
            PairwiseUnion.of(
                inside, (left, right) -> UncheckedOverlay.of(left, right, OverlayNG.UNION));
        if (united.isValid() && coversAll(united, inside)) {
          return united;
        }
      } catch (TopologyException e) {
        // Nodes too near each other; below they are snapped.
      }
    }
    return OverlayNGRobust.union(polygons);
  }

  private static void addClipped(
      Polygon polygon, Envelope window, GeometryFactory factory, List<Polygon> clipped) {
    Envelope extent = polygon.getEnvelopeInternal();
    if (window.contains(extent)) {
      clipped.add(polygon);
    } else if (window.intersects(extent)) {
      clipped.addAll(
          Scarring.polygonsOf(
              OverlayNGRobust.overlay(
                  polygon, factory.toGeometry(window), OverlayNG.INTERSECTION)));
    }
  }

  /** Sides that were mistaken for each other lose whole polygons. */
  private static boolean coversAll(Geometry united, List<Polygon> polygons) {
    IndexedPointInAreaLocator locator = new IndexedPointInAreaLocator(united);
    for (Polygon polygon : polygons) {
      if (polygon.getArea() > 0
          && locator.locate(polygon.getInteriorPoint().getCoordinate()) == Location.EXTERIOR) {
        return false;
      }
    }
    return true;
  }
}
