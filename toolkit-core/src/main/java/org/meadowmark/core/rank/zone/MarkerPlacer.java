package org.meadowmark.core.rank.zone;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.locationtech.jts.algorithm.Angle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.meadowmark.core.measure.Barriers;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.TrueNorth;
import org.meadowmark.core.rank.ChannelSegment;
import org.meadowmark.core.rank.zone.ZoneChains.Chain;

/**
 * Positions of marks: one at each way into a zone, and more between so that no two neighbours along
 * a chain of its channel are farther apart than the spacing.
 *
 * <p>A way in is a node where the zone ends, or where a channel that is not in the zone comes in;
 * where several come in at one node each has a mark. A mark stands on the channel's edge, half the
 * channel's width from the centreline, on the starboard side of boats that come in (right-hand side
 * seen in their direction), and faces them. A mark between stands and faces so for boats that come
 * from the nearer end of its chain. Where a barrier lies between the centreline and the position it
 * is moved towards the centreline in quarters of the way.
 */
final class MarkerPlacer {
  private static final double QUARTER = 0.25;

  /** Rounding of a chain's length must not ask for one more mark. */
  private static final double ROUNDING_METRES = 1e-6;

  private final Map<Coordinate, List<ChannelSegment>> atNode = new HashMap<>();
  private final Barriers barriers;
  private final GroundScale scale;
  private final TrueNorth north;
  private final double halfWidthMetres;
  private final double spacingMetres;
  private final GeometryFactory factory;

  MarkerPlacer(
      List<ChannelSegment> segments,
      Barriers barriers,
      GroundScale scale,
      TrueNorth north,
      double halfWidthMetres,
      double spacingMetres,
      GeometryFactory factory) {
    for (ChannelSegment segment : segments) {
      for (Coordinate node : ZoneChains.ends(segment.geometry())) {
        atNode.computeIfAbsent(node, n -> new ArrayList<>()).add(segment);
      }
    }
    this.barriers = barriers;
    this.scale = scale;
    this.north = north;
    this.halfWidthMetres = halfWidthMetres;
    this.spacingMetres = spacingMetres;
    this.factory = factory;
  }

  /** A mark without its number. */
  private record Place(
      String segmentId, String reason, String placement, Point point, double bearingDegrees) {}

  /** Marks of a zone for a device, ends first, then along the chains. */
  List<Marker> place(String zoneId, List<ChannelSegment> zone, DeviceProposal device) {
    Set<String> ids = new HashSet<>();
    zone.forEach(segment -> ids.add(segment.id()));
    List<LineString> lines = zone.stream().map(ChannelSegment::geometry).toList();
    Set<Coordinate> entrances = new HashSet<>();
    List<Place> places = new ArrayList<>();
    for (Map.Entry<Coordinate, List<ChannelSegment>> node : zoneNodes(zone).entrySet()) {
      List<Place> here = endPlaces(node.getKey(), node.getValue(), ids);
      if (!here.isEmpty()) {
        entrances.add(node.getKey());
        places.addAll(here);
      }
    }
    for (Chain chain : ZoneChains.of(lines, entrances)) {
      boolean marked = entrances.contains(chain.line()[0]);
      places.addAll(between(chain, zone, marked));
    }
    List<Marker> markers = new ArrayList<>();
    for (Place place : places) {
      markers.add(
          new Marker(
              zoneId + "-M" + (markers.size() + 1),
              zoneId,
              place.segmentId,
              device.device(),
              device.shape(),
              place.reason,
              place.placement,
              place.point,
              place.bearingDegrees));
    }
    return markers;
  }

  private static Map<Coordinate, List<ChannelSegment>> zoneNodes(List<ChannelSegment> zone) {
    Map<Coordinate, List<ChannelSegment>> nodes = new TreeMap<>();
    for (ChannelSegment segment : zone) {
      for (Coordinate node : ZoneChains.ends(segment.geometry())) {
        nodes.computeIfAbsent(node, n -> new ArrayList<>()).add(segment);
      }
    }
    return nodes;
  }

