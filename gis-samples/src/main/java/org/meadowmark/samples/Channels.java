package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/**
 * A channel network: a main channel from an inlet to a river, side channels that branch from it,
 * links that join side channels, further inlets in a long estuary, and the access channel of a
 * launch ramp. Channels meet only at vertices that they share.
 */
final class Channels {
  private static final double STEP_METRES = 10;
  private static final double CLEARANCE_METRES = 90;
  private static final double INLET_SPACING_METRES = 8_000;
  private static final GeometryFactory PLAIN = new GeometryFactory();

  private final List<ChannelPath> paths = new ArrayList<>();
  private final List<Built> built = new ArrayList<>();
  private final Shoreline shore;
  private final Draws draws;
  private Coordinate ramp;
  private int named;

  private record Built(LineString line, IndexedFacetDistance distance, double widest) {}

  private record Vertex(ChannelPath path, int index) {
    Coordinate place() {
      return path.points()[index];
    }
  }

  private Channels(Shoreline shore, Draws draws) {
    this.shore = shore;
    this.draws = draws;
  }

  static Channels dig(Shoreline shore, Draws draws) {
    Channels channels = new Channels(shore, draws);
    channels.digMain();
    channels.digInlets();
    channels.digRamp();
    channels.digSides();
    channels.digLinks();
    return channels;
  }

  List<ChannelPath> paths() {
    return List.copyOf(paths);
  }

  Coordinate ramp() {
    return ramp.copy();
  }

  /** Metres from the nearest bank of a channel, less than 0 inside one. */
  double clearance(double x, double y) {
    Coordinate place = new Coordinate(x, y);
    double nearest = 2_000;
    for (Built other : built) {
      if (other.line.getEnvelopeInternal().distance(new Envelope(place)) < nearest) {
        double toLine = other.distance.distance(PLAIN.createPoint(place));
        nearest = Math.min(nearest, toLine - other.widest);
      }
    }
    return nearest;
  }

  /** Every channel cut into reaches at the vertices it shares with another. */
  static List<ChannelPath> reaches(List<ChannelPath> paths) {
    Set<Coordinate> junctions = new HashSet<>();
    for (ChannelPath path : paths) {
      junctions.add(path.points()[0]);
      junctions.add(path.points()[path.points().length - 1]);
    }
    List<ChannelPath> reaches = new ArrayList<>();
    for (ChannelPath path : paths) {
      int from = 0;
      for (int i = 1; i < path.points().length; i++) {
        if (i == path.points().length - 1 || junctions.contains(path.points()[i])) {
          Coordinate[] part = Arrays.copyOfRange(path.points(), from, i + 1);
          reaches.add(
              new ChannelPath(
                  path.name(), part, path.halfWidthMetres(from), path.halfWidthMetres(i)));
          from = i;
        }
      }
    }
    return reaches;
  }

  private void digMain() {
    double width = shore.widthMetres();
    double inletX = Math.min(0.22 * width, 1_760);
    List<Coordinate> axis = new ArrayList<>();
    axis.add(new Coordinate(inletX - 150, 60));
    axis.add(new Coordinate(inletX, shore.barrierAt(inletX).northing()));
    axis.add(new Coordinate(inletX + 250, 1_900));
    int turns = Math.max(2, (int) Math.round((width - inletX) / 2_100));
    for (int i = 1; i < turns; i++) {
      double x = inletX + (width - inletX) * i / turns;
      axis.add(new Coordinate(x, 3_000 + draws.between(-450, 450)));
    }
    axis.add(new Coordinate(width - 700, 4_000));
    axis.add(new Coordinate(width - 120, 4_900));
    double largestAngle = 52;
    Coordinate[] points;
    do {
      points =
          SineGeneratedCurve.natural(1_150, Math.toRadians(largestAngle), STEP_METRES)
              .along(axis, draws);
      largestAngle *= 0.97;
    } while (largestAngle > 10 && !isMainClear(points));
    keep(new ChannelPath(Names.MAIN_CHANNEL, points, 85, 48));
  }

