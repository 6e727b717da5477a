package org.meadowmark.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.coverage.CoverageValidator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.samples.SampleScar.Fate;

/** The bundled sample's estuary, as it comes from the generator. */
class EstuaryTest {
  private static final Estuary SAMPLE = SampleEstuary.MADE;
  private static final List<SampleScar> FIRST = SAMPLE.scars(0).toList();
  private static final List<SampleScar> SECOND = SAMPLE.scars(1).toList();
  private static final double NARROWEST_HALF_CHANNEL_METRES = 6;

  private static Geometry union(List<Geometry> geometries) {
    return UnaryUnionOp.union(geometries);
  }

  private static Geometry land() {
    return union(SAMPLE.land().stream().map(area -> area.geometry()).toList());
  }

  private static Geometry channels() {
    return union(SAMPLE.channels().stream().map(Channel::geometry).toList());
  }

  private static STRtree bedIndex() {
    STRtree index = new STRtree();
    for (Bed bed : SAMPLE.beds()) {
      PreparedGeometry prepared = PreparedGeometryFactory.prepare(bed.geometry());
      index.insert(bed.geometry().getEnvelopeInternal(), prepared);
    }
    return index;
  }

  private static int bedsTouched(STRtree index, Geometry scar) {
    int touched = 0;
    for (Object bed : index.query(scar.getEnvelopeInternal())) {
      if (((PreparedGeometry) bed).intersects(scar)) {
        touched++;
      }
    }
    return touched;
  }

  private static double median(DoubleStream values) {
    double[] sorted = values.sorted().toArray();
    return sorted[sorted.length / 2];
  }

  @Nested
  class Beds {
    @Test
    void areManyAndValidAndDoNotOverlap() {
      Geometry[] beds = SAMPLE.beds().stream().map(Bed::geometry).toArray(Geometry[]::new);
      assertThat(beds).hasSizeBetween(350, 450);
      assertThat(beds).allMatch(Geometry::isValid);
      assertThat(CoverageValidator.isValid(beds)).isTrue();
    }

    @Test
    void haveHolesAndNeighboursSpeciesAndTextures() {
      List<Bed> beds = SAMPLE.beds();
      assertThat(beds.stream().filter(b -> ((Polygon) b.geometry()).getNumInteriorRing() > 0))
          .hasSizeGreaterThan(30);
      Map<String, Long> species =
          beds.stream().collect(Collectors.groupingBy(Bed::species, Collectors.counting()));
      assertThat(species.keySet()).isEqualTo(Set.of("shoalgrass", "turtlegrass", "manateegrass"));
      assertThat(species.values()).allMatch(count -> count >= 15);
      Map<String, Long> textures =
          beds.stream().collect(Collectors.groupingBy(Bed::texture, Collectors.counting()));
      assertThat(textures.keySet()).isEqualTo(Set.of("patchy", "continuous"));
      assertThat(textures.values()).allMatch(count -> count >= 80);
      long touching =
          beds.stream().filter(bed -> beds.stream().anyMatch(other -> share(bed, other))).count();
      assertThat(touching).isGreaterThan(100);
    }

    private static boolean share(Bed bed, Bed other) {
      return other != bed
          && other.geometry().getEnvelopeInternal().intersects(bed.geometry().getEnvelopeInternal())
          && other.geometry().intersection(bed.geometry()).getLength() > 5;
    }

    @Test
    void growNeitherOnLandNorInChannels() {
      Geometry land = land();
      Geometry fairways = channels().buffer(NARROWEST_HALF_CHANNEL_METRES);
      for (Bed bed : SAMPLE.beds()) {
        assertThat(bed.geometry().intersects(land)).as(bed.id()).isFalse();
        assertThat(bed.geometry().intersects(fairways)).as(bed.id()).isFalse();
      }
    }

    @Test
    void followDepth() {
      Map<String, List<Double>> depths = new TreeMap<>();
      for (Bed bed : SAMPLE.beds()) {
        Point inner = bed.geometry().getInteriorPoint();
        SAMPLE
            .depth()
            .depthMetres(inner.getX(), inner.getY())
            .ifPresent(
                depth ->
                    depths.computeIfAbsent(bed.species(), key -> new ArrayList<>()).add(depth));
      }
      double shallow = median(depths.get("shoalgrass").stream().mapToDouble(d -> d));
      double middle = median(depths.get("turtlegrass").stream().mapToDouble(d -> d));
      double deep = median(depths.get("manateegrass").stream().mapToDouble(d -> d));
      assertThat(shallow).isLessThan(middle);
      assertThat(middle).isLessThan(deep);
    }
  }

