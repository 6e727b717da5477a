package org.meadowmark.core.rank.zone;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.meadowmark.core.measure.Barriers;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.TrueNorth;
import org.meadowmark.core.rank.ChannelSegment;
import org.meadowmark.core.rank.network.SegmentNetwork;
import org.meadowmark.core.rank.zone.choice.WorstFirst;
import org.meadowmark.core.rank.zone.choice.ZoneChoice;
import org.meadowmark.core.rank.zone.choice.ZoneChooser;
import org.meadowmark.core.rank.zone.choice.ZoneProblem;
import org.meadowmark.core.reference.DeviceRule;
import org.meadowmark.core.survey.ZoneParameters;

/**
 * Plans zones: which segments, what to put up, where, and what it is worth.
 *
 * <p>Segments may come in any order; they are worked on in the order of their ids.
 */
public final class ZonePlanner {
  private static final int CURVE_POINTS = 10;

  /** The curve goes on to this many times the length that was set. */
  private static final double CURVE_END = 2;

  private final ZoneParameters parameters;
  private final List<DeviceRule> rules;
  private final double channelHalfWidthMetres;
  private final Barriers barriers;
  private final GroundScale scale;
  private final TrueNorth north;
  private final GeometryFactory factory = new GeometryFactory();

  /**
   * Creates a planner.
   *
   * @param parameters limits, spacing, speeds, recovery times
   * @param rules which device a cause speaks for
   * @param channelHalfWidthMetres distance of a channel's edge from its centreline
   * @param barriers land and structures, where no mark can stand
   * @param scale grid-to-ground scale
   * @param north true north on the grid
   */
  public ZonePlanner(
      ZoneParameters parameters,
      List<DeviceRule> rules,
      double channelHalfWidthMetres,
      Barriers barriers,
      GroundScale scale,
      TrueNorth north) {
    this.parameters = parameters;
    this.rules = List.copyOf(rules);
    this.channelHalfWidthMetres = channelHalfWidthMetres;
    this.barriers = barriers;
    this.scale = scale;
    this.north = north;
  }

  /**
   * {@return zones, devices, marks and the curve of cover against length} Without scars near
   * channels, or with no zone allowed, there are no zones.
   *
   * @param segments segments with their scar length and evidence, in any order
   */
  public ZonePlan plan(List<ZoneSegment> segments) {
    List<ZoneSegment> byId =
        segments.stream()
            .sorted(Comparator.comparing(each -> each.segment().id(), Ids.ORDER))
            .toList();
    ZoneProblem problem = problem(byId, parameters.totalLengthMetres());
    ZoneChoice choice = ZoneChooser.choose(problem);
    CoverPoint best = point(problem, choice);
    List<CoverPoint> curve = new ArrayList<>();
    for (int i = 1; i <= CURVE_POINTS; i++) {
      double length = parameters.totalLengthMetres() * CURVE_END * i / CURVE_POINTS;
      ZoneProblem other = problem.within(length);
      boolean isBest = length == parameters.totalLengthMetres();
      curve.add(isBest ? best : point(other, ZoneChooser.choose(other)));
    }
    return new ZonePlan(
        zones(byId, choice, best),
        parameters.mostZones(),
        parameters.totalLengthMetres(),
        method(choice),
        best,
        monotone(curve),
        ZoneCautions.ALL);
  }

  private ZoneProblem problem(List<ZoneSegment> segments, double lengthMetres) {
    List<LineString> lines = segments.stream().map(each -> each.segment().geometry()).toList();
    double[] lengths =
        segments.stream().mapToDouble(each -> each.segment().lengthMetres()).toArray();
    double[] values = segments.stream().mapToDouble(ZoneSegment::scarMetres).toArray();
    return new ZoneProblem(
        SegmentNetwork.ofLines(lines, lengths), values, parameters.mostZones(), lengthMetres);
  }

  private static CoverPoint point(ZoneProblem problem, ZoneChoice choice) {
    double[] values = problem.valuesMetres();
    double worstFirst = 0;
    for (int i : WorstFirst.choose(problem)) {
      worstFirst += values[i];
    }
    return new CoverPoint(
        problem.totalLengthMetres(),
        choice.usedMetres(),
        choice.coveredMetres(),
        choice.upperBoundMetres(),
        worstFirst);
  }