  /** Whether the main channel keeps off itself and, inside the lagoon, off the shores. */
  private boolean isMainClear(Coordinate[] points) {
    if (!PLAIN.createLineString(points).isSimple()) {
      return false;
    }
    for (Coordinate point : points) {
      boolean inLagoon = point.y > 1_700 && point.x < shore.widthMetres() - 1_100;
      if (inLagoon && shore.mainland(point.x, point.y) > -100) {
        return false;
      }
    }
    return true;
  }

  private void digInlets() {
    int wanted = (int) Math.floor(shore.widthMetres() / INLET_SPACING_METRES - 0.3);
    for (int i = 1; i <= wanted; i++) {
      double x = i * INLET_SPACING_METRES + 1_760;
      Vertex from = nearest(new Coordinate(x + 300, 3_000), List.of(paths.get(0)));
      List<Coordinate> axis =
          List.of(
              from.place(),
              new Coordinate(x, shore.barrierAt(x).northing()),
              new Coordinate(x - 150, 60));
      SineGeneratedCurve curve = SineGeneratedCurve.natural(1_000, Math.toRadians(35), STEP_METRES);
      for (int attempt = 0; attempt < 6; attempt++) {
        Coordinate[] points = curve.along(axis, draws);
        if (isClear(points, junctionMetres(from), 0)) {
          keep(new ChannelPath(Names.inlet(i), points, 70, 80));
          break;
        }
      }
    }
  }

  private void digRamp() {
    double x = shore.widthMetres() * draws.between(0.42, 0.55);
    double y = Shoreline.HEIGHT_METRES - 60;
    while (shore.mainland(x, y) > -4) {
      y -= 2;
    }
    ramp = new Coordinate(x, y);
    Vertex to = nearest(new Coordinate(x - 250, y), List.of(paths.get(0)));
    List<Coordinate> axis = List.of(ramp, to.place());
    double[] angles = {48, 40, 30, 15, 0};
    for (double angle : angles) {
      Coordinate[] points =
          SineGeneratedCurve.natural(760, Math.toRadians(angle), STEP_METRES).along(axis, draws);
      if (angle == 0 || (isClear(points, 0, junctionMetres(to)) && isInWater(points, 16, 10))) {
        keep(new ChannelPath(Names.RAMP_CHANNEL, points, 14, 20));
        return;
      }
    }
  }

  private void digSides() {
    ChannelPath main = paths.get(0);
    double length = PLAIN.createLineString(main.points()).getLength();
    int wanted = (int) Math.round(length / 620);
    List<ChannelPath> firstOrder = new ArrayList<>();
    for (int i = 0; i < wanted; i++) {
      double share = (i + 0.5 + draws.between(-0.3, 0.3)) / wanted;
      int index = (int) (share * (main.points().length - 1));
      int side = i % 2 == 0 ? 1 : -1;
      digSide(new Vertex(main, index), side, draws.between(900, 2_300), 24)
          .ifPresent(firstOrder::add);
    }
    for (ChannelPath parent : firstOrder) {
      int index = (int) (draws.between(0.35, 0.65) * (parent.points().length - 1));
      digSide(new Vertex(parent, index), draws.sign(), draws.between(500, 1_100), 13);
    }
  }

  private Optional<ChannelPath> digSide(
      Vertex from, int side, double wantedLength, double halfWidth) {
    double length = wantedLength;
    double heading = from.path.heading(from.index);
    for (int attempt = 0; attempt < 14 && length > 420; attempt++, length *= 0.88) {
      double direction = heading + side * Math.toRadians(draws.between(45, 85));
      Coordinate end =
          new Coordinate(
              Math.rint(from.place().x + length * StrictMath.cos(direction)),
              Math.rint(from.place().y + length * StrictMath.sin(direction)));
      SineGeneratedCurve curve =
          SineGeneratedCurve.natural(
              26 * halfWidth, Math.toRadians(draws.between(42, 60)), STEP_METRES);
      Coordinate[] points = curve.along(List.of(from.place(), end), draws);
      if (isInWater(points, 0, 0) && isClear(points, junctionMetres(from), 0)) {
        ChannelPath side2 =
            new ChannelPath(Names.channel(named), points, halfWidth, halfWidth * 0.5);
        named++;
        keep(side2);
        return Optional.of(side2);
      }
    }
    return Optional.empty();
  }