  @Nested
  class ChannelNetwork {
    @Test
    void isConnectedAndNoded() {
      Map<Coordinate, Integer> group = new HashMap<>();
      Map<Coordinate, Integer> degree = new HashMap<>();
      List<Coordinate[]> ends = new ArrayList<>();
      for (Channel channel : SAMPLE.channels()) {
        Coordinate[] points = channel.geometry().getCoordinates();
        Coordinate[] pair = {points[0], points[points.length - 1]};
        ends.add(pair);
        for (Coordinate end : pair) {
          group.putIfAbsent(end, group.size());
          degree.merge(end, 1, Integer::sum);
        }
      }
      for (int round = 0; round < ends.size(); round++) {
        for (Coordinate[] pair : ends) {
          int smaller = Math.min(group.get(pair[0]), group.get(pair[1]));
          group.put(pair[0], smaller);
          group.put(pair[1], smaller);
        }
      }
      assertThat(Set.copyOf(group.values())).hasSize(1);
      assertThat(degree.values().stream().filter(d -> d >= 3)).hasSizeGreaterThan(10);
      for (Channel one : SAMPLE.channels()) {
        assertThat(one.geometry().isSimple()).isTrue();
        for (Channel other : SAMPLE.channels()) {
          if (one != other && one.geometry().intersects(other.geometry())) {
            assertThat(one.geometry().touches(other.geometry()))
                .as(one.id() + " and " + other.id())
                .isTrue();
          }
        }
      }
    }

    @Test
    void isInWater() {
      Geometry land = land();
      for (Channel channel : SAMPLE.channels()) {
        assertThat(channel.geometry().intersection(land).getLength())
            .as(channel.id())
            .isLessThan(10);
      }
      assertThat(new GeometryFactory().createPoint(SAMPLE.launchRamp()).distance(land()))
          .isLessThan(30);
    }

    @Test
    void meandersAndIsNamed() {
      List<Channel> main =
          SAMPLE.channels().stream().filter(c -> c.name().equals(Names.MAIN_CHANNEL)).toList();
      double length = main.stream().mapToDouble(c -> c.geometry().getLength()).sum();
      Coordinate[] first = main.get(0).geometry().getCoordinates();
      Coordinate[] last = main.get(main.size() - 1).geometry().getCoordinates();
      assertThat(length / first[0].distance(last[last.length - 1])).isBetween(1.2, 3.0);
      assertThat(SAMPLE.channels()).noneMatch(c -> c.name().isEmpty());
      assertThat(SAMPLE.channels().stream().map(Channel::name).distinct())
          .hasSizeGreaterThan(10)
          .contains(Names.RAMP_CHANNEL);
    }

    @Test
    void isDeeperThanTheFlatsBeside() {
      List<Double> inChannel = new ArrayList<>();
      for (Channel channel : SAMPLE.channels()) {
        for (Coordinate c : channel.geometry().getCoordinates()) {
          SAMPLE.depth().depthMetres(c.x, c.y).ifPresent(inChannel::add);
        }
      }
      List<Double> onFlats = new ArrayList<>();
      for (Bed bed : SAMPLE.beds()) {
        Point inner = bed.geometry().getInteriorPoint();
        SAMPLE.depth().depthMetres(inner.getX(), inner.getY()).ifPresent(onFlats::add);
      }
      assertThat(median(inChannel.stream().mapToDouble(d -> d)))
          .isGreaterThan(1.5 * median(onFlats.stream().mapToDouble(d -> d)));
    }
  }