  /** What is allowed in less length is allowed in more: a choice not proven may be replaced. */
  private static List<CoverPoint> monotone(List<CoverPoint> curve) {
    List<CoverPoint> points = new ArrayList<>();
    for (CoverPoint point : curve) {
      CoverPoint before = points.isEmpty() ? point : points.get(points.size() - 1);
      boolean keeps = point.coveredMetres() >= before.coveredMetres();
      points.add(
          new CoverPoint(
              point.lengthMetres(),
              keeps ? point.usedMetres() : before.usedMetres(),
              keeps ? point.coveredMetres() : before.coveredMetres(),
              point.upperBoundMetres(),
              point.worstFirstMetres()));
    }
    return points;
  }

  private String method(ZoneChoice choice) {
    return "At most "
        + parameters.mostZones()
        + " contiguous zones within the total length that cover the most scar length; "
        + choice.proof().words()
        + ".";
  }

  private List<Zone> zones(List<ZoneSegment> segments, ZoneChoice choice, CoverPoint best) {
    double allScars = segments.stream().mapToDouble(ZoneSegment::scarMetres).sum();
    double allChannels = segments.stream().mapToDouble(each -> each.segment().lengthMetres()).sum();
    ZoneWorthEstimator estimator = new ZoneWorthEstimator(parameters, allScars, allChannels);
    MarkerPlacer placer =
        new MarkerPlacer(
            segments.stream().map(ZoneSegment::segment).toList(),
            barriers,
            scale,
            north,
            channelHalfWidthMetres,
            parameters.markerSpacingMetres(),
            factory);
    List<Zone> zones = new ArrayList<>();
    for (int[] positions : choice.zones()) {
      List<ZoneSegment> members = new ArrayList<>();
      for (int position : positions) {
        members.add(segments.get(position));
      }
      zones.add(zone("Z" + (zones.size() + 1), members, allScars, estimator, placer, best));
    }
    return zones;
  }

  private Zone zone(
      String id,
      List<ZoneSegment> members,
      double allScars,
      ZoneWorthEstimator estimator,
      MarkerPlacer placer,
      CoverPoint best) {
    double length = 0;
    double scars = 0;
    double scarredSquareMetres = 0;
    Map<String, Double> byCause = new TreeMap<>();
    Map<String, Double> byPattern = new TreeMap<>();
    TreeSet<String> gaps = new TreeSet<>();
    for (ZoneSegment member : members) {
      length += member.segment().lengthMetres();
      scars += member.scarMetres();
      scarredSquareMetres += member.scarredSquareMetres();
      member.scarMetresByCause().forEach((cause, m) -> byCause.merge(cause, m, Double::sum));
      member.scarMetresByPattern().forEach((p, m) -> byPattern.merge(p, m, Double::sum));
      gaps.addAll(member.dataGaps());
    }
    List<ChannelSegment> segments = members.stream().map(ZoneSegment::segment).toList();
    List<DeviceProposal> devices =
        new DeviceChoice(rules, parameters).proposals(byCause, byPattern, scars);
    List<Marker> markers =
        leading(devices).map(device -> placer.place(id, segments, device)).orElse(List.of());
    return new Zone(
        id,
        segments.stream().map(ChannelSegment::id).toList(),
        factory.createMultiLineString(
            segments.stream().map(ChannelSegment::geometry).toArray(LineString[]::new)),
        length,
        scars,
        allScars > 0 ? scars / allScars : 0,
        byCause,
        estimator.worth(length, scars, scarredSquareMetres, best),
        devices,
        markers,
        List.copyOf(gaps));
  }

  /**
   * The device whose marks bound the zone: the first regulatory one, else the first with a mark.
   */
  private static Optional<DeviceProposal> leading(List<DeviceProposal> devices) {
    return devices.stream()
        .filter(device -> device.shape().isRegulatory())
        .findFirst()
        .or(() -> devices.stream().filter(each -> each.shape() != MarkShape.NONE).findFirst());
  }
}
