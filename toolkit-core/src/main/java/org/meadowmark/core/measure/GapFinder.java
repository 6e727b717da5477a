package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
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
  /** Grass is looked for this far beyond the footprint's edge, and pieces this near touch it. */
  static final double EDGE_METRES = 0.005;

  /** A scar that takes up less of the bare width across it than this does not make the gap. */
  private static final double SMALLEST_PART = 0.1;

  /** Bare ground wider than this beside a scar is not a gap that the scar makes. */
  private static final double WIDEST_METRES = 30;

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

  /** Gaps that polygon scars make between patches. */
  static List<RawGap> acrossPolygons(List<Polygon> pieces, List<Footprint> polygonScars) {
    if (pieces.size() < 2 || polygonScars.isEmpty()) {
      return List.of();
    }
    GapFinder finder = new GapFinder(pieces);
    return polygonScars.parallelStream()
        .filter(finder::twoPiecesNear)
        .flatMap(footprint -> finder.acrossPolygon(footprint).stream())
        .toList();
  }

  /** Most scars of a large meadow have one piece around them and part nothing. */
  private boolean twoPiecesNear(Footprint footprint) {
    boolean isLine = footprint.scar().isLine();
    Envelope around =
        new Envelope((isLine ? footprint.line() : footprint.area()).getEnvelopeInternal());
    around.expandBy(EDGE_METRES + (isLine ? reach(halfWidth(footprint)) : 0));
    return locator.near(around).size() > 1;
  }

  static double halfWidth(Footprint footprint) {
    return footprint.scar().widthMetres() * footprint.lengthFactor() / 2;
  }

  /** Grass farther than this from the middle of a scar is beyond any gap that the scar makes. */
  static double reach(double halfWidth) {
    return Math.min(WIDEST_METRES, 2 * halfWidth / SMALLEST_PART);
  }

  private List<RawGap> alongLine(Footprint footprint, OutlineIndex outline) {
    Map<Pair, GapStretch> stretches = new TreeMap<>();
    double halfWidth = halfWidth(footprint);
    ScarSteps.visit(
        footprint.line(),
        (number, from, to, alongX, alongY, length) -> {
          Coordinate middle = ScarSteps.middle(from, to);
          Optional<Across> left = across(middle, -alongY, alongX, halfWidth, outline);
          if (left.isEmpty()) {
            return;
          }
          Optional<Across> right = across(middle, alongY, -alongX, halfWidth, outline);
          if (right.isEmpty() || right.get().piece() == left.get().piece()) {
            return;
          }
          double width = left.get().distance() + right.get().distance();
          if (takesUp(halfWidth, width)) {
            stretches
                .computeIfAbsent(
                    Pair.of(left.get().piece(), right.get().piece()), pair -> new GapStretch())
                .add(number, width, length);
          }
        });
    List<RawGap> gaps = new ArrayList<>();
    stretches.forEach((pair, stretch) -> gaps.add(stretch.gap(footprint, pair.first, pair.second)));
    return gaps;
  }

  /** Whether a scar takes up enough of the bare width across it to make the gap. */
  static boolean takesUp(double halfWidth, double bareWidth) {
    return 2 * halfWidth >= SMALLEST_PART * bareWidth;
  }

  private Optional<Across> across(
      Coordinate from, double x, double y, double halfWidth, OutlineIndex outline) {
    return Across.find(from, x, y, halfWidth, locator::at, outline::firstCrossing);
  }

  /** Whether the edge of the bare ground is where no gap of the scar's making ends. */
  static boolean isNoGap(double edge, double halfWidth) {
    return edge <= halfWidth + EDGE_METRES || edge >= WIDEST_METRES;
  }

  static Coordinate beyond(Coordinate from, double x, double y, double distance) {
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
                  new int[0],
                  Optional.of(scar.getFactory().createMultiLineString(new LineString[] {line}))));
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