  @Nested
  class Areas {
    @Test
    void managementAreasTileAndLeaveSomeBedOut() {
      Geometry[] areas =
          SAMPLE.managementAreas().stream().map(a -> a.geometry()).toArray(Geometry[]::new);
      assertThat(areas).hasSize(6);
      assertThat(CoverageValidator.isValid(areas)).isTrue();
      Geometry all = union(Arrays.asList(areas));
      assertThat(all.getNumGeometries()).isEqualTo(1);
      assertThat(((Polygon) all).getNumInteriorRing()).isZero();
      double outside =
          SAMPLE.beds().stream().mapToDouble(b -> b.geometry().difference(all).getArea()).sum();
      assertThat(outside).isGreaterThan(100);
    }

    @Test
    void surveyLeavesBedsOutWhollyAndInPart() {
      Geometry surveyed = SAMPLE.surveyedArea().get(0).geometry();
      assertThat(surveyed.isValid()).isTrue();
      int whole = 0;
      int part = 0;
      for (Bed bed : SAMPLE.beds()) {
        if (bed.geometry().disjoint(surveyed)) {
          whole++;
        } else if (!bed.geometry().within(surveyed)) {
          part++;
        }
      }
      assertThat(whole).isBetween(3, 60);
      assertThat(part).isBetween(2, 40);
    }
  }

  @Nested
  class Scars {
    @Test
    void allAreSeenInTheirFirstSeason() {
      Set<Long> ids =
          FIRST.stream().map(SampleScar::truthId).collect(Collectors.toCollection(TreeSet::new));
      SECOND.stream()
          .filter(s -> s.fate() == Fate.NEW)
          .forEach(s -> assertThat(ids.add(s.truthId())).isTrue());
      assertThat(ids).hasSize(EstuarySettings.SAMPLE.scars());
    }

    @Test
    void haveTheSharesOfTheirCauses() {
      List<SampleScar> all = new ArrayList<>(FIRST);
      SECOND.stream().filter(s -> s.fate() == Fate.NEW).forEach(all::add);
      for (CauseKind kind : CauseKind.values()) {
        long count = all.stream().filter(s -> s.cause().equals(kind.key)).count();
        double expected = kind.share * all.size();
        // Twins copy a propeller's cause, which moves shares by a few in a hundred.
        assertThat((double) count)
            .as(kind.key)
            .isCloseTo(
                expected, within(5 * Math.sqrt(expected * (1 - kind.share)) + 0.05 * expected));
      }
    }

    @Test
    void haveTheWidthsOfTheirCauses() {
      for (CauseKind kind : CauseKind.values()) {
        List<SampleScar> some = FIRST.stream().filter(s -> s.cause().equals(kind.key)).toList();
        if (kind == CauseKind.GROUNDING) {
          assertThat(some).allMatch(s -> s.geometry() instanceof Polygon);
          assertThat(some).allMatch(s -> s.widthMetres().isEmpty());
        } else {
          double median = median(some.stream().mapToDouble(s -> s.widthMetres().orElseThrow()));
          assertThat(median)
              .as(kind.key)
              .isCloseTo(kind.medianWidthMetres, within(0.15 * kind.medianWidthMetres));
        }
      }
      double propeller =
          median(
              FIRST.stream()
                  .filter(s -> s.cause().equals("propeller"))
                  .mapToDouble(s -> s.widthMetres().orElseThrow()));
      assertThat(propeller).isCloseTo(0.40, within(0.02));
    }

    @Test
    void haveHeavyTailedLengths() {
      double[] lengths =
          FIRST.stream()
              .filter(s -> s.widthMetres().isPresent())
              .mapToDouble(s -> s.geometry().getLength())
              .sorted()
              .toArray();
      assertThat(lengths[0]).isGreaterThan(0.9);
      assertThat(lengths[lengths.length - 1]).isBetween(100.0, 156.0);
      double median = lengths[lengths.length / 2];
      assertThat(median).isBetween(8.0, 20.0);
      assertThat(lengths[(int) (0.95 * lengths.length)]).isGreaterThan(3 * median);
    }

    @Test
    void lieMostlyOnBeds() {
      STRtree index = bedIndex();
      long onBed = FIRST.stream().filter(s -> bedsTouched(index, s.geometry()) > 0).count();
      long onSeveral = FIRST.stream().filter(s -> bedsTouched(index, s.geometry()) > 1).count();
      assertThat((double) onBed / FIRST.size()).isBetween(0.6, 0.95);
      assertThat(onSeveral).isGreaterThan(30);
      Geometry surveyed = SAMPLE.surveyedArea().get(0).geometry();
      assertThat(FIRST.stream().filter(s -> s.geometry().disjoint(surveyed))).hasSizeGreaterThan(5);
      Geometry land = land();
      assertThat(FIRST.stream().filter(s -> s.geometry().intersection(land).getLength() > 8))
          .isEmpty();
    }

