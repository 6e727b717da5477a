package org.meadowmark.core.change.match;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.meadowmark.core.measure.StrTreeQuery;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.MetricSurvey;

/**
 * What two surveys both looked at. A line that crosses its outline is cut there, edge by edge, with
 * an index of the outline: time grows with the edges that lie near, not with all. Safe for use by
 * several threads.
 */
final class ComparableArea {
  private final PreparedGeometry shape;
  private final IndexedPointInAreaLocator locator;
  private final STRtree outline = new STRtree();

  private ComparableArea(Geometry shape) {
    this.shape = PreparedGeometryFactory.prepare(shape);
    this.locator = new IndexedPointInAreaLocator(shape);
    for (Object ring : LinearComponentExtracter.getLines(shape)) {
      Coordinate[] vertices = ((LineString) ring).getCoordinates();
      for (int v = 1; v < vertices.length; v++) {
        LineSegment edge = new LineSegment(vertices[v - 1], vertices[v]);
        outline.insert(new Envelope(edge.p0, edge.p1), edge);
      }
    }
    outline.build();
  }

  /** The common part of two surveyed areas; empty where neither survey states one. */
  static Optional<ComparableArea> of(MetricSurvey one, MetricSurvey other) {
    if (one.surveyedArea().isEmpty() && other.surveyedArea().isEmpty()) {
      return Optional.empty();
    }
    Geometry common;
    if (one.surveyedArea().isEmpty()) {
      common = union(other.surveyedArea());
    } else if (other.surveyedArea().isEmpty()) {
      common = union(one.surveyedArea());
    } else {
      common =
          OverlayNGRobust.overlay(
              union(one.surveyedArea()), union(other.surveyedArea()), OverlayNG.INTERSECTION);
    }
    return Optional.of(new ComparableArea(common));
  }

  private static Geometry union(List<MapArea> areas) {
    return UnaryUnionOp.union(areas.stream().map(MapArea::geometry).toList());
  }

  ComparedTrace clip(Trace trace) {
    Geometry geometry = trace.scar().geometry();
    if (shape.containsProperly(geometry)) {
      return ComparedTrace.whole(trace);
    }
    if (!shape.intersects(geometry)) {
      return new ComparedTrace(trace, Spans.NONE, 0);
    }
    if (trace.isLine()) {
      double[] spans = inside(trace);
      return new ComparedTrace(trace, spans, Spans.length(spans));
    }
    double area = geometry.getArea();
    double part =
        OverlayNGRobust.overlay(geometry, shape.getGeometry(), OverlayNG.INTERSECTION).getArea();
    double share = area > 0 ? Math.min(1, part / area) : 0;
    return new ComparedTrace(trace, Spans.NONE, share * trace.length());
  }

  private double[] inside(Trace trace) {
    double[] from = new double[trace.vertices()];
    double[] to = new double[trace.vertices()];
    int count = 0;
    RobustLineIntersector intersector = new RobustLineIntersector();
    for (int v = 1; v < trace.vertices(); v++) {
      if (!trace.endsEdge(v)) {
        continue;
      }
      Coordinate start = new Coordinate(trace.x(v - 1), trace.y(v - 1));
      Coordinate end = new Coordinate(trace.x(v), trace.y(v));
      double[] cuts = cuts(start, end, trace.at(v) - trace.at(v - 1), intersector);
      for (int i = 1; i < cuts.length; i++) {
        double length = trace.at(v) - trace.at(v - 1);
        double share = (cuts[i - 1] + cuts[i]) / 2 / length;
        Coordinate middle =
            new Coordinate(
                start.x + share * (end.x - start.x), start.y + share * (end.y - start.y));
        if (locator.locate(middle) != Location.EXTERIOR) {
          if (count == from.length) {
            from = Arrays.copyOf(from, 2 * count);
            to = Arrays.copyOf(to, 2 * count);
          }
          from[count] = trace.at(v - 1) + cuts[i - 1];
          to[count++] = i == cuts.length - 1 ? trace.at(v) : trace.at(v - 1) + cuts[i];
        }
      }
    }
    return Spans.joined(from, to, count);
  }

  /** Distances along an edge at which it meets the outline, with its two ends. */
  private double[] cuts(
      Coordinate start, Coordinate end, double length, RobustLineIntersector intersector) {
    List<LineSegment> near = StrTreeQuery.items(outline, new Envelope(start, end));
    double[] cuts = new double[2 * near.size() + 2];
    int count = 0;
    cuts[count++] = 0;
    for (LineSegment edge : near) {
      intersector.computeIntersection(start, end, edge.p0, edge.p1);
      for (int i = 0; i < intersector.getIntersectionNum(); i++) {
        cuts[count++] = Math.min(length, start.distance(intersector.getIntersection(i)));
      }
    }
    cuts[count++] = length;
    return Arrays.stream(cuts, 0, count).sorted().distinct().toArray();
  }
}
