package org.meadowmark.core.measure.uncertainty;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.index.hprtree.HPRtree;

/** The outline of a piece of grass: its edges by place, and what is inside. Thread-safe. */
final class GrassOutline {
  private final IndexedPointInAreaLocator locator;
  private final HPRtree edges = new HPRtree();

  GrassOutline(Geometry grass) {
    locator = new IndexedPointInAreaLocator(grass);
    for (Object ring : LinearComponentExtracter.getLines(grass)) {
      Coordinate[] points = ((LineString) ring).getCoordinates();
      for (int i = 1; i < points.length; i++) {
        edges.insert(
            new Envelope(points[i - 1], points[i]), new LineSegment(points[i - 1], points[i]));
      }
    }
    edges.build();
  }

  boolean contains(double x, double y) {
    return locator.locate(new Coordinate(x, y)) != Location.EXTERIOR;
  }

  /** Edges whose envelope meets an envelope. */
  List<LineSegment> near(Envelope envelope) {
    List<LineSegment> found = new ArrayList<>();
    edges.query(envelope, edge -> found.add((LineSegment) edge));
    return found;
  }
}