    @Test
    void someAreTwinsAndSomeTurn() {
      int twins = 0;
      int turning = 0;
      Map<Long, SampleScar> byId =
          FIRST.stream().collect(Collectors.toMap(SampleScar::truthId, s -> s));
      for (SampleScar scar : FIRST) {
        SampleScar next = byId.get(scar.truthId() + 1);
        if (scar.truthId() % 2 == 1 && next != null) {
          Coordinate middle = scar.geometry().getCoordinates()[0];
          twins += next.geometry().getCoordinates()[0].distance(middle) < 6 ? 1 : 0;
        }
        Coordinate[] c = scar.geometry().getCoordinates();
        if (scar.widthMetres().isPresent()
            && c[0].distance(c[c.length - 1]) < 0.75 * scar.geometry().getLength()) {
          turning++;
        }
      }
      assertThat(twins).isGreaterThan(50);
      assertThat(turning).isGreaterThan(5);
    }

    @Test
    void surviveHealAndGrow() {
      Map<Long, SampleScar> before =
          FIRST.stream().collect(Collectors.toMap(SampleScar::truthId, s -> s));
      List<SampleScar> still = SECOND.stream().filter(s -> s.fate() != Fate.NEW).toList();
      assertThat(still).allMatch(s -> before.containsKey(s.truthId()));
      assertThat((double) still.size() / FIRST.size()).isBetween(0.45, 0.75);
      List<SampleScar> longer = still.stream().filter(s -> s.fate() == Fate.EXTENDED).toList();
      assertThat(longer).hasSizeGreaterThan(20);
      for (SampleScar scar : longer) {
        assertThat(scar.geometry().getLength())
            .isGreaterThan(before.get(scar.truthId()).geometry().getLength() + 0.5);
      }
      for (SampleScar scar : still) {
        assertThat(scar.geometry().distance(before.get(scar.truthId()).geometry())).isLessThan(3);
      }
      assertThat(FIRST).allMatch(s -> s.seenOn().getYear() == 2025);
      assertThat(SECOND).allMatch(s -> s.seenOn().getYear() == 2026);
    }
  }

  @Nested
  class HotSpots {
    /** Scars on bed near a geometry for a hectare of bed near it. */
    private double rate(Estuary estuary, Geometry zone) {
      PreparedGeometry prepared = PreparedGeometryFactory.prepare(zone);
      double hectares =
          estuary.beds().stream()
                  .map(Bed::geometry)
                  .filter(prepared::intersects)
                  .mapToDouble(bed -> bed.intersection(zone).getArea())
                  .sum()
              / 10_000;
      long scars = estuary.scars(0).filter(s -> prepared.covers(s.geometry())).count();
      return scars / hectares;
    }

    @Test
    void areWhereTheTruthSays() {
      List<PlantedHotSpot> hotSpots = SAMPLE.plantedHotSpots();
      assertThat(hotSpots).hasSize(6);
      assertThat(hotSpots.get(0).channel()).isEqualTo(Names.RAMP_CHANNEL);
      Geometry planted = union(hotSpots.stream().map(h -> (Geometry) h.stretch()).toList());
      Geometry near = planted.buffer(120);
      Geometry elsewhere = channels().buffer(120).difference(planted.buffer(400));
      assertThat(rate(SAMPLE, near)).isGreaterThan(6 * rate(SAMPLE, elsewhere));
      for (PlantedHotSpot hotSpot : hotSpots) {
        assertThat(rate(SAMPLE, hotSpot.stretch().buffer(120)))
            .as("hot spot " + hotSpot.id())
            .isGreaterThan(2 * rate(SAMPLE, elsewhere));
        assertThat(hotSpot.stretch().getLength()).isBetween(200.0, 330.0);
      }
    }

