package org.meadowmark.core.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.locationtech.jts.algorithm.LineIntersector;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.noding.BasicSegmentString;
import org.locationtech.jts.noding.MCIndexNoder;
import org.locationtech.jts.noding.SegmentIntersector;
import org.locationtech.jts.noding.SegmentString;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MapArea;

/**
 * Finds channels that cross where neither has an end, that run over each other, that close on
 * themselves, or that run over land. None is left out: the ranking stage nodes channels, and uses a
 * stretch that is drawn twice once.
 *
 * <p>Time n log n in vertices, and for channels that touch land linear in the vertices of both.
 */
final class ChannelLayout {
  /** The ranking stage takes what is closer as one node. */
  private static final double NODE_METRES = 0.01;

  private final List<Channel> channels;
  private final GroundScale scale;
  private final double toleranceMetres;
  private final FindingLog log;

  /**
   * Takes the channels.
   *
   * @param channels in id order
   * @param scale grid-to-ground scale
   * @param toleranceMetres shorter stretches are not worth a finding
   * @param log takes the findings
   */
  ChannelLayout(List<Channel> channels, GroundScale scale, double toleranceMetres, FindingLog log) {
    this.channels = channels;
    this.scale = scale;
    this.toleranceMetres = toleranceMetres;
    this.log = log;
  }

  /** Lists crossings without a node, stretches drawn twice, and loops. */
  void checkNetwork() {
    List<SegmentString> strings = new ArrayList<>();
    for (int i = 0; i < channels.size(); i++) {
      boolean isLoop = false;
      for (Object part : LinearComponentExtracter.getLines(channels.get(i).geometry())) {
        LineString line = (LineString) part;
        isLoop |= line.isClosed();
        strings.add(
            new BasicSegmentString(
                CoordinateArrays.removeRepeatedPoints(line.getCoordinates()), i));
      }
      if (isLoop) {
        add(
            FindingCode.CHANNEL_LOOP,
            Level.NOTE,
            Treatment.KEPT,
            channels.get(i),
            "closes on itself",
            "kept as a loop; a loop that no other channel joins is cut from its western point");
      }
    }
    Meetings meetings = new Meetings();
    new MCIndexNoder(meetings).computeNodes(strings);
    meetings.byPair.forEach(this::report);
  }

  /** Lists how much of each channel lies on land. */
  void checkLand(List<MapArea> barriers) {
    List<Geometry> land =
        barriers.stream().map(MapArea::geometry).filter(g -> g.getDimension() == 2).toList();
    if (land.isEmpty()) {
      return;
    }
    GeometryIndex index = new GeometryIndex(land);
    channels.parallelStream().flatMap(channel -> onLand(channel, index)).forEach(log::add);
  }

  private Stream<Finding> onLand(Channel channel, GeometryIndex index) {
    Geometry line = channel.geometry();
    List<Geometry> met =
        index
            .near(line, 0)
            .mapToObj(index::get)
            .filter(area -> area.intersects(line))
            .map(area -> area.getGeometry())
            .toList();
    if (met.isEmpty()) {
      return Stream.empty();
    }
    Geometry whole = met.size() == 1 ? met.get(0) : OverlayNGRobust.union(met);
    double metres =
        ground(line, OverlayNGRobust.overlay(line, whole, OverlayNG.INTERSECTION).getLength());
    return metres <= toleranceMetres
        ? Stream.empty()
        : Stream.of(
            finding(
                FindingCode.CHANNEL_ON_LAND,
                Level.WARNING,
                Treatment.KEPT,
                channel,
                named(channel) + "runs over land for " + Figures.metres(metres),
                "kept; correct the channel or the barriers if it is no channel there"));
  }

  private static String named(Channel channel) {
    return channel.name().isEmpty() ? "" : "'" + channel.name() + "' ";
  }

  private double ground(Geometry line, double gridLength) {
    Coordinate centre = line.getEnvelopeInternal().centre();
    return gridLength / scale.lengthFactor(centre.x, centre.y);
  }

