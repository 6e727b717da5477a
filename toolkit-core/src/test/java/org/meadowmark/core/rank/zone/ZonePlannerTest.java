package org.meadowmark.core.rank.zone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.meadowmark.core.TestParameters;
import org.meadowmark.core.measure.Barriers;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.TrueNorth;
import org.meadowmark.core.rank.ChannelSegment;
import org.meadowmark.core.reference.DeviceRule;
import org.meadowmark.core.reference.ReferenceTablesReader;

class ZonePlannerTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final TrueNorth GRID = (x, y) -> 0;

  @Test
  void everyShapeOfTheRuleTableIsKnown() {
    assertThat(DeviceRule.SHAPES)
        .containsExactlyElementsOf(Arrays.stream(MarkShape.values()).map(MarkShape::key).toList());
    assertThat(ReferenceTablesReader.bundled().deviceRules())
        .allSatisfy(rule -> assertThat(MarkShape.ofKey(rule.shapeKey())).isNotNull());
  }

  @Test
  void takesTheDamagedStretch() {
    ZonePlan plan = plan(eastward(10, 0, 0, 0, 300, 500, 0, 0, 0, 0, 50), List.of(), 1, 200);

    assertThat(plan.zones()).hasSize(1);
    Zone zone = plan.zones().get(0);
    assertThat(zone.id()).isEqualTo("Z1");
    assertThat(zone.segmentIds()).containsExactly("c-4", "c-5");
    assertThat(zone.lengthMetres()).isEqualTo(200);
    assertThat(zone.scarMetres()).isEqualTo(800);
    assertThat(zone.coveredShare()).isCloseTo(800.0 / 850, within(1e-12));
    assertThat(plan.best().isProvenBest()).isTrue();
    assertThat(plan.curve()).hasSize(10);
    assertThat(plan.curve().get(4)).isEqualTo(plan.best());
    assertThat(plan.curve())
        .extracting(CoverPoint::lengthMetres)
        .startsWith(40.0, 80.0)
        .endsWith(400.0);
    assertThat(plan.cautions()).anyMatch(text -> text.contains("not a legal basis"));
  }

  @Test
  void coverNeverFallsWithLengthAndIsNoLessThanWorstFirst() {
    Random random = new Random(7);
    double[] scars = random.doubles(60, 0, 40).map(v -> Math.max(0, v - 20)).toArray();
    ZonePlan plan = plan(eastward(60, scars), List.of(), 3, 1500);
    for (int i = 0; i < plan.curve().size(); i++) {
      CoverPoint point = plan.curve().get(i);
      assertThat(point.isProvenBest()).isTrue();
      assertThat(point.coveredMetres()).isGreaterThanOrEqualTo(point.worstFirstMetres() - 1e-9);
      if (i > 0) {
        assertThat(point.coveredMetres())
            .isGreaterThanOrEqualTo(plan.curve().get(i - 1).coveredMetres());
      }
    }
    assertThat(plan.curve())
        .anyMatch(point -> point.coveredMetres() > point.worstFirstMetres() + 1);
  }

  @Test
  void theOrderOfSegmentsDoesNotMatter() {
    List<ZoneSegment> segments = eastward(12, 0, 4, 4, 0, 0, 4, 4, 0, 0, 0, 4, 4);
    List<ZoneSegment> shuffled = new ArrayList<>(segments);
    Collections.shuffle(shuffled, new Random(1));
    assertThat(plan(shuffled, List.of(), 2, 400).toString())
        .isEqualTo(plan(segments, List.of(), 2, 400).toString());
  }

  @Test
  void noScarsNoZones() {
    ZonePlan plan = plan(eastward(5), List.of(), 3, 1000);
    assertThat(plan.zones()).isEmpty();
    assertThat(plan.best().coveredMetres()).isZero();
    assertThat(plan(List.of(), List.of(), 3, 1000).zones()).isEmpty();
  }

  /** A zone of 900 m due east: a mark at each end and two between, as 900/400 needs three gaps. */
  @Test
  void marksStandToStarboardOfBoatsThatComeIn() {
    double[] scars = new double[11];
    Arrays.fill(scars, 1, 10, 100);
    Zone zone = plan(eastward(11, scars), List.of(), 1, 900).zones().get(0);

    List<Marker> markers = zone.markers();
    assertThat(markers).extracting(Marker::id).containsExactly("Z1-M1", "Z1-M2", "Z1-M3", "Z1-M4");
    // From the west, bound east: starboard is south; the mark faces west. From the east: north.
    check(markers.get(0), 100, -15, 270, Marker.ZONE_END);
    check(markers.get(1), 1000, 15, 90, Marker.ZONE_END);
    check(markers.get(2), 400, -15, 270, Marker.SPACING);
    check(markers.get(3), 700, 15, 90, Marker.SPACING);
    assertThat(markers).allMatch(mark -> mark.shape() == MarkShape.RESTRICTION_CIRCLE);
    assertThat(markers.get(0).placement()).isEqualTo("on the starboard edge for entering boats");
  }

  @Test
  void bearingsAreTrue() {
    double[] scars = new double[11];
    Arrays.fill(scars, 1, 10, 100);
    ZonePlan plan = planner(List.of(), 1, 900, (x, y) -> 1.25).plan(eastward(11, scars));
    assertThat(plan.zones().get(0).markers())
        .extracting(Marker::bearingDegrees)
        .containsExactly(271.25, 91.25, 271.25, 91.25);
  }

  @Test
  void marksAreMovedOffLand() throws ParseException {
    double[] scars = new double[11];
    Arrays.fill(scars, 1, 10, 100);
    List<MapArea> land =
        List.of(
            land("POLYGON ((0 -9, 200 -9, 200 -40, 0 -40, 0 -9))"),
            land("POLYGON ((300 -5, 500 -5, 500 5, 300 5, 300 -5))"));
    Zone zone = plan(eastward(11, scars), land, 1, 900).zones().get(0);

    check(zone.markers().get(0), 100, -7.5, 270, Marker.ZONE_END);
    assertThat(zone.markers().get(0).placement()).contains("50 % of the half width", "barrier");
    check(zone.markers().get(2), 400, 0, 270, Marker.SPACING);
    assertThat(zone.markers().get(2).placement()).contains("on the centreline", "barrier");
    check(zone.markers().get(1), 1000, 15, 90, Marker.ZONE_END);
  }

  /** A cross with all arms damaged, and one arm that goes on: five ways in. */
  @Test
  void everyWayInHasAMark() {
    List<ZoneSegment> cross =
        List.of(
            segment("a", 100, line(0, 0, 100, 0)),
            segment("b", 100, line(0, 0, -100, 0)),
            segment("c", 100, line(0, 0, 0, 100)),
            segment("d", 100, line(0, 0, 0, -100)),
            segment("e", 0, line(100, 0, 200, 0)),
            segment("f", 0, line(100, 0, 200, 50)));
    Zone zone = plan(cross, List.of(), 1, 400).zones().get(0);
    assertThat(zone.segmentIds()).containsExactly("a", "b", "c", "d");
    assertThat(zone.markers()).hasSize(5);
    assertThat(zone.markers()).allMatch(mark -> mark.reason().equals(Marker.ZONE_END));
  }

  @Test
  void aSideChannelThatIsNotInTheZoneIsAWayIn() {
    List<ZoneSegment> tee =
        List.of(
            segment("a", 100, line(0, 0, 100, 0)),
            segment("b", 100, line(100, 0, 200, 0)),
            segment("c", 1, line(100, 0, 100, 100)));
    Zone zone = plan(tee, List.of(), 1, 200).zones().get(0);
    assertThat(zone.segmentIds()).containsExactly("a", "b");
    assertThat(zone.markers()).hasSize(3);
    // Bound south from the side channel: starboard is west; the mark faces north.
    assertThat(zone.markers()).anySatisfy(mark -> check(mark, 85, 0, 0, Marker.ZONE_END));
  }

  @Test
  void aRingWithoutAWayInIsMarkedAtSpacing() {
    List<ZoneSegment> ring =
        List.of(
            segment("a", 9, line(0, 0, 500, 0)),
            segment("b", 9, line(500, 0, 500, 500)),
            segment("c", 9, line(500, 500, 0, 500)),
            segment("d", 9, line(0, 500, 0, 0)));
    Zone zone = plan(ring, List.of(), 1, 2000).zones().get(0);
    assertThat(zone.markers()).hasSize(5).allMatch(m -> m.reason().equals(Marker.SPACING));
  }

  @Test
  void devicesFollowCauseAndPattern() {
    ZoneSegment segment =
        new ZoneSegment(
            new ChannelSegment("a", "Mill Run", line(0, 0, 100, 0), 100),
            100,
            Map.of("propeller", 75.0, "anchor", 25.0),
            Map.of("corner-cutting", 40.0),
            40,
            List.of("no depth layer"));
    Zone zone = plan(List.of(segment), List.of(), 1, 400).zones().get(0);
    assertThat(zone.devices())
        .extracting(DeviceProposal::cause, DeviceProposal::share, DeviceProposal::shape)
        .containsExactly(
            tuple("propeller", 0.75, MarkShape.RESTRICTION_CIRCLE),
            tuple("propeller", 0.75, MarkShape.DANGER_DIAMOND),
            tuple("propeller", 0.40, MarkShape.CHANNEL_MARK),
            tuple("anchor", 0.25, MarkShape.RESTRICTION_CIRCLE));
    assertThat(zone.devices())
        .extracting(DeviceProposal::legalBasis)
        .containsExactly(
            DeviceProposal.LEGAL_BASIS_MISSING,
            DeviceProposal.LEGAL_BASIS_MISSING,
            DeviceProposal.LEGAL_BASIS_NOT_NEEDED,
            DeviceProposal.LEGAL_BASIS_MISSING);
    assertThat(zone.dataGaps()).containsExactly("no depth layer");
  }

  @Test
  void causesBelowTheShareGetNoDevice() {
    ZoneSegment segment =
        new ZoneSegment(
            new ChannelSegment("a", "Mill Run", line(0, 0, 100, 0), 100),
            100,
            Map.of("propeller", 90.0, "anchor", 10.0),
            Map.of("corner-cutting", 19.0),
            40,
            List.of());
    assertThat(plan(List.of(segment), List.of(), 1, 400).zones().get(0).devices())
        .extracting(DeviceProposal::cause)
        .containsExactly("propeller", "propeller");
  }

  /** 1 852 m at 5 knots takes 12 minutes, at 20 knots 3: 9 minutes more. */
  @Test
  void passageOfANauticalMile() {
    SlowPassage passage = SlowPassage.over(1852, 37.04, 9.26);
    assertThat(passage.extraMinutes()).isCloseTo(9, within(1e-9));
    assertThat(passage.usualKnots()).isCloseTo(20, within(1e-9));
    assertThat(passage.slowKnots()).isCloseTo(5, within(1e-9));
    assertThat(SlowPassage.over(1852, 5, 9.26).extraMinutes()).isZero();
  }

  @Test
  void worthIsInNumbers() {
    ZoneSegment segment =
        new ZoneSegment(
            new ChannelSegment("a", "Mill Run", line(0, 0, 1000, 0), 1000),
            5_000,
            Map.of("propeller", 5_000.0),
            Map.of(),
            2_000,
            List.of());
    ZoneWorth worth = plan(List.of(segment), List.of(), 1, 1000).zones().get(0).worth();
    assertThat(worth.scarredHectares()).isEqualTo(0.2);
    assertThat(worth.serviceHectareYears().getAsDouble()).isCloseTo(0.4762516, within(1e-6));
    assertThat(worth.lowServiceHectareYears().getAsDouble())
        .isLessThan(worth.serviceHectareYears().getAsDouble());
    assertThat(worth.highServiceHectareYears().getAsDouble())
        .isGreaterThan(worth.serviceHectareYears().getAsDouble());
    assertThat(worth.serviceBasis()).contains("0.2000 ha", "5 years (from 1.4 to 9.5", "3 %");
    assertThat(worth.passages()).hasSize(2);
    assertThat(worth.answers()).hasSize(4);
    assertThat(worth.answers().get(0)).contains("9.3 km/h (5.0 knots)", "20 knots");
    assertThat(worth.answers().get(1)).contains("5000 m of scar", "100.0 % of all");
    assertThat(worth.answers().get(3)).contains("No other choice of at most 1 zones in 1000 m");
  }

  private static void check(Marker mark, double x, double y, double bearing, String reason) {
    assertThat(mark.geometry().getX()).isCloseTo(x, within(1e-6));
    assertThat(mark.geometry().getY()).isCloseTo(y, within(1e-6));
    assertThat(mark.bearingDegrees()).isCloseTo(bearing, within(1e-9));
    assertThat(mark.reason()).isEqualTo(reason);
  }

  private static ZonePlan plan(
      List<ZoneSegment> segments, List<MapArea> land, int zones, double length) {
    return planner(land, zones, length, GRID).plan(segments);
  }

  private static ZonePlanner planner(
      List<MapArea> land, int zones, double length, TrueNorth north) {
    return new ZonePlanner(
        TestParameters.of("most_zones", zones, "zone_total_length_m", length).zones(),
        ReferenceTablesReader.bundled().deviceRules(),
        15,
        new Barriers(land, FACTORY),
        GroundScale.NONE,
        north);
  }

  /** Segments of 100 m in a row from the origin. */
  private static List<ZoneSegment> eastward(int count, double... scars) {
    List<ZoneSegment> segments = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double metres = i < scars.length ? scars[i] : 0;
      segments.add(segment("c-" + (i + 1), metres, line(100 * i, 0, 100 * (i + 1), 0)));
    }
    return segments;
  }

  private static ZoneSegment segment(String id, double scarMetres, LineString line) {
    return new ZoneSegment(
        new ChannelSegment(id, "Mill Run", line, line.getLength()),
        scarMetres,
        scarMetres > 0 ? Map.of("propeller", scarMetres) : Map.of(),
        Map.of(),
        0.4 * scarMetres,
        List.of());
  }

  private static LineString line(double... xy) {
    Coordinate[] vertices = new Coordinate[xy.length / 2];
    for (int i = 0; i < vertices.length; i++) {
      vertices[i] = new Coordinate(xy[2 * i], xy[2 * i + 1]);
    }
    return FACTORY.createLineString(vertices);
  }

  private static MapArea land(String wkt) throws ParseException {
    Geometry polygon = new WKTReader().read(wkt);
    return new MapArea("1", FeatureRef.layer("land", ""), polygon, "");
  }
}