  /** Joins ends of side channels to a neighbour, which closes loops. */
  private void digLinks() {
    List<ChannelPath> sides = paths.subList(1, paths.size()).stream().toList();
    int wanted = Math.max(2, (int) Math.round(shore.widthMetres() / 2_600));
    int made = 0;
    for (ChannelPath side : sides) {
      if (made == wanted) {
        return;
      }
      Vertex from = new Vertex(side, side.points().length - 1);
      List<ChannelPath> others = sides.stream().filter(other -> other != side).toList();
      if (others.isEmpty()) {
        return;
      }
      Vertex to = nearest(from.place(), others);
      double apart = from.place().distance(to.place());
      if (apart > 250 && apart < 1_300 && to.index > 20) {
        Coordinate[] points =
            SineGeneratedCurve.natural(420, Math.toRadians(38), STEP_METRES)
                .along(List.of(from.place(), to.place()), draws);
        if (isInWater(points, 0, 0) && isClear(points, 180, 180)) {
          keep(new ChannelPath(Names.channel(named), points, 11, 13));
          named++;
          made++;
        }
      }
    }
  }

  private void keep(ChannelPath path) {
    paths.add(path);
    LineString line = PLAIN.createLineString(path.points());
    double widest = Math.max(path.firstHalfWidthMetres(), path.lastHalfWidthMetres());
    built.add(new Built(line, new IndexedFacetDistance(line), widest));
  }

  private static Vertex nearest(Coordinate place, List<ChannelPath> candidates) {
    Vertex best = null;
    double bestDistance = Double.POSITIVE_INFINITY;
    for (ChannelPath path : candidates) {
      for (int i = 1; i < path.points().length - 1; i++) {
        double distance = path.points()[i].distance(place);
        if (distance < bestDistance) {
          bestDistance = distance;
          best = new Vertex(path, i);
        }
      }
    }
    return best;
  }

  private boolean isInWater(Coordinate[] points, int skipFirst, int skipLast) {
    for (int i = skipFirst; i < points.length - skipLast; i++) {
      if (shore.mainland(points[i].x, points[i].y) > -70
          || points[i].x < 150
          || points[i].x > shore.widthMetres() - 150
          || points[i].y < shore.barrierAt(points[i].x).northing()) {
        return false;
      }
    }
    return true;
  }

  /** How much of a path may lie close to the channel that it joins. */
  private static double junctionMetres(Vertex joined) {
    return 150 + 2.4 * joined.path.halfWidthMetres(joined.index);
  }

  /** Whether a path keeps off itself and, away from its joined ends, off all channels. */
  private boolean isClear(Coordinate[] points, double joinedFirst, double joinedLast) {
    LineString whole = PLAIN.createLineString(points);
    if (!whole.isSimple()) {
      return false;
    }
    int first = (int) Math.ceil(joinedFirst / STEP_METRES);
    int last = points.length - (int) Math.ceil(joinedLast / STEP_METRES);
    if (last - first < 3) {
      return false;
    }
    LineString free = PLAIN.createLineString(Arrays.copyOfRange(points, first, last));
    for (Built other : built) {
      double wanted = CLEARANCE_METRES + other.widest;
      Envelope near = free.getEnvelopeInternal();
      near.expandBy(wanted);
      if (near.intersects(other.line.getEnvelopeInternal())
          && other.distance.isWithinDistance(free, wanted)) {
        return false;
      }
      if (whole.getEnvelopeInternal().intersects(other.line.getEnvelopeInternal())
          && !meetsOnlyAtEnds(whole, other.line)) {
        return false;
      }
    }
    return true;
  }

  private static boolean meetsOnlyAtEnds(LineString path, LineString other) {
    for (Coordinate meeting : path.intersection(other).getCoordinates()) {
      if (!meeting.equals2D(path.getCoordinateN(0))
          && !meeting.equals2D(path.getCoordinateN(path.getNumPoints() - 1))) {
        return false;
      }
    }
    return true;
  }
}
