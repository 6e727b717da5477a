package org.meadowmark.core.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.meadowmark.core.check.Samples.wkt;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.DepthField;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.model.Scar.WidthSource;

class LayoutCheckerTest {
  private static final double SLIVER_METRES = 0.1;
  private static final String BED = "POLYGON ((0 0, 100 0, 100 100, 0 100, 0 0))";

  private final FindingLog log = new FindingLog();

  private static FeatureRef ref(String id) {
    return new FeatureRef("f", "l", id);
  }

  private static List<Scar> scars(String... wkts) {
    return IntStream.range(0, wkts.length)
        .mapToObj(i -> scar(Integer.toString(i + 1), wkt(wkts[i])))
        .toList();
  }

  private static Scar scar(String id, Geometry geometry) {
    boolean line = geometry.getDimension() == 1;
    return new Scar(
        id,
        ref(id),
        geometry,
        "propeller",
        line ? 0.4 : 0,
        line ? WidthSource.MEASURED : WidthSource.OUTLINE,
        Optional.empty());
  }

  private static List<Bed> beds(String... wkts) {
    return IntStream.range(0, wkts.length)
        .mapToObj(
            i -> {
              String id = Integer.toString(i + 1);
              return new Bed(id, ref(id), wkt(wkts[i]), "", "");
            })
        .toList();
  }

  private static List<MapArea> areas(String... wkts) {
    return IntStream.range(0, wkts.length)
        .mapToObj(
            i -> {
              String id = Integer.toString(i + 1);
              return new MapArea(id, ref(id), wkt(wkts[i]), "");
            })
        .toList();
  }

  private MetricSurvey check(List<Scar> scars, List<Bed> beds, List<MapArea> surveyed) {
    return check(scars, beds, List.of(), List.of(), surveyed);
  }

  private MetricSurvey check(
      List<Scar> scars,
      List<Bed> beds,
      List<Channel> channels,
      List<MapArea> management,
      List<MapArea> surveyed) {
    MetricSurvey survey =
        new MetricSurvey(
            "grid",
            "",
            scars,
            beds,
            channels,
            management,
            surveyed,
            List.of(),
            DepthField.UNKNOWN,
            GroundScale.NONE);
    return new LayoutChecker(SLIVER_METRES, log, Progress.NONE).check(survey);
  }

  private List<Finding> found(FindingCode code) {
    return log.sorted().stream().filter(f -> f.code() == code).toList();
  }

