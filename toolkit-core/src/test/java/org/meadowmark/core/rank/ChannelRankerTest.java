package org.meadowmark.core.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.meadowmark.core.TestSurvey.box;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.linearref.LengthIndexedLine;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.GroundScale;

class ChannelRankerTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private static List<ChannelSegment> cut(TestSurvey survey) {
    return new ChannelSegmenter(GroundScale.NONE, 100, FACTORY).cut(survey.channels());
  }

  /** A line of length ℓ gives round(ℓ/100) equal pieces, at least 1. */
  @ParameterizedTest
  @CsvSource({"30, 1", "100, 1", "149, 1", "151, 2", "1000, 10", "1040, 10", "1060, 11"})
  void piecesAreOfNearEqualLength(double length, int pieces) {
    List<ChannelSegment> segments =
        cut(new TestSurvey().channel("1", "Main", "LINESTRING (0 0, %s 0)".formatted(length)));
    assertThat(segments).hasSize(pieces);
    assertThat(segments)
        .allSatisfy(s -> assertThat(s.lengthMetres()).isCloseTo(length / pieces, within(1e-9)));
    assertThat(segments.get(0).id()).isEqualTo("main-0001");
  }

  @Test
  void idsDoNotDependOnDirectionOrOrderOrPieces() {
    Map<String, String> expected = byId(cut(network()));
    TestSurvey reversed = network();
    reversed.channels().replaceAll((Channel c) -> c.withGeometry(c.geometry().reverse()));
    assertThat(byId(cut(reversed))).isEqualTo(expected);
    TestSurvey shuffled = network();
    Collections.shuffle(shuffled.channels(), new Random(3));
    assertThat(byId(cut(shuffled))).isEqualTo(expected);

    TestSurvey inPieces =
        new TestSurvey()
            .channel("1a", "Main", "LINESTRING (450 0, 0 0)")
            .channel("1b", "Main", "LINESTRING (450 0, 1000 0)")
            .channel("2", "Side", "LINESTRING (600 -300, 600 400)")
            .channel("3", "Loop", "LINESTRING (50 500, 150 500, 150 620, 50 620, 50 500)");
    assertThat(byId(cut(inPieces))).isEqualTo(expected);
  }

  private static TestSurvey network() {
    return new TestSurvey()
        .channel("1", "Main", "LINESTRING (0 0, 450 0, 1000 0)")
        .channel("2", "Side", "LINESTRING (600 -300, 600 400)")
        .channel("3", "Loop", "LINESTRING (150 620, 50 620, 50 500, 150 500, 150 620)");
  }

  /** Compares by ends and middle to the millimetre: vertices on a straight run do not matter. */
  private static Map<String, String> byId(List<ChannelSegment> segments) {
    return segments.stream()
        .collect(
            Collectors.toMap(
                ChannelSegment::id,
                s -> {
                  List<Coordinate> points = new ArrayList<>();
                  points.add(s.geometry().getCoordinateN(0));
                  points.add(s.geometry().getCoordinateN(s.geometry().getNumPoints() - 1));
                  points.sort(Comparator.naturalOrder());
                  points.add(
                      new LengthIndexedLine(s.geometry())
                          .extractPoint(s.geometry().getLength() / 2));
                  return points.stream()
                      .map(c -> String.format(Locale.ROOT, "%.3f %.3f", c.x + 0.0, c.y + 0.0))
                      .collect(Collectors.joining(", "));
                },
                (a, b) -> a,
                TreeMap::new));
  }

  @Test
  void channelsThatCrossWithoutANodeAreNoded() {
    List<ChannelSegment> segments =
        cut(
            new TestSurvey()
                .channel("1", "A", "LINESTRING (0 0, 430 0)")
                .channel("2", "B", "LINESTRING (230 -200, 230 200)"));
    // 230 m and 200 m of A, twice 200 m of B.
    assertThat(segments).hasSize(2 + 2 + 2 + 2);
    assertThat(segments.stream().mapToDouble(ChannelSegment::lengthMetres).sum())
        .isCloseTo(830, within(1e-9));
  }

  @Test
  void repeatedAndEmptyLinesCountOnce() {
    List<ChannelSegment> segments =
        cut(
            new TestSurvey()
                .channel("1", "A", "LINESTRING (0 0, 300 0)")
                .channel("2", "A", "LINESTRING (300 0, 0 0)")
                .channel("3", "", "LINESTRING (5 5, 5 5)"));
    assertThat(segments).hasSize(3);
  }

  @Test
  void aScarIsDividedBetweenItsNearestSegments() {
    ChannelRanking ranking =
        new TestSurvey()
            .channel("1", "A", "LINESTRING (0 0, 200 0)")
            .bed("b", box(0, 10, 200, 60))
            .scar("s", "LINESTRING (70 20, 150 20)", 0.4)
            .rank();
    assertThat(ranking.shares()).hasSize(2);
    assertThat(ranking.shares().get(0).segmentId()).isEqualTo("a-0001");
    assertThat(ranking.shares().get(0).lengthMetres()).isCloseTo(30, within(0.01));
    assertThat(ranking.shares().get(1).lengthMetres()).isCloseTo(50, within(0.01));
    assertThat(ranking.shares().get(0).nearestMetres()).isCloseTo(20, within(1e-9));
    assertThat(ranking.attributedMetres()).isCloseTo(80, within(1e-9));
    assertThat(ranking.segments().get(0).segment().id()).isEqualTo("a-0002");
    assertThat(ranking.segments().get(0).rank()).hasValue(1);
    RankedSegment first = ranking.segments().get(0);
    assertThat(first.ratePerHectare().getAsDouble())
        .isCloseTo(first.scarLengthMetres() / first.exposureHectares(), within(1e-12));
  }

  /** Exposure: the part of a bed within reach; here a half disc and a rectangle. */
  @Test
  void exposureIsTheBedWithinReach() {
    ChannelRanking ranking =
        new TestSurvey()
            .reach(50)
            .channel("1", "A", "LINESTRING (0 0, 100 0)")
            .bed("b", box(-500, 0, 50, 500))
            .rank();
    double expected = 50 * 50 + Math.PI * 50 * 50 / 4;
    // A quarter circle drawn with eight chords is 0.64 % smaller than the circle.
    assertThat(ranking.segments().get(0).exposureHectares() * 10_000)
        .isCloseTo(expected, within(Math.PI * 50 * 50 / 4 * 0.0065));
  }

  @Test
  void landBlocksTheWay() {
    TestSurvey open =
        new TestSurvey()
            .channel("1", "Near", "LINESTRING (0 0, 100 0)")
            .channel("2", "Far", "LINESTRING (0 200, 100 200)")
            .bed("b", box(0, 20, 100, 180))
            .scar("s", "LINESTRING (20 60, 80 60)", 0.4);
    assertThat(open.rank().shares().get(0).segmentId()).isEqualTo("near-0001");

    open.barrier(box(-50, 20, 150, 30));
    ChannelRanking blocked = open.rank();
    assertThat(blocked.shares()).hasSize(1);
    assertThat(blocked.shares().get(0).segmentId()).isEqualTo("far-0001");

    open.barrier(box(-50, 190, 150, 195));
    ChannelRanking enclosed = open.rank();
    assertThat(enclosed.shares()).isEmpty();
    assertThat(enclosed.blockedMetres()).isCloseTo(60, within(1e-9));
  }

  @Test
  void scarsOutOfReachAreCountedApart() {
    ChannelRanking ranking =
        new TestSurvey()
            .channel("1", "A", "LINESTRING (0 0, 100 0)")
            .bed("b", box(0, 0, 100, 400))
            .scar("s", "LINESTRING (50 200, 50 350)", 0.4)
            .scar("basin", TestSurvey.wkt(box(10, 10, 20, 20)), 0, "grounding")
            .rank();
    assertThat(ranking.attributedMetres()).isCloseTo(50, within(0.01));
    assertThat(ranking.outOfReachMetres()).isCloseTo(100, within(0.01));
    assertThat(ranking.attributedMetres() + ranking.outOfReachMetres())
        .isCloseTo(ranking.scarLengthMetres(), within(1e-9));
    assertThat(ranking.polygonScarCount()).isEqualTo(1);
  }

  @Test
  void segmentsWithoutBedGetNoRateAndSaySo() {
    ChannelRanking ranking =
        new TestSurvey()
            .reach(60)
            .channel("1", "A", "LINESTRING (0 0, 300 0)")
            .bed("b", box(0, 0, 50, 50))
            .scar("s", "LINESTRING (10 10, 40 10)", 0.4)
            .rank();
    assertThat(ranking.segments().get(0).rank()).hasValue(1);
    RankedSegment last = ranking.segments().get(2);
    assertThat(last.rank()).isEmpty();
    assertThat(last.ratePerHectare()).isEmpty();
    assertThat(last.remark()).isEqualTo("no bed in reach");
  }

  @Test
  void noChannelGivesAnEmptyRanking() {
    ChannelRanking ranking =
        new TestSurvey().bed("b", box(0, 0, 9, 9)).scar("s", "LINESTRING (1 1, 8 1)", 0.4).rank();
    assertThat(ranking.segments()).isEmpty();
    assertThat(ranking.outOfReachMetres()).isCloseTo(7, within(1e-9));
  }

  /** Against brute force: the distance of a thousand points a scar to every segment. */
  @Test
  void randomScarsAgreeWithBruteForceAndConserveLength() {
    Random random = new Random(11);
    TestSurvey survey =
        new TestSurvey()
            .channel("1", "A", "LINESTRING (0 0, 300 80, 620 -40, 1000 30)")
            .channel("2", "B", "LINESTRING (300 80, 420 400, 700 500)")
            .bed("b", box(0, -200, 1000, 600));
    for (int i = 0; i < 80; i++) {
      double x = random.nextDouble() * 1000;
      double y = random.nextDouble() * 800 - 200;
      double angle = random.nextDouble() * 6.28;
      double length = 1 + random.nextDouble() * 150;
      survey.scar(
          "s" + i,
          String.format(
              Locale.ROOT,
              "LINESTRING (%f %f, %f %f)",
              x,
              y,
              x + length * Math.cos(angle),
              y + length * Math.sin(angle)),
          0.4);
    }
    ChannelRanking ranking = survey.rank();
    double sum = ranking.shares().stream().mapToDouble(ScarShare::lengthMetres).sum();
    assertThat(sum + ranking.outOfReachMetres() + ranking.blockedMetres())
        .isCloseTo(ranking.scarLengthMetres(), within(1e-9 * ranking.scarLengthMetres()));

    List<ChannelSegment> segments = cut(survey);
    Map<String, Double> brute = new TreeMap<>();
    survey
        .scars()
        .forEach(
            scar -> {
              LengthIndexedLine line = new LengthIndexedLine(scar.geometry());
              double length = scar.geometry().getLength();
              for (int i = 0; i < 1000; i++) {
                Geometry point = FACTORY.createPoint(line.extractPoint(length * (i + 0.5) / 1000));
                segments.stream()
                    .min(Comparator.comparingDouble(s -> s.geometry().distance(point)))
                    .filter(s -> s.geometry().distance(point) <= 250)
                    .ifPresent(s -> brute.merge(s.id(), length / 1000, Double::sum));
              }
            });
    ranking
        .segments()
        .forEach(
            s ->
                assertThat(s.scarLengthMetres())
                    .as(s.segment().id())
                    .isCloseTo(brute.getOrDefault(s.segment().id(), 0.0), within(1.0)));
  }
}
