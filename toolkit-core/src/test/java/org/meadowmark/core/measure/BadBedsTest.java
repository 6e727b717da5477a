package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.meadowmark.core.TestSurvey.box;
import static org.meadowmark.core.TestSurvey.wkt;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.meadowmark.core.TestSurvey;

/** Beds and scars that break what a measurer likes to assume: in position, in number, in size. */
class BadBedsTest {
  private static final Offset<Double> NEAR = within(1e-6);
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** The checks hand no nested beds on; measured all the same, they are one patch. */
  @Test
  void bedInsideABedIsOnePatchWithIt() {
    Measurement result =
        new TestSurvey()
            .bed("outer", box(0, 0, 100, 100))
            .bed("inner", box(30, 30, 50, 50))
            .scar("s", "LINESTRING (-5 40, 105 40)", 0.5)
            .measure();
    assertThat(result.whole().fragmentation().before().patchCount()).isEqualTo(1);
    assertThat(result.whole().fragmentation().totalSquareMetres()).isCloseTo(10_000, NEAR);
    assertThat(result.patches()).hasSize(2);
    assertThat(result.patches().stream().mapToDouble(Patch::areaSquareMetres).sum())
        .isCloseTo(9_950, NEAR);
  }

  @Test
  void bedInAHoleOfABedIsAPatchOfItsOwnUntilItTouches() {
    String outer =
        "POLYGON ((0 0, 100 0, 100 100, 0 100, 0 0), (30 30, 30 50, 50 50, 50 30, 30 30))";
    assertThat(
            new TestSurvey()
                .bed("outer", outer)
                .bed("island", box(35, 35, 45, 45))
                .measure()
                .whole()
                .fragmentation()
                .before()
                .patchCount())
        .isEqualTo(2);
    Fragmentation filled =
        new TestSurvey()
            .bed("outer", outer)
            .bed("filling", box(30, 30, 50, 50))
            .measure()
            .whole()
            .fragmentation();
    assertThat(filled.before().patchCount()).isEqualTo(1);
    assertThat(filled.before().edgeMetres()).isCloseTo(400, NEAR);
    assertThat(filled.before().mesh().squareMetres().getAsDouble()).isCloseTo(10_000, NEAR);
  }

  @Test
  void bedsThatOverlapAreOnePatchOfTheirUnion() {
    Fragmentation pieces =
        new TestSurvey()
            .bed("a", box(0, 0, 60, 10))
            .bed("b", box(50, 0, 100, 10))
            .measure()
            .whole()
            .fragmentation();
    assertThat(pieces.before().patchCount()).isEqualTo(1);
    assertThat(pieces.totalSquareMetres()).isCloseTo(1_000, NEAR);
  }

  /** A gap of 0.04 to 0.06 m along a crooked border, below the tolerance of 0.1 m. */
  @Test
  void slivers() {
    Measurement result =
        new TestSurvey()
            .bed("a", "POLYGON ((0 0, 50 0, 51 30, 49 60, 50 100, 0 100, 0 0))")
            .bed("b", "POLYGON ((50.05 0, 100 0, 100 100, 50.05 100, 49.06 60, 51.04 30, 50.05 0))")
            .scar("s", "LINESTRING (-5 45, 105 45)", 0.4)
            .measure();
    assertThat(result.whole().fragmentation().before().patchCount()).isEqualTo(1);
    assertThat(result.patches()).hasSize(2);
    assertThat(result.gaps()).hasSize(1);
  }

  @Test
  void scarsLongerAndWiderThanTheBed() {
    Measurement result =
        new TestSurvey()
            .bed("small", box(0, 0, 10, 10))
            .bed("other", box(0, 40, 10, 50))
            .scar("wide", "LINESTRING (-1000 5, 1000 5)", 30)
            .scar("long", "LINESTRING (5 -1000, 5 1000)", 0.5)
            .measure();
    assertThat(result.beds().get(0).damage().share()).hasValue(1);
    assertThat(result.beds().get(0).fragmentation().after().patchCount()).isZero();
    assertThat(result.beds().get(1).damage().scarredSquareMetres()).isCloseTo(5, NEAR);
    assertThat(result.scars().get(0).lengthInBedsMetres()).isCloseTo(10, NEAR);
    assertThat(result.scars().get(1).lengthOutsideBedsMetres()).isCloseTo(1_980, NEAR);
  }

