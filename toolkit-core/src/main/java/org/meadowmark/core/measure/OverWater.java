package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiLineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/**
 * Shortest ways over water between pieces of grass where barriers stand between some of them.
 *
 * <p>A shortest way around barriers is straight from corner to corner (Lozano-Pérez and Wesley
 * 1979, <i>An algorithm for planning collision-free paths among polyhedral obstacles</i>,
 * Communications of the ACM 22:560–570, from memory), so it is searched in the graph of corners
 * that see each other. It keeps {@link Barriers#CLEARANCE_METRES} off the barriers and is longer by
 * about that much a corner.
 *
 * <p>Only pairs whose straight way is blocked are searched; the time for one is quadratic in the
 * corners within reach of both pieces. Safe for use by several threads.
 */
final class OverWater {
  /** Boxes that are apart by a hair more than a distance may hold points that are not. */
  private static final double ROUNDING = 1 + 1e-9;

  private final Barriers barriers;
  private final List<Polygon> pieces;
  private final OutlineIndex[] outlines;

  OverWater(Barriers barriers, List<Polygon> pieces) {
    this.barriers = barriers;
    this.pieces = pieces;
    this.outlines = new OutlineIndex[pieces.size()];
  }

  /** Links over water no longer than the reach, in the order of straight ones. */
  List<PieceGraph.Link> crossings(
      List<PieceGraph.Link> straight, ToDoubleFunction<PieceGraph.Link> factor, double reach) {
    return straight.parallelStream()
        .flatMap(link -> crossing(link, factor.applyAsDouble(link), reach).stream())
        .toList();
  }

  private List<PieceGraph.Link> crossing(PieceGraph.Link link, double factor, double reach) {
    Polygon a = pieces.get(link.first());
    Polygon b = pieces.get(link.second());
    Envelope between = within((link.metres() + PieceGraph.EQUAL_METRES) * factor, a, b);
    if (!barriers.meet(between)) {
      return List.of(link);
    }
    Coordinate[] nearest =
        new IndexedFacetDistance(outline(link.first()).edgesIn(between))
            .nearestPoints(outline(link.second()).edgesIn(between));
    if (isFree(nearest[0], nearest[1])) {
      return List.of(link);
    }
    double gridReach = (reach + PieceGraph.EQUAL_METRES) * factor;
    Envelope window = within(gridReach, a, b);
    OptionalDouble way =
        new Search(
                new Edges(outline(link.first()).edgesIn(window)),
                new Edges(outline(link.second()).edgesIn(window)),
                gridReach)
            .shortest(barriers.corners(window));
    return way.isPresent()
        ? List.of(new PieceGraph.Link(link.first(), link.second(), way.getAsDouble() / factor))
        : List.of();
  }

  /** Grass may touch a barrier, so the ends of a way may. */
  private boolean isFree(Coordinate from, Coordinate to) {
    double length = from.distance(to);
    if (length <= 2 * Barriers.CLEARANCE_METRES) {
      return true;
    }
    LineSegment way = new LineSegment(from, to);
    double end = Barriers.CLEARANCE_METRES / length;
    return !barriers.block(way.pointAlong(end), way.pointAlong(1 - end));
  }

  /** Where a point of either that is so near the other lies, and every way between such points. */
  private static Envelope within(double gridMetres, Polygon a, Polygon b) {
    Envelope aroundA = new Envelope(a.getEnvelopeInternal());
    aroundA.expandBy(gridMetres);
    Envelope aroundB = new Envelope(b.getEnvelopeInternal());
    aroundB.expandBy(gridMetres);
    return aroundA.intersection(aroundB);
  }

  private OutlineIndex outline(int piece) {
    synchronized (pieces.get(piece)) {
      if (outlines[piece] == null) {
        outlines[piece] = new OutlineIndex(pieces.get(piece));
      }
      return outlines[piece];
    }
  }

  /** The part of an outline that is within reach. */
  private static final class Edges {
    final List<LineSegment> all = new ArrayList<>();
    private final Map<Coordinate, List<LineSegment>> atVertex = new HashMap<>();

    Edges(MultiLineString lines) {
      for (int i = 0; i < lines.getNumGeometries(); i++) {
        LineString line = (LineString) lines.getGeometryN(i);
        LineSegment edge = new LineSegment(line.getCoordinateN(0), line.getCoordinateN(1));
        all.add(edge);
        atVertex.computeIfAbsent(edge.p0, vertex -> new ArrayList<>(2)).add(edge);
        atVertex.computeIfAbsent(edge.p1, vertex -> new ArrayList<>(2)).add(edge);
      }
    }

    /** Whether no edge that meets at a point of the outline comes nearer to another point. */
    boolean isNearestAround(Coordinate onOutline, Coordinate point) {
      double distance = onOutline.distance(point);
      return atVertex.getOrDefault(onOutline, List.of()).stream()
          .allMatch(edge -> edge.distance(point) >= distance);
    }