  private void report(Pair pair, Meeting meeting) {
    Channel later = channels.get(pair.later);
    String other = "channel " + channels.get(pair.earlier).id();
    int places = meeting.crossings.size();
    if (places > 0) {
      add(
          FindingCode.CHANNEL_CROSSING,
          Level.NOTE,
          Treatment.REPAIRED,
          later,
          "crosses "
              + other
              + " without a node in "
              + places
              + (places == 1 ? " place" : " places"),
          "both are cut where they cross, so that segments meet there");
    }
    double shared = ground(later.geometry(), meeting.sharedLength);
    if (shared > toleranceMetres) {
      add(
          FindingCode.CHANNEL_DUPLICATE,
          Level.WARNING,
          Treatment.REPAIRED,
          later,
          "runs over " + other + " for " + Figures.metres(shared),
          "the stretch is used once");
    }
  }

  private void add(
      FindingCode code,
      Level level,
      Treatment treatment,
      Channel channel,
      String problem,
      String action) {
    log.add(finding(code, level, treatment, channel, problem, action));
  }

  private static Finding finding(
      FindingCode code,
      Level level,
      Treatment treatment,
      Channel channel,
      String problem,
      String action) {
    return new Finding(code, level, treatment, LayerRole.CHANNELS, channel.ref(), problem, action);
  }

  /** Places of two channels in the list. */
  private record Pair(int earlier, int later) implements Comparable<Pair> {
    @Override
    public int compareTo(Pair other) {
      return Comparator.comparingInt(Pair::later)
          .thenComparingInt(Pair::earlier)
          .compare(this, other);
    }
  }

  /** How two channels meet away from their ends. */
  private static final class Meeting {
    private final Set<Coordinate> crossings = new TreeSet<>();
    private double sharedLength;
  }

  private static final class Meetings implements SegmentIntersector {
    private final LineIntersector intersector = new RobustLineIntersector();
    private final Map<Pair, Meeting> byPair = new TreeMap<>();

    @Override
    public void processIntersections(
        SegmentString one, int oneIndex, SegmentString other, int otherIndex) {
      int a = (Integer) one.getData();
      int b = (Integer) other.getData();
      if (a == b) {
        return;
      }
      intersector.computeIntersection(
          one.getCoordinate(oneIndex),
          one.getCoordinate(oneIndex + 1),
          other.getCoordinate(otherIndex),
          other.getCoordinate(otherIndex + 1));
      if (intersector.getIntersectionNum() == 2) {
        double length = intersector.getIntersection(0).distance(intersector.getIntersection(1));
        meeting(a, b).sharedLength += length;
      } else if (intersector.hasIntersection()) {
        crossing(one, oneIndex, other, otherIndex)
            .ifPresent(place -> meeting(a, b).crossings.add(place));
      }
    }

    private Meeting meeting(int a, int b) {
      return byPair.computeIfAbsent(
          new Pair(Math.min(a, b), Math.max(a, b)), pair -> new Meeting());
    }

    /** The place where two segments cross, unless a line ends there or both have a vertex there. */
    private Optional<Coordinate> crossing(
        SegmentString one, int oneIndex, SegmentString other, int otherIndex) {
      Coordinate place = intersector.getIntersection(0);
      boolean isNode =
          isEnd(one, place)
              || isEnd(other, place)
              || isVertex(one, oneIndex, place) && isVertex(other, otherIndex, place);
      return isNode ? Optional.empty() : Optional.of(place.copy());
    }

    private static boolean isEnd(SegmentString string, Coordinate place) {
      return place.distance(string.getCoordinate(0)) <= NODE_METRES
          || place.distance(string.getCoordinate(string.size() - 1)) <= NODE_METRES;
    }

    private static boolean isVertex(SegmentString string, int index, Coordinate place) {
      return place.distance(string.getCoordinate(index)) <= NODE_METRES
          || place.distance(string.getCoordinate(index + 1)) <= NODE_METRES;
    }

    @Override
    public boolean isDone() {
      return false;
    }
  }
}