  @Test
  void emptySurveyPasses() {
    assertThat(check(List.of(), List.of(), List.of()).beds()).isEmpty();
    assertThat(log.size()).isZero();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "LINESTRING (10 10, 20 10, 30 20)",
        "LINESTRING (30 20, 20 10, 10 10)",
        "LINESTRING (10 10, 15 10, 20 10, 20 10, 30 20)",
        "LINESTRING (10.04 9.97, 20.01 10, 30 20.04)",
        "MULTILINESTRING ((20 10, 10 10), (20 10, 30 20))"
      })
  void sameScarTwiceIsLeftOutOnce(String copy) {
    MetricSurvey survey =
        check(scars("LINESTRING (10 10, 20 10, 30 20)", copy), beds(BED), List.of());
    assertThat(survey.scars()).extracting(Scar::id).containsExactly("1");
    Finding finding = found(FindingCode.DUPLICATE_SCAR).get(0);
    assertThat(finding.where().featureId()).isEqualTo("2");
    assertThat(finding.treatment()).isEqualTo(Treatment.SKIPPED);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "LINESTRING (10 10, 20 10.2, 30 20)",
        "LINESTRING (10 10, 30 20)",
        "LINESTRING (10 10, 20 10, 30 20, 20 10)",
        "POLYGON ((10 10, 20 10, 30 20, 10 10))"
      })
  void scarsThatDifferAreKept(String other) {
    assertThat(
            check(scars("LINESTRING (10 10, 20 10, 30 20)", other), beds(BED), List.of()).scars())
        .hasSize(2);
    assertThat(found(FindingCode.DUPLICATE_SCAR)).isEmpty();
  }

  @Test
  void outlineThatStartsElsewhereIsACopy() {
    MetricSurvey survey =
        check(
            scars(
                "POLYGON ((0 0, 5 0, 5 5, 0 0))",
                "POLYGON ((5 5, 5 0, 0 0, 5 5))",
                "LINESTRING (0 0, 1 1)"),
            beds(BED),
            List.of());
    assertThat(survey.scars()).extracting(Scar::id).containsExactly("1", "3");
  }

  @Test
  void scarsOutsideBedsAndSurveyAreNotedAndKept() {
    MetricSurvey survey =
        check(
            scars(
                "LINESTRING (10 10, 20 10)",
                "LINESTRING (200 10, 210 10)",
                "LINESTRING (90 60, 120 60)"),
            beds(BED),
            areas("POLYGON ((0 0, 100 0, 100 50, 0 50, 0 0))"));
    assertThat(survey.scars()).hasSize(3);
    assertThat(found(FindingCode.SCAR_OUTSIDE_BEDS))
        .extracting(f -> f.where().featureId())
        .containsExactly("2");
    assertThat(found(FindingCode.SCAR_OUTSIDE_SURVEY))
        .extracting(f -> f.where().featureId())
        .containsExactly("2", "3");
  }

  @Test
  void bedsOutsideTheSurveyAreNotedWithTheirArea() {
    MetricSurvey survey =
        check(
            List.of(),
            beds(
                BED,
                "POLYGON ((200 0, 210 0, 210 10, 200 10, 200 0))",
                "POLYGON ((0 200, 10 200, 10 210, 0 210, 0 200))"),
            areas(
                "POLYGON ((0 0, 100 0, 100 40, 0 40, 0 0))",
                "POLYGON ((0 30, 100 30, 100 70, 0 70, 0 30))",
                "POLYGON ((0 200, 5 200, 5 210, 0 210, 0 200))",
                "POLYGON ((5 200, 10 200, 10 210, 5 210, 5 200))"));
    assertThat(survey.beds()).hasSize(3);
    assertThat(found(FindingCode.BED_OUTSIDE_SURVEY))
        .extracting(Finding::message)
        .containsExactly(
            "f: l: 1: lies partly outside the surveyed area, by 3000 m²; kept; its damage there is"
                + " unknown, not zero",
            "f: l: 2: lies wholly outside the surveyed area; kept; its damage there is unknown,"
                + " not zero");
  }

  @Test
  void overlapGoesToTheBedWhoseIdComesFirst() {
    List<Bed> beds =
        check(
                List.of(),
                beds(
                    BED,
                    "POLYGON ((90 0, 190 0, 190 100, 90 100, 90 0))",
                    "POLYGON ((80 80, 200 80, 200 120, 80 120, 80 80))",
                    "POLYGON ((20 20, 30 20, 30 30, 20 30, 20 20))"),
                List.of())
            .beds();
    assertThat(beds).extracting(Bed::id).containsExactly("1", "2", "3");
    assertThat(beds.get(0).geometry().getArea()).isCloseTo(10_000, within(1e-6));
    assertThat(beds.get(1).geometry().getArea()).isCloseTo(9_000, within(1e-6));
    // 4,800 less 20 × 20 with bed 1, less 90 × 20 with bed 2 of which 10 × 20 was bed 1's.
    assertThat(beds.get(2).geometry().getArea()).isCloseTo(2_600, within(1e-6));
    assertThat(found(FindingCode.BED_OVERLAP))
        .extracting(f -> f.where().featureId() + " " + f.treatment() + " " + f.problem())
        .containsExactly(
            "2 REPAIRED overlaps bed 1 by 1000 m²",
            "3 REPAIRED overlaps bed 1 by 400 m²",
            "3 REPAIRED overlaps bed 2 by 2000 m²",
            "4 SKIPPED overlaps bed 1 by 100 m²");
  }

  @Test
  void bedsThatShareAnEdgeDoNotOverlap() {
    check(
        List.of(),
        beds(
            BED,
            "POLYGON ((100 0, 200 0, 200 100, 100 100, 100 0))",
            "POLYGON ((100 100, 200 100, 200 200, 100 200, 100 100))"),
        List.of());
    assertThat(log.size()).isZero();
  }

  @Test
  void thinOverlapsAndGapsAreSlivers() {
    List<Bed> beds =
        check(
                List.of(),
                beds(
                    BED,
                    "POLYGON ((99.95 0, 200 0, 200 100, 99.95 100, 99.95 0))",
                    "POLYGON ((0 100.09, 100 100.09, 100 200, 0 200, 0 100.09))",
                    "POLYGON ((0 -50, 100 -50, 100 -0.11, 0 -0.11, 0 -50))"),
                List.of())
            .beds();
    assertThat(beds.get(1).geometry().getArea()).isCloseTo(10_000, within(1e-6));
    assertThat(found(FindingCode.BED_SLIVER))
        .extracting(f -> f.where().featureId() + " " + f.treatment() + " " + f.problem())
        .containsExactly(
            "2 REPAIRED overlaps, as a sliver, bed 1 by 5 m²",
            "3 KEPT a gap of 0.09 m to bed 1",
            "3 KEPT a gap of 0.09 m to bed 2");
  }

  @Test
  void managementAreasThatOverlapAreListed() {
    check(
        List.of(),
        List.of(),
        List.of(),
        areas(BED, "POLYGON ((90 0, 190 0, 190 100, 90 100, 90 0))"),
        List.of());
    Finding finding = found(FindingCode.AREA_OVERLAP).get(0);
    assertThat(finding.problem()).isEqualTo("overlaps management area 1 by 1000 m²");
    assertThat(finding.treatment()).isEqualTo(Treatment.KEPT);
    assertThat(log.size()).isEqualTo(1);
  }

  @Test
  void sameChannelTwiceIsLeftOutOnce() {
    List<Channel> channels =
        List.of(
            new Channel("a", ref("a"), wkt("LINESTRING (0 0, 100 0)"), "Long Cut"),
            new Channel("b", ref("b"), wkt("LINESTRING (100 0, 0 0)"), ""));
    MetricSurvey survey = check(List.of(), List.of(), channels, List.of(), List.of());
    assertThat(survey.channels()).extracting(Channel::id).containsExactly("a");
    assertThat(found(FindingCode.CHANNEL_DUPLICATE)).hasSize(1);
  }

  @Test
  void bedLayerGivenAsScarsIsAnError() {
    String other = "POLYGON ((200 0, 300 0, 300 50, 200 50, 200 0))";
    check(scars(BED, other), beds(BED, other), List.of());
    Finding finding = found(FindingCode.WRONG_GEOMETRY_TYPE).get(0);
    assertThat(finding.level()).isEqualTo(Level.ERROR);
    assertThat(finding.message())
        .isEqualTo(
            "f: l: 2 of 2 scar polygons are beds; a layer of beds or areas seems to be given as"
                + " scars; give the layer of scars");
  }

  @Test
  void areasGivenAsScarsAreAnError() {
    check(
        scars("POLYGON ((-10 -10, 400 -10, 400 200, -10 200, -10 -10))"),
        beds(BED, "POLYGON ((200 0, 300 0, 300 50, 200 50, 200 0))"),
        List.of());
    assertThat(found(FindingCode.WRONG_GEOMETRY_TYPE))
        .extracting(Finding::level)
        .containsExactly(Level.ERROR);
  }

  @Test
  void groundingsAreNoError() {
    check(
        scars(
            "POLYGON ((10 10, 60 10, 60 60, 10 60, 10 10))",
            "POLYGON ((70 70, 75 70, 75 75, 70 75, 70 70))"),
        beds(BED),
        List.of());
    assertThat(log.size()).isZero();
  }

  /** Random discs: no two beds overlap afterwards, and together they cover what they did. */
  @Test
  void resolvedBedsCoverTheSameGroundOnce() {
    Random random = new Random(7);
    GeometryFactory factory = new GeometryFactory();
    List<Bed> beds = new ArrayList<>();
    for (int i = 0; i < 120; i++) {
      Coordinate centre = new Coordinate(1000 * random.nextDouble(), 1000 * random.nextDouble());
      Geometry disc = factory.createPoint(centre).buffer(20 + 60 * random.nextDouble());
      String id = String.format(Locale.ROOT, "%03d", i);
      beds.add(new Bed(id, ref(id), disc, "", ""));
    }
    List<Bed> resolved = check(List.of(), beds, List.of()).beds();
    double union = OverlayNGRobust.union(beds.stream().map(Bed::geometry).toList()).getArea();
    double sum = resolved.stream().mapToDouble(bed -> bed.geometry().getArea()).sum();
    assertThat(sum).isCloseTo(union, within(1e-6 * union));
    assertThat(resolved).allMatch(bed -> bed.geometry().isValid());
  }

  /** A quadratic check would need about 10¹⁰ comparisons here. */
  @Test
  void hundredThousandScarsAreCheckedInSeconds() {
    Random random = new Random(3);
    GeometryFactory factory = new GeometryFactory();
    List<Scar> scars = new ArrayList<>();
    for (int i = 0; i < 100_000; i++) {
      double x = 10_000 * random.nextDouble();
      double y = 10_000 * random.nextDouble();
      Coordinate[] line = new Coordinate[8];
      for (int k = 0; k < line.length; k++) {
        line[k] = new Coordinate(x + 5 * k, y + 2 * random.nextDouble());
      }
      scars.add(scar(Integer.toString(i), factory.createLineString(line)));
    }
    List<Bed> beds = beds("POLYGON ((0 0, 9000 0, 9000 9000, 0 9000, 0 0))");
    Assertions.assertTimeout(
        Duration.ofSeconds(60), () -> check(scars, beds, List.of()), "not n log n");
    assertThat(found(FindingCode.SCAR_OUTSIDE_BEDS)).isNotEmpty();
  }
}