    double distance(Coordinate point) {
      double least = Double.POSITIVE_INFINITY;
      for (LineSegment edge : all) {
        if (mayBeWithin(edge, point, point, least)) {
          least = Math.min(least, edge.distance(point));
        }
      }
      return least;
    }
  }

  /**
   * Whether the box of an edge is no farther than a distance from the box of two points: much
   * quicker to tell than how far the edge is.
   */
  private static boolean mayBeWithin(
      LineSegment edge, Coordinate one, Coordinate other, double distance) {
    double x =
        Math.max(
            Math.min(one.x, other.x) - Math.max(edge.p0.x, edge.p1.x),
            Math.min(edge.p0.x, edge.p1.x) - Math.max(one.x, other.x));
    double y =
        Math.max(
            Math.min(one.y, other.y) - Math.max(edge.p0.y, edge.p1.y),
            Math.min(edge.p0.y, edge.p1.y) - Math.max(one.y, other.y));
    double apart = Math.max(0, x) * Math.max(0, x) + Math.max(0, y) * Math.max(0, y);
    return apart <= distance * distance * ROUNDING;
  }

  /** A straight way. */
  private record Leg(Coordinate from, Coordinate to, double length) {
    static final Comparator<Leg> BY_LENGTH = Comparator.comparingDouble(Leg::length);

    Leg(Coordinate from, Coordinate to) {
      this(from, to, from.distance(to));
    }
  }

  private final class Search {
    private final Edges a;
    private final Edges b;
    private final double limit;

    Search(Edges a, Edges b, double limit) {
      this.a = a;
      this.b = b;
      this.limit = limit;
    }

    OptionalDouble shortest(List<Coordinate> allCorners) {
      double direct = straight();
      List<Coordinate> corners =
          allCorners.stream()
              .filter(corner -> a.distance(corner) + b.distance(corner) <= limit)
              .toList();
      double around = around(corners, Math.min(direct, limit));
      double best = Math.min(direct, around);
      return best <= limit ? OptionalDouble.of(best) : OptionalDouble.empty();
    }

    /** A straight way between the outlines that is not the shortest may be free. */
    private double straight() {
      Set<Leg> legs = new HashSet<>();
      for (LineSegment from : a.all) {
        for (LineSegment to : b.all) {
          if (mayBeWithin(from, to.p0, to.p1, limit) && from.distance(to) <= limit) {
            Coordinate[] ends = from.closestPoints(to);
            if (a.isNearestAround(ends[0], ends[1]) && b.isNearestAround(ends[1], ends[0])) {
              legs.add(new Leg(ends[0], ends[1]));
            }
          }
        }
      }
      return firstFree(legs);
    }

    private double toOutline(Coordinate corner, Edges outline) {
      Set<Leg> legs = new HashSet<>();
      for (LineSegment edge : outline.all) {
        if (!mayBeWithin(edge, corner, corner, limit)) {
          continue;
        }
        Coordinate end = edge.closestPoint(corner);
        if (end.distance(corner) <= limit && outline.isNearestAround(end, corner)) {
          legs.add(new Leg(corner, end));
        }
      }
      return firstFree(legs);
    }

    private double firstFree(Set<Leg> legs) {
      return legs.stream()
          .sorted(Leg.BY_LENGTH)
          .filter(leg -> isFree(leg.from, leg.to))
          .mapToDouble(Leg::length)
          .findFirst()
          .orElse(Double.POSITIVE_INFINITY);
    }

    /** Dijkstra's search over corners, which see each other or not only when it is asked. */
    private double around(List<Coordinate> corners, double noLongerThan) {
      int count = corners.size();
      double[] length = new double[count];
      boolean[] settled = new boolean[count];
      for (int i = 0; i < count; i++) {
        length[i] = toOutline(corners.get(i), a);
      }
      double best = noLongerThan;
      boolean found = false;
      while (true) {
        int next = -1;
        for (int i = 0; i < count; i++) {
          if (!settled[i] && length[i] < best && (next < 0 || length[i] < length[next])) {
            next = i;
          }
        }
        if (next < 0) {
          return found ? best : Double.POSITIVE_INFINITY;
        }
        settled[next] = true;
        Coordinate corner = corners.get(next);
        double whole = length[next] + toOutline(corner, b);
        if (whole <= best) {
          best = whole;
          found = true;
        }
        for (int i = 0; i < count; i++) {
          double longer = length[next] + corner.distance(corners.get(i));
          if (!settled[i] && longer < Math.min(length[i], best) && isFree(corner, corners.get(i))) {
            length[i] = longer;
          }
        }
      }
    }
  }
}