    /** With none planted, scars per hectare of scarrable bed are the same near and far. */
    @Test
    void withoutAnyScarsFollowNoChannel() {
      Estuary even =
          EstuaryGenerator.generate(
              EstuarySettings.SAMPLE.withHotSpots(0, 1).withSize(20_000, 400));
      assertThat(even.plantedHotSpots()).isEmpty();
      PreparedGeometry near =
          PreparedGeometryFactory.prepare(
              union(even.channels().stream().map(Channel::geometry).toList()).buffer(150));
      GeometryFactory factory = new GeometryFactory();
      STRtree index = new STRtree();
      even.beds()
          .forEach(
              bed ->
                  index.insert(
                      bed.geometry().getEnvelopeInternal(),
                      PreparedGeometryFactory.prepare(bed.geometry())));
      long bedPoints = 0;
      long bedPointsNear = 0;
      DepthGrid depth = even.depth();
      for (double x = depth.westMetres(); x < depth.westMetres() + 8_000; x += 20) {
        for (double y = depth.southMetres(); y < depth.southMetres() + 6_000; y += 20) {
          Point point = factory.createPoint(new Coordinate(x, y));
          boolean isShallow = depth.depthMetres(x, y).orElse(9) < Terrain.SCARRED_TO_METRES;
          if (isShallow && bedsTouched(index, point) > 0) {
            bedPoints++;
            bedPointsNear += near.contains(point) ? 1 : 0;
          }
        }
      }
      List<SampleScar> scars =
          even.scars(0).filter(s -> bedsTouched(index, start(s, factory)) > 0).toList();
      long scarsNear = scars.stream().filter(s -> near.contains(start(s, factory))).count();
      double ratio = (double) scarsNear / scars.size() / ((double) bedPointsNear / bedPoints);
      assertThat(ratio).isCloseTo(1, within(0.12));
    }

    private static Point start(SampleScar scar, GeometryFactory factory) {
      return factory.createPoint(scar.geometry().getCoordinate());
    }
  }

  @Nested
  class Determinism {
    @Test
    void threadsDoNotMatter() {
      assertThat(SAMPLE.scars(1).parallel().map(s -> s.truthId() + s.geometry().toText()).toList())
          .isEqualTo(SECOND.stream().map(s -> s.truthId() + s.geometry().toText()).toList());
    }

    @Test
    void sameSeedSamePlaceOtherSeedOtherPlace() {
      EstuarySettings small = EstuarySettings.SAMPLE.withSize(300, 100);
      assertThat(text(small)).isEqualTo(text(small));
      assertThat(text(small)).isNotEqualTo(text(small.withSeed(5)));
    }

    /** The number of scars changes nothing but how many there are. */
    @Test
    void moreScarsKeepTheOthers() {
      Estuary few = EstuaryGenerator.generate(EstuarySettings.SAMPLE.withSize(200, 100));
      Estuary many = EstuaryGenerator.generate(EstuarySettings.SAMPLE.withSize(20_000, 100));
      List<SampleScar> manyScars = many.scars(0).toList();
      List<String> start =
          manyScars.stream()
              .filter(s -> s.truthId() <= 200)
              .map(s -> s.geometry().toText())
              .toList();
      assertThat(few.scars(0).map(s -> s.geometry().toText()).toList()).isEqualTo(start);
      assertThat(manyScars).hasSizeGreaterThan(11_000);
      assertThat(manyScars).allMatch(s -> s.geometry().isValid() && s.geometry().getLength() > 0.5);
    }

    private static String text(EstuarySettings settings) {
      Estuary estuary = EstuaryGenerator.generate(settings);
      StringBuilder text = new StringBuilder();
      estuary.beds().forEach(bed -> text.append(bed.geometry()).append(bed.species()));
      estuary.channels().forEach(channel -> text.append(channel.geometry()));
      estuary.scars(1).forEach(scar -> text.append(scar.geometry()).append(scar.widthMetres()));
      return text.toString();
    }
  }

  @Test
  void refusesSettingsOutOfRange() {
    assertThatThrownBy(() -> EstuarySettings.SAMPLE.withSize(-1, 400))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("scars");
    assertThatThrownBy(() -> EstuarySettings.SAMPLE.withSize(1, 20_000))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("beds");
    assertThatThrownBy(() -> SAMPLE.scars(2))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("season");
  }
}