  /** 20 by 20 crossing lanes leave 21 × 21 patches; the other scars lie inside them. */
  @Test
  void tenThousandScarsInOneBed() {
    TestSurvey survey = new TestSurvey().bed("b", box(0, 0, 1_000, 1_000));
    for (int i = 0; i < 20; i++) {
      double at = 10 + 50 * i;
      survey.scar("v" + i, "LINESTRING (%s -5, %s 1005)".formatted(at, at), 0.4);
      survey.scar("h" + i, "LINESTRING (-5 %s, 1005 %s)".formatted(at, at), 0.4);
    }
    // The rest lie inside the cells of 50 m, some of them partly outside the bed.
    int inside = 0;
    for (int row = 0; row < 20; row++) {
      for (int column = 0; column < 20; column++) {
        for (int k = 0; k < 26 && inside < 9_960; k++, inside++) {
          double x = 50 * column + 12 + 20 * (k % 2);
          double y = 50 * row + 12 + 3 * Math.floorDiv(k, 2);
          survey.scar("i" + inside, "LINESTRING (%s %s, %s %s)".formatted(x, y, x + 10, y), 0.5);
        }
      }
    }
    assertThat(survey.scars()).hasSize(10_000);
    Measurement result = survey.measure();
    Damage damage = result.whole().damage();
    double lanes = 2 * 20 * 1_000 * 0.4 - 20 * 20 * 0.4 * 0.4;
    double cells = 9_960 * 10 * 0.5;
    double lost = damage.scarredSquareMetres();
    double outside =
        survey.scars().stream()
            .filter(s -> s.id().startsWith("i"))
            .mapToDouble(
                s ->
                    0.5
                        * (10
                            - s.geometry().intersection(wkt(box(0, 0, 1_000, 1_000))).getLength()))
            .sum();
    assertThat(lost).isCloseTo(lanes + cells - outside, within(1e-3));
    assertThat(result.whole().fragmentation().after().patchCount()).isEqualTo(21 * 21);
    assertThat(result.whole().fragmentation().after().patchSquareMetres() + lost)
        .isCloseTo(1_000_000, within(1e-3));
  }

  /** A ragged bed of 200,000 vertices with 2,000 holes, and scars across it. */
  @Test
  void bedOfTwoHundredThousandVerticesWithTwoThousandHoles() {
    Random random = new Random(4);
    Coordinate[] outline = new Coordinate[100_001];
    for (int i = 0; i < 100_000; i++) {
      double angle = 2 * Math.PI * i / 100_000;
      double radius = 2_000 * (0.95 + 0.02 * Math.sin(40 * angle)) + 0.02 * random.nextDouble();
      outline[i] = new Coordinate(radius * Math.cos(angle), radius * Math.sin(angle));
    }
    outline[100_000] = outline[0].copy();
    List<LinearRing> holes = new ArrayList<>();
    for (int i = 0; i < 2_000; i++) {
      double x = 50 * (i % 50) - 1_250;
      double y = 50 * Math.floorDiv(i, 50) - 1_000;
      Coordinate[] hole = new Coordinate[51];
      for (int k = 0; k < 50; k++) {
        double angle = -2 * Math.PI * k / 50;
        double radius = 8 + 4 * random.nextDouble();
        hole[k] = new Coordinate(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
      }
      hole[50] = hole[0].copy();
      holes.add(FACTORY.createLinearRing(hole));
    }
    Geometry bed =
        FACTORY.createPolygon(FACTORY.createLinearRing(outline), holes.toArray(LinearRing[]::new));
    assertThat(bed.getNumPoints()).isGreaterThan(200_000);
    TestSurvey survey = new TestSurvey().bed("b", bed);
    for (int i = 0; i < 40; i++) {
      double angle = Math.PI * i / 40;
      double x = 2_200 * Math.cos(angle);
      double y = 2_200 * Math.sin(angle);
      survey.scar("s" + i, "LINESTRING (%s %s, %s %s)".formatted(x, y, -x + 40 * (i % 7), -y), 0.6);
    }
    survey.area("half", box(-3_000, -3_000, 0, 3_000));
    Measurement result = survey.measure();
    double grass = result.whole().damage().grassSquareMetres();
    assertThat(grass).isCloseTo(bed.getArea(), NEAR);
    assertThat(
            result.whole().fragmentation().after().patchSquareMetres()
                + result.whole().damage().scarredSquareMetres())
        .isCloseTo(grass, within(1e-6 * grass));
    assertThat(result.whole().fragmentation().after().patchCount()).isGreaterThan(80);
    assertThat(
            result.areas().get(0).fragmentation().totalSquareMetres()
                + result.areas().get(1).fragmentation().totalSquareMetres())
        .isCloseTo(grass, within(1e-6 * grass));
  }
}
