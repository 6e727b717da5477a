package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.operation.distance.DistanceOp;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Finds where scars separate pieces of grass.
 *
 * <p>Along each scar line that belongs to a cluster which could cut (see {@link Scarring#cutters}),
 * the nearest grass straight across on either side is looked up every metre or, on a short scar,
 * five times. Where it belongs to two different pieces, the scar separates them there, and the bare
 * width across is the gap width: the scar's own width where it is alone, more where scars lie side
 * by side. A polygon scar separates two pieces where the shortest way between them runs through it.
 */
final class GapFinder {
  private static final double STEP_METRES = 1;
  private static final int FEWEST_STEPS = 5;

  /** Grass is looked for this far beyond the footprint's edge, and pieces this near touch it. */
  private static final double EDGE_METRES = 0.005;

  /** A scar that takes up less of the bare width across it than this does not make the gap. */
  private static final double SMALLEST_PART = 0.1;

  /** Bare ground wider than this beside a scar is not a gap that the scar makes. */
  private static final double WIDEST_METRES = 30;

  /**
   * A scar that separates two pieces.
   *
   * @param scar position of the scar in the survey
   * @param first position of one piece
   * @param second position of the other, larger
   * @param minimumWidthMetres smallest bare width across it, on the ground
   * @param meanWidthMetres mean of that width weighted by length; empty for a polygon scar
   * @param lengthMetres length of scar line that separates them, on the ground
   * @param geometry that part of the line; for a polygon scar the shortest way across
   */
  record RawGap(
      int scar,
      int first,
      int second,
      double minimumWidthMetres,
      OptionalDouble meanWidthMetres,
      double lengthMetres,
      Geometry geometry) {
    static final Comparator<RawGap> ORDER =
        Comparator.comparingInt(RawGap::scar)
            .thenComparingInt(RawGap::first)
            .thenComparingInt(RawGap::second);
  }

  private record Pair(int first, int second) implements Comparable<Pair> {
    private static final Comparator<Pair> ORDER =
        Comparator.comparingInt(Pair::first).thenComparingInt(Pair::second);

    static Pair of(int a, int b) {
      return new Pair(Math.min(a, b), Math.max(a, b));
    }

    @Override
    public int compareTo(Pair other) {
      return ORDER.compare(this, other);
    }
  }

  private static final class Stretch {
    double minimumWidth = Double.POSITIVE_INFINITY;
    double widthTimesLength;
    double length;
    final List<LineString> parts = new ArrayList<>();
    List<Coordinate> open;
  }

  private record Across(int piece, double distance) {}

  private final List<Polygon> pieces;
  private final PieceLocator locator;
  private final OutlineIndex[] outlines;

  private GapFinder(List<Polygon> pieces) {
    this.pieces = pieces;
    locator = new PieceLocator(pieces);
    outlines = new OutlineIndex[pieces.size()];
  }

  /**
   * Finds the gaps of one scarred piece of mapped grass.
   *
   * @param pieces pieces that count as patches
   * @param cutters clusters that could have cut them
   * @param footprints all footprints of the survey
   */
  static List<RawGap> find(
      List<Polygon> pieces, List<FootprintClusters.Cluster> cutters, List<Footprint> footprints) {
    if (pieces.size() < 2) {
      return List.of();
    }
    GapFinder finder = new GapFinder(pieces);
    List<RawGap> gaps = new ArrayList<>();
    for (FootprintClusters.Cluster cutter : cutters) {
      OutlineIndex outline = null;
      for (int member : cutter.members()) {
        Footprint footprint = footprints.get(member);
        if (!finder.twoPiecesNear(footprint)) {
          continue;
        }
        if (outline == null) {
          outline = new OutlineIndex(cutter.area());
        }
        gaps.addAll(
            footprint.scar().isLine()
                ? finder.alongLine(footprint, outline)
                : finder.acrossPolygon(footprint));
      }
    }
    gaps.sort(RawGap.ORDER);
    return gaps;
  }

  /** Most scars of a large meadow have one piece around them and part nothing. */
  private boolean twoPiecesNear(Footprint footprint) {
    boolean isLine = footprint.scar().isLine();
    Envelope around =
        new Envelope((isLine ? footprint.line() : footprint.area()).getEnvelopeInternal());
    around.expandBy(EDGE_METRES + (isLine ? reach(halfWidth(footprint)) : 0));
    return locator.near(around).size() > 1;
  }

  private static double halfWidth(Footprint footprint) {
    return footprint.scar().widthMetres() * footprint.lengthFactor() / 2;
  }

  /** Grass farther than this from the middle of a scar is beyond any gap that the scar makes. */
  private static double reach(double halfWidth) {
    return Math.min(WIDEST_METRES, 2 * halfWidth / SMALLEST_PART);
  }

  private List<RawGap> alongLine(Footprint footprint, OutlineIndex outline) {
    Map<Pair, Stretch> stretches = new TreeMap<>();
    double halfWidth = halfWidth(footprint);
    for (Object part : LinearComponentExtracter.getLines(footprint.line())) {
      walk((LineString) part, halfWidth, outline, stretches);
    }
    GeometryFactory factory = footprint.line().getFactory();
    List<RawGap> gaps = new ArrayList<>();
    stretches.forEach(
        (pair, stretch) ->
            gaps.add(
                new RawGap(
                    footprint.index(),
                    pair.first,
                    pair.second,
                    stretch.minimumWidth / footprint.lengthFactor(),
                    OptionalDouble.of(
                        stretch.widthTimesLength / stretch.length / footprint.lengthFactor()),
                    stretch.length / footprint.lengthFactor(),
                    factory.createMultiLineString(stretch.parts.toArray(LineString[]::new)))));
    return gaps;
  }

  private void walk(
      LineString line, double halfWidth, OutlineIndex outline, Map<Pair, Stretch> stretches) {
    double step = Math.min(STEP_METRES, line.getLength() / FEWEST_STEPS);
    Coordinate[] vertices = line.getCoordinates();
    Stretch current = null;
    for (int v = 0; v + 1 < vertices.length; v++) {
      double length = vertices[v].distance(vertices[v + 1]);
      int count = (int) Math.ceil(length / step);
      for (int i = 0; i < count; i++) {
        Coordinate from = between(vertices[v], vertices[v + 1], (double) i / count);
        Coordinate to = between(vertices[v], vertices[v + 1], (i + 1.0) / count);
        Stretch next = null;
        Coordinate middle = between(from, to, 0.5);
        double alongX = (vertices[v + 1].x - vertices[v].x) / length;
        double alongY = (vertices[v + 1].y - vertices[v].y) / length;
        Across left = across(middle, -alongY, alongX, halfWidth, outline);
        if (left != null) {
          Across right = across(middle, alongY, -alongX, halfWidth, outline);
          if (right != null
              && right.piece != left.piece
              && 2 * halfWidth >= SMALLEST_PART * (left.distance + right.distance)) {
            next =
                stretches.computeIfAbsent(Pair.of(left.piece, right.piece), pair -> new Stretch());
            double width = left.distance + right.distance;
            next.minimumWidth = Math.min(next.minimumWidth, width);
            next.widthTimesLength += width * length / count;
            next.length += length / count;
          }
        }
        if (next != current) {
          close(current, line.getFactory());
          if (next != null) {
            next.open = new ArrayList<>(List.of(from));
          }
        }
        if (next != null) {
          next.open.add(to);
        }
        current = next;
      }
    }
    close(current, line.getFactory());
  }

  private static void close(Stretch stretch, GeometryFactory factory) {
    if (stretch != null) {
      stretch.parts.add(factory.createLineString(stretch.open.toArray(Coordinate[]::new)));
      stretch.open = null;
    }
  }

  private static Coordinate between(Coordinate from, Coordinate to, double fraction) {
    return new Coordinate(from.x + fraction * (to.x - from.x), from.y + fraction * (to.y - from.y));
  }

  /** The nearest piece in a direction and how far its edge is; null where there is none near. */
  private Across across(
      Coordinate from,
      double directionX,
      double directionY,
      double halfWidth,
      OutlineIndex outline) {
    OptionalInt piece = locator.at(beyond(from, directionX, directionY, halfWidth + EDGE_METRES));
    if (piece.isPresent()) {
      return new Across(piece.getAsInt(), halfWidth);
    }
    double edge =
        outline.firstCrossing(from, beyond(from, directionX, directionY, reach(halfWidth)));
    if (edge <= halfWidth + EDGE_METRES || edge >= WIDEST_METRES) {
      return null;
    }
    piece = locator.at(beyond(from, directionX, directionY, edge + EDGE_METRES));
    return piece.isPresent() ? new Across(piece.getAsInt(), edge) : null;
  }

  private static Coordinate beyond(Coordinate from, double x, double y, double distance) {
    return new Coordinate(from.x + x * distance, from.y + y * distance);
  }

  private OutlineIndex outline(int i) {
    if (outlines[i] == null) {
      outlines[i] = new OutlineIndex(pieces.get(i));
    }
    return outlines[i];
  }

  private List<RawGap> acrossPolygon(Footprint footprint) {
    Geometry scar = footprint.area();
    Envelope around = new Envelope(scar.getEnvelopeInternal());
    around.expandBy(EDGE_METRES);
    Geometry window = scar.getFactory().toGeometry(around);
    Map<Integer, Geometry> near = new TreeMap<>();
    for (int i : locator.near(around)) {
      Geometry edges = outline(i).edgesIn(around);
      Geometry local = OverlayNGRobust.overlay(edges, window, OverlayNG.INTERSECTION);
      if (!local.isEmpty() && local.isWithinDistance(scar, EDGE_METRES)) {
        near.put(i, local);
      }
    }
    List<RawGap> gaps = new ArrayList<>();
    List<Integer> order = List.copyOf(near.keySet());
    for (int a = 0; a < order.size(); a++) {
      for (int b = a + 1; b < order.size(); b++) {
        Pair pair = new Pair(order.get(a), order.get(b));
        Coordinate[] way =
            new DistanceOp(near.get(pair.first), near.get(pair.second)).nearestPoints();
        LineString line = scar.getFactory().createLineString(way);
        double inScar = OverlayNGRobust.overlay(line, scar, OverlayNG.INTERSECTION).getLength();
        if (line.getLength() > 0
            && inScar > line.getLength() / 2
            && noneBetween(pair, line, near)) {
          gaps.add(
              new RawGap(
                  footprint.index(),
                  pair.first,
                  pair.second,
                  line.getLength() / footprint.lengthFactor(),
                  OptionalDouble.empty(),
                  0,
                  scar.getFactory().createMultiLineString(new LineString[] {line})));
        }
      }
    }
    return gaps;
  }

  private static boolean noneBetween(Pair pair, LineString way, Map<Integer, Geometry> near) {
    Geometry middle =
        way.getFactory()
            .createPoint(LineSegment.midPoint(way.getCoordinateN(0), way.getCoordinateN(1)));
    double radius = way.getLength() / 2 - EDGE_METRES;
    return near.entrySet().stream()
        .filter(entry -> entry.getKey() != pair.first && entry.getKey() != pair.second)
        .noneMatch(entry -> entry.getValue().isWithinDistance(middle, radius));
  }
}