  private List<Place> endPlaces(
      Coordinate node, List<ChannelSegment> zoneHere, Set<String> zoneIds) {
    List<Place> places = new ArrayList<>();
    ChannelSegment inside = zoneHere.get(0);
    Set<String> seen = new HashSet<>(zoneIds);
    for (ChannelSegment other : atNode.get(node)) {
      if (seen.add(other.id())) {
        double inwards = away(other.geometry(), node) + Math.PI;
        places.add(place(node, inwards, inside.id(), Marker.ZONE_END));
      }
    }
    if (places.isEmpty() && zoneHere.size() == 1) {
      double inwards = away(inside.geometry(), node);
      places.add(place(node, inwards, inside.id(), Marker.ZONE_END));
    }
    return places;
  }

  /** Direction, anticlockwise from east in radians, in which a line leaves one of its ends. */
  private static double away(LineString line, Coordinate node) {
    Coordinate[] vertices = line.getCoordinates();
    int last = vertices.length - 1;
    return vertices[0].equals2D(node)
        ? Angle.angle(vertices[0], vertices[1])
        : Angle.angle(vertices[last], vertices[last - 1]);
  }

  private List<Place> between(Chain chain, List<ChannelSegment> zone, boolean startMarked) {
    double[] reached = new double[chain.line().length];
    for (int i = 1; i < reached.length; i++) {
      Coordinate from = chain.line()[i - 1];
      Coordinate to = chain.line()[i];
      double factor = scale.lengthFactor((from.x + to.x) / 2, (from.y + to.y) / 2);
      reached[i] = reached[i - 1] + from.distance(to) / factor;
    }
    double length = reached[reached.length - 1];
    int gaps = Math.max(1, (int) Math.ceil((length - ROUNDING_METRES) / spacingMetres));
    List<Place> places = new ArrayList<>();
    int stretch = 1;
    // A ring without a way in has no mark at its start yet.
    for (int i = chain.isRing() && !startMarked ? 0 : 1; i < gaps; i++) {
      double at = length * i / gaps;
      while (reached[stretch] < at) {
        stretch++;
      }
      Coordinate from = chain.line()[stretch - 1];
      Coordinate to = chain.line()[stretch];
      double share = (at - reached[stretch - 1]) / (reached[stretch] - reached[stretch - 1]);
      Coordinate on =
          new Coordinate(from.x + share * (to.x - from.x), from.y + share * (to.y - from.y));
      boolean fromStart = at <= length / 2;
      double direction = fromStart ? Angle.angle(from, to) : Angle.angle(to, from);
      String segment = zone.get(chain.segmentOfStretch()[stretch - 1]).id();
      places.add(place(on, direction, segment, Marker.SPACING));
    }
    return places;
  }

  /**
   * A place beside the centreline.
   *
   * @param on point on the centreline
   * @param direction in which boats pass that the mark is for, anticlockwise from east in radians
   */
  private Place place(Coordinate on, double direction, String segmentId, String reason) {
    double offset = halfWidthMetres * scale.lengthFactor(on.x, on.y);
    double right = direction - Math.PI / 2;
    Coordinate position = on;
    String placement = "on the centreline: a barrier covers every position towards the edge";
    for (int quarters = 4; quarters > 0; quarters--) {
      double reach = offset * quarters * QUARTER;
      Coordinate candidate =
          new Coordinate(on.x + reach * Math.cos(right), on.y + reach * Math.sin(right));
      if (!barriers.block(on, candidate)) {
        position = candidate;
        placement =
            quarters == 4
                ? "on the starboard edge for entering boats"
                : "moved towards the centreline, to "
                    + quarters * 25
                    + " % of the half width: a barrier covers the starboard edge";
        break;
      }
    }
    double facing = direction + Math.PI;
    double bearing = 90 - Math.toDegrees(facing) + north.gridNorthDegrees(position.x, position.y);
    return new Place(segmentId, reason, placement, factory.createPoint(position), turned(bearing));
  }

  private static double turned(double degrees) {
    double turned = degrees - 360 * Math.floor(degrees / 360);
    return turned >= 360 ? 0 : turned;
  }
}
