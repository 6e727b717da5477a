package org.meadowmark.core.write.proposal;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/** Turns geometries into path commands: cut to the window, no finer than can be seen. */
final class MapPath {
  /** Detail below this many units of the drawing cannot be seen in print. */
  private static final double FINEST = 0.3;

  /** Cut this far outside the window, so that no outline runs along its frame. */
  private static final double OUTSIDE = 12;

  private final MapWindow window;
  private final Envelope reach;
  private final StringBuilder commands = new StringBuilder();

  MapPath(MapWindow window) {
    this.window = window;
    this.reach = new Envelope(window.grid());
    reach.expandBy(OUTSIDE * window.metresPerUnit());
  }

  /** Adds a geometry. What is too small to be seen leaves nothing. */
  MapPath add(Geometry geometry) {
    Geometry seen = cut(geometry);
    append(simplified(seen));
    return this;
  }

  /** Adds a geometry, as a dot where it is too small to be seen. */
  MapPath addOrDot(Geometry geometry) {
    int before = commands.length();
    add(geometry);
    Envelope box = geometry.getEnvelopeInternal();
    if (commands.length() == before && !box.isNull() && reach.intersects(box.centre())) {
      move(box.centre());
      commands.append("h0.1");
    }
    return this;
  }

  /** The commands; empty where nothing is in the window. */
  String commands() {
    return commands.toString();
  }

  private Geometry cut(Geometry geometry) {
    Envelope box = geometry.getEnvelopeInternal();
    if (reach.contains(box) || !reach.intersects(box)) {
      return reach.intersects(box) ? geometry : geometry.getFactory().createEmpty(2);
    }
    return OverlayNGRobust.overlay(
        geometry, geometry.getFactory().toGeometry(reach), OverlayNG.INTERSECTION);
  }

  private Geometry simplified(Geometry geometry) {
    DouglasPeuckerSimplifier simplifier = new DouglasPeuckerSimplifier(geometry);
    simplifier.setDistanceTolerance(FINEST * window.metresPerUnit());
    simplifier.setEnsureValid(false);
    return simplifier.getResultGeometry();
  }

  private void append(Geometry geometry) {
    for (int i = 0; i < geometry.getNumGeometries(); i++) {
      Geometry part = geometry.getGeometryN(i);
      if (part instanceof Polygon polygon && !polygon.isEmpty()) {
        ring(polygon.getExteriorRing());
        for (int hole = 0; hole < polygon.getNumInteriorRing(); hole++) {
          ring(polygon.getInteriorRingN(hole));
        }
      } else if (part instanceof LineString line && !line.isEmpty()) {
        points(line.getCoordinates(), line.getNumPoints());
      } else if (part.getNumGeometries() > 1 && !(part instanceof Point)) {
        append(part);
      }
    }
  }

  private void ring(LineString ring) {
    points(ring.getCoordinates(), ring.getNumPoints() - 1);
    commands.append('Z');
  }

  private void points(Coordinate[] points, int count) {
    move(points[0]);
    for (int i = 1; i < count; i++) {
      commands.append('L');
      place(points[i]);
    }
  }

  private void move(Coordinate point) {
    commands.append('M');
    place(point);
  }

  private void place(Coordinate point) {
    commands
        .append(SvgWriter.number(window.x(point.x)))
        .append(' ')
        .append(SvgWriter.number(window.y(point.y)));
  }
}
