package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.meadowmark.core.TestSurvey.box;
import static org.meadowmark.core.TestSurvey.wkt;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.survey.Parameters.SeverityDenominator;

class SurveyMeasurerTest {
  private static final Offset<Double> EXACT = within(1e-9);
  private static final Offset<Double> NEAR = within(1e-6);
  private static final String HECTARE = box(0, 0, 100, 100);

  private static Damage damageOf(TestSurvey survey) {
    return survey.measure().whole().damage();
  }

  /** Analytic: a straight line of length L and width w covers exactly L·w. */
  @Test
  void straightScarCoversLengthTimesWidth() {
    Measurement result =
        new TestSurvey().bed("b", HECTARE).scar("s", "LINESTRING (10 20, 70 100.0)", 0.4).measure();
    assertThat(result.scars().get(0).lengthMetres()).isCloseTo(100, EXACT);

    Damage damage =
        damageOf(new TestSurvey().bed("b", HECTARE).scar("s", "LINESTRING (10 10, 70 90)", 0.4));
    assertThat(damage.scarredSquareMetres()).isCloseTo(100 * 0.4, NEAR);
    assertThat(damage.scarLengthMetres()).isCloseTo(100, EXACT);
    assertThat(damage.share().getAsDouble()).isCloseTo(0.004, NEAR);
    assertThat(damage.severityKey()).isEqualTo("light");
    assertThat(damage.severityDenominator()).isEqualTo("bed");
  }

  /**
   * Analytic: a strip of length L and width w = 2r that bends by θ covers L·w − r²·(tan(θ/2) − θ/2)
   * at each bend, since the inner edges overlap and the outer corner is an arc. An arc of chords is
   * at most 0.7 % smaller than its sector, r²·θ/2.
   */
  @Test
  void bentScarLosesTheOverlapAtItsBends() {
    double r = 0.2;
    double theta = 0.03;
    int bends = 60;
    double x = 20;
    double y = 20;
    double angle = 0;
    StringBuilder line = new StringBuilder("LINESTRING (20 20");
    for (int i = 0; i <= bends; i++) {
      x += 0.1 * Math.cos(angle);
      y += 0.1 * Math.sin(angle);
      angle += theta;
      line.append(", ").append(x).append(' ').append(y);
    }
    double length = 0.1 * (bends + 1);
    double expected = length * 2 * r - bends * r * r * (Math.tan(theta / 2) - theta / 2);
    double scarred =
        damageOf(new TestSurvey().bed("b", HECTARE).scar("s", line.append(')').toString(), 2 * r))
            .scarredSquareMetres();
    assertThat(scarred).isCloseTo(expected, within(2e-4 * expected));
  }

  /** Check value: two 100 m × 0.30 m scars that cross at right angles cover 2Lw − w² = 59.91 m². */
  @Test
  void crossingScarsCountTheirOverlapOnce() {
    Measurement result =
        new TestSurvey()
            .bed("b", box(-20, -20, 120, 120))
            .scar("s1", "LINESTRING (0 50, 100 50)", 0.30)
            .scar("s2", "LINESTRING (50 0, 50 100)", 0.30)
            .measure();
    Damage damage = result.whole().damage();
    assertThat(damage.scarredSquareMetres()).isCloseTo(59.91, NEAR);
    assertThat(damage.scarLengthMetres()).isCloseTo(200, EXACT);
    assertThat(result.scars())
        .allSatisfy(s -> assertThat(s.footprintInBedsSquareMetres()).isCloseTo(30, NEAR));
  }

  /** Analytic: parallel scars closer than their width cover the outline of the band. */
  @ParameterizedTest
  @ValueSource(ints = {2, 3, 7})
  void closeParallelScarsCoverABand(int count) {
    TestSurvey survey = new TestSurvey().bed("b", HECTARE);
    for (int i = 0; i < count; i++) {
      double y = 50 + 0.25 * i;
      survey.scar("s" + i, "LINESTRING (20 %s, 80 %s)".formatted(y, y), 0.4);
    }
    assertThat(damageOf(survey).scarredSquareMetres())
        .isCloseTo(60 * (0.4 + 0.25 * (count - 1)), NEAR);
  }

  /**
   * Check values for a bed of 10,000 m²: 499.99 m² scarred is light, 500 and 2,000 moderate,
   * 2,000.01 severe; limits from Sargent and others (1995).
   */
  @ParameterizedTest
  @CsvSource({
    "499.99, light",
    "500, moderate",
    "2000, moderate",
    "2000.01, severe",
    "10000, severe"
  })
  void severityLimits(double scarred, String expected) {
    double height = scarred / 100;
    Damage damage =
        damageOf(
            new TestSurvey()
                .bed("b", HECTARE)
                .scar("s", wkt(box(0, 0, 100, height)), 0, "grounding"));
    assertThat(damage.scarredSquareMetres()).isCloseTo(scarred, NEAR);
    assertThat(damage.severityKey()).isEqualTo(expected);
  }

  @Test
  void bedWithoutScarIsItsOwnClass() {
    Damage damage = damageOf(new TestSurvey().bed("b", HECTARE));
    assertThat(damage.severityKey()).isEqualTo("none");
    assertThat(damage.share()).hasValue(0);
  }

  /** The outline of one straight scar is the scar itself: share 1, severe. */
  @Test
  void severityByScarGroupUsesTheOutlineAroundTheGroup() {
    Damage one =
        damageOf(
            new TestSurvey()
                .denominator(SeverityDenominator.SCAR_GROUP)
                .bed("b", HECTARE)
                .scar("s", "LINESTRING (10 50, 60 50)", 0.4));
    assertThat(one.severityShare().getAsDouble()).isCloseTo(1, NEAR);
    assertThat(one.severityKey()).isEqualTo("severe");
    assertThat(one.share().getAsDouble()).isCloseTo(0.002, NEAR);
    assertThat(one.severityDenominator()).isEqualTo("scar-group");

    Damage two =
        damageOf(
            new TestSurvey()
                .denominator(SeverityDenominator.SCAR_GROUP)
                .bed("b", HECTARE)
                .scar("s1", "LINESTRING (10 50, 60 50)", 0.4)
                .scar("s2", "LINESTRING (10 60, 60 60)", 0.4));
    assertThat(two.severityShare().getAsDouble()).isCloseTo(40 / (50 * 10.4), NEAR);
  }

  @Test
  void scarAcrossTheBedMakesTwoPatchesAndAGapOfItsWidth() {
    Measurement result =
        new TestSurvey().bed("b", HECTARE).scar("s", "LINESTRING (-5 40, 105 40)", 0.4).measure();
    Fragmentation bed = result.beds().get(0).fragmentation();
    assertThat(bed.before().patchCount()).isEqualTo(1);
    assertThat(bed.after().patchCount()).isEqualTo(2);
    assertThat(bed.gaps().count()).isEqualTo(1);
    assertThat(bed.gaps().medianMetres().getAsDouble()).isCloseTo(0.4, NEAR);
    assertThat(bed.after().largestShare().getAsDouble()).isCloseTo(59.8 / 99.6, NEAR);

    Gap gap = result.gaps().get(0);
    assertThat(gap.scarId()).isEqualTo("s");
    assertThat(gap.firstPatchId()).isEqualTo("P1");
    assertThat(gap.secondPatchId()).isEqualTo("P2");
    assertThat(gap.lengthMetres()).isBetween(99.0, 101.0);
    assertThat(result.scars().get(0).gapCount()).isEqualTo(1);
    assertThat(result.scars().get(0).lengthInBedsMetres()).isCloseTo(100, EXACT);
    assertThat(result.scars().get(0).lengthOutsideBedsMetres()).isCloseTo(10, EXACT);

    Patch patch = result.patches().get(0);
    assertThat(patch.nearestPatchId()).contains("P2");
    assertThat(patch.nearestDistanceMetres().getAsDouble()).isCloseTo(0.4, NEAR);
    assertThat(patch.groupId()).isEqualTo(result.patches().get(1).groupId());
  }

  /** A scar that stops short of the far edge does not split the bed. */
  @Test
  void scarThatStopsShortDoesNotSplit() {
    Measurement result =
        new TestSurvey().bed("b", HECTARE).scar("s", "LINESTRING (-5 40, 99 40)", 0.4).measure();
    assertThat(result.whole().fragmentation().after().patchCount()).isEqualTo(1);
    assertThat(result.gaps()).isEmpty();
    assertThat(result.patches().get(0).nearestPatchId()).isEmpty();
    assertThat(result.patches().get(0).nearestDistanceMetres()).isEmpty();
  }

  @Test
  void loopingScarEnclosesAPatch() {
    Measurement result =
        new TestSurvey()
            .bed("b", HECTARE)
            .scar("s", "LINESTRING (30 30, 60 30, 60 60, 30 60, 30 30)", 1)
            .scar("inside", "LINESTRING (40 40, 50 40)", 1)
            .measure();
    Fragmentation whole = result.whole().fragmentation();
    assertThat(whole.after().patchCount()).isEqualTo(2);
    assertThat(whole.gaps().count()).isEqualTo(1);
    assertThat(result.gaps().get(0).scarId()).isEqualTo("s");
    assertThat(whole.gaps().minimumMetres().getAsDouble()).isCloseTo(1, NEAR);
    assertThat(
            result.patches().stream().mapToDouble(Patch::areaSquareMetres).sum()
                + result.whole().damage().scarredSquareMetres())
        .isCloseTo(10_000, NEAR);
    assertThat(result.patches().stream().mapToDouble(Patch::areaSquareMetres).min().getAsDouble())
        .isCloseTo(29 * 29 - 10, NEAR);
  }

  @Test
  void scarsSideBySideMakeOneWiderGap() {
    Measurement result =
        new TestSurvey()
            .bed("b", HECTARE)
            .scar("s1", "LINESTRING (-5 40, 105 40)", 0.4)
            .scar("s2", "LINESTRING (-5 40.3, 105 40.3)", 0.4)
            .measure();
    assertThat(result.whole().fragmentation().after().patchCount()).isEqualTo(2);
    assertThat(result.gaps()).extracting(Gap::scarId).containsExactly("s1", "s2");
    assertThat(result.gaps())
        .allSatisfy(gap -> assertThat(gap.minimumWidthMetres()).isCloseTo(0.7, within(1e-3)));
  }

  @Test
  void polygonScarThatCutsABedMakesAGap() {
    Measurement result =
        new TestSurvey()
            .bed("b", box(0, 0, 100, 20))
            .scar("basin", wkt(box(40, -5, 46, 25)), 0, "grounding")
            .measure();
    assertThat(result.whole().fragmentation().after().patchCount()).isEqualTo(2);
    assertThat(result.gaps()).hasSize(1);
    assertThat(result.gaps().get(0).minimumWidthMetres()).isCloseTo(6, NEAR);
  }

  /** Type 7 of Hyndman and Fan (1996): position (n − 1)·p between order statistics, by hand. */
  @Test
  void gapWidthQuantilesInterpolateBetweenOrderStatistics() {
    double[] widths = new Random(5).doubles(2_000, 0.2, 3).toArray();
    widths[1_234] = 47;
    double[] sorted = widths.clone();
    Arrays.sort(sorted);
    LengthDistribution summary = LengthDistribution.of(widths);
    assertThat(summary.minimumMetres()).hasValue(sorted[0]);
    assertThat(summary.maximumMetres()).hasValue(47);
    assertThat(summary.medianMetres().getAsDouble())
        .isCloseTo((sorted[999] + sorted[1_000]) / 2, EXACT);
    assertThat(summary.ninetiethPercentileMetres().getAsDouble())
        .isCloseTo(sorted[1_799] + 0.1 * (sorted[1_800] - sorted[1_799]), EXACT);
  }

  @Test
  void thinScarInsideAWideOneDoesNotMakeItsGap() {
    Measurement result =
        new TestSurvey()
            .bed("b", HECTARE)
            .scar("thin", "LINESTRING (-5 40, 105 40)", 0.3)
            .scar("wide", "LINESTRING (-5 40, 105 40)", 8)
            .measure();
    assertThat(result.gaps()).extracting(Gap::scarId).containsExactly("wide");
  }

  /** Shape index = perimeter / (2·√(π·area)): a square has 1.128379, 100 × 25 has 1.410474. */
  @Test
  void shapeIndexOfSquareAndRectangle() {
    assertThat(new TestSurvey().bed("b", HECTARE).measure().patches().get(0).shapeIndex())
        .isCloseTo(1.128379, within(5e-7));
    assertThat(
            new TestSurvey().bed("b", box(0, 0, 100, 25)).measure().patches().get(0).shapeIndex())
        .isCloseTo(1.410474, within(5e-7));
  }

  @Test
  void touchingBedsAreOnePatchAndSliversAreClosed() {
    Measurement touching =
        new TestSurvey()
            .bed("b1", box(0, 0, 50, 100))
            .bed("b2", box(50, 0, 100, 100))
            .scar("s", "LINESTRING (-5 40, 105 40)", 0.4)
            .measure();
    assertThat(touching.whole().fragmentation().before().patchCount()).isEqualTo(1);
    assertThat(touching.patches()).hasSize(2);
    assertThat(touching.patches().get(0).bedIds()).containsExactly("b1", "b2");

    Fragmentation sliver =
        new TestSurvey()
            .bed("b1", box(0, 0, 50, 100))
            .bed("b2", box(50.05, 0, 100, 100))
            .measure()
            .whole()
            .fragmentation();
    assertThat(sliver.before().patchCount()).isEqualTo(1);

    Fragmentation apart =
        new TestSurvey()
            .bed("b1", box(0, 0, 50, 100))
            .bed("b2", box(50.5, 0, 100, 100))
            .measure()
            .whole()
            .fragmentation();
    assertThat(apart.before().patchCount()).isEqualTo(2);
  }

  @Test
  void bedsThatMeetInAPointAreSeparatePatches() {
    assertThat(
            new TestSurvey()
                .bed("b1", box(0, 0, 50, 50))
                .bed("b2", box(50, 50, 100, 100))
                .measure()
                .whole()
                .fragmentation()
                .before()
                .patchCount())
        .isEqualTo(2);
  }

  @Test
  void groupsGrowWithTheCrossingDistance() {
    Fragmentation whole =
        new TestSurvey()
            .bed("b1", box(0, 0, 10, 10))
            .bed("b2", box(13, 0, 23, 10))
            .bed("b3", box(31, 0, 51, 10))
            .measure()
            .whole()
            .fragmentation();
    assertThat(whole.crossings())
        .extracting(Fragmentation.Crossing::groupsAfter)
        .containsExactly(3, 3, 2, 1, 1, 1);
    assertThat(whole.crossings().get(2).largestGroupShareAfter().getAsDouble())
        .isCloseTo(0.5, NEAR);
    assertThat(whole.crossings().get(0).largestGroupShareAfter().getAsDouble())
        .isCloseTo(0.5, NEAR);
  }

  @Test
  void unsurveyedGrassIsUnknownNotZero() {
    Measurement result =
        new TestSurvey()
            .bed("half", HECTARE)
            .bed("out", box(300, 0, 400, 100))
            .surveyed(box(-10, -10, 50, 110))
            .scar("s", "LINESTRING (10 50, 90 50)", 0.5)
            .measure();
    Damage half = result.beds().get(0).damage();
    assertThat(half.surveyedSquareMetres()).isCloseTo(5_000, NEAR);
    assertThat(half.scarredSquareMetres()).isCloseTo(40 * 0.5, NEAR);
    assertThat(half.share().getAsDouble()).isCloseTo(20.0 / 5_000, NEAR);
    Damage out = result.beds().get(1).damage();
    assertThat(out.share()).isEmpty();
    assertThat(out.severityKey()).isEqualTo("unknown");
    ScarMeasure scar = result.scars().get(0);
    assertThat(scar.lengthOutsideSurveyMetres()).isCloseTo(40, NEAR);
    assertThat(scar.lengthInBedsMetres()).isCloseTo(40, NEAR);
  }

  @Test
  void areasAndTheRestAddUpToTheWhole() {
    Measurement result = sample().area("west", box(-50, -50, 55, 150)).measure();
    assertThat(result.areas()).hasSize(3);
    AreaMeasure west = result.areas().get(0);
    AreaMeasure rest = result.areas().get(1);
    AreaMeasure whole = result.areas().get(2);
    assertThat(rest.kind()).isEqualTo(AreaMeasure.Kind.OUTSIDE_MANAGEMENT_AREAS);
    assertThat(west.damage().grassSquareMetres() + rest.damage().grassSquareMetres())
        .isCloseTo(whole.damage().grassSquareMetres(), NEAR);
    assertThat(west.damage().scarredSquareMetres() + rest.damage().scarredSquareMetres())
        .isCloseTo(whole.damage().scarredSquareMetres(), NEAR);
    assertThat(west.damage().scarLengthMetres() + rest.damage().scarLengthMetres())
        .isCloseTo(whole.damage().scarLengthMetres(), NEAR);
    assertThat(whole.byClass().get(0).grassSquareMetres())
        .isCloseTo(whole.damage().grassSquareMetres(), NEAR);
  }

  @Test
  void grassOfAnAreaIsSplitByTheClassOfItsBedAndUnsurveyedGrassIsUnknown() {
    Measurement result =
        new TestSurvey()
            .bed("half", HECTARE)
            .bed("clean", box(200, 0, 300, 100))
            .surveyed(box(-10, -10, 50, 110))
            .surveyed(box(190, -10, 310, 110))
            .scar("s", "LINESTRING (10 50, 40 50)", 0.5)
            .area("all", box(-50, -50, 350, 150))
            .measure();
    assertThat(result.areas().get(0).bySeverity())
        .extracting(AreaMeasure.SeverityGrass::severityKey)
        .containsExactly("none", "light", "unknown");
    assertThat(result.areas().get(0).bySeverity())
        .extracting(g -> (double) Math.round(g.grassSquareMetres()))
        .containsExactly(10_000.0, 5_000.0, 5_000.0);
  }

  /** Grid areas shrink by the square of the scale factor; the ground has to come out the same. */
  @Test
  void groundScaleIsTakenOffLengthsAreasAndWidths() {
    double factor = 0.9996;
    GroundScale scale =
        new GroundScale() {
          @Override
          public double lengthFactor(double x, double y) {
            return factor;
          }

          @Override
          public double areaFactor(double x, double y) {
            return factor * factor;
          }
        };
    AffineTransformation shrink = AffineTransformation.scaleInstance(factor, factor);
    Measurement ground = sample().measure();
    Measurement grid = sample().map(shrink::transform).scale(scale).measure();
    assertSame(grid, ground);
  }

  @Test
  void resultsDoNotDependOnPositionRotationOrderOrDirection() {
    Measurement expected = sample().measure();
    AffineTransformation turn = AffineTransformation.rotationInstance(Math.toRadians(37), 40, 70);
    assertSame(sample().map(turn::transform).measure(), expected);
    AffineTransformation move = AffineTransformation.translationInstance(432_100.25, 3_055_000.5);
    assertSame(sample().map(move::transform).measure(), expected);
    assertSame(sample().map(Geometry::reverse).measure(), expected);
    for (long seed = 0; seed < 3; seed++) {
      TestSurvey shuffled = sample();
      Collections.shuffle(shuffled.scars(), new Random(seed));
      Collections.shuffle(shuffled.beds(), new Random(seed));
      assertSame(shuffled.measure(), expected);
    }
  }

  @Test
  void splittingABedChangesNoTotal() {
    Measurement whole =
        new TestSurvey()
            .bed("b", HECTARE)
            .scar("s1", "LINESTRING (-5 40, 105 47)", 0.4)
            .scar("s2", "LINESTRING (20 -5, 30 105)", 0.3)
            .measure();
    Measurement split =
        new TestSurvey()
            .bed("b1", box(0, 0, 100, 43.21))
            .bed("b2", box(0, 43.21, 100, 100))
            .scar("s1", "LINESTRING (-5 40, 105 47)", 0.4)
            .scar("s2", "LINESTRING (20 -5, 30 105)", 0.3)
            .measure();
    assertSame(split, whole);
    assertThat(split.beds()).hasSize(2);
  }

  /** Against plain overlays of everything at once: JTS union, intersection and difference. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void randomScarsAgreeWithOneOverlayOfEverything(long seed) {
    Random random = new Random(seed);
    TestSurvey survey = new TestSurvey();
    Geometry bed =
        wkt("POINT (60 60)")
            .buffer(55)
            .difference(wkt(box(50, 50, 62, 75)))
            .difference(wkt(box(80, 20, 90, 40)));
    survey.bed("b", bed);
    for (int i = 0; i < 60; i++) {
      double x = random.nextDouble() * 120;
      double y = random.nextDouble() * 120;
      double angle = random.nextDouble() * Math.PI * 2;
      double length = 5 + random.nextDouble() * 60;
      survey.scar(
          "s" + i,
          String.format(
              Locale.ROOT,
              "LINESTRING (%f %f, %f %f, %f %f)",
              x,
              y,
              x + length * Math.cos(angle),
              y + length * Math.sin(angle),
              x + length * Math.cos(angle + 0.3) * 1.5,
              y + length * Math.sin(angle + 0.3) * 1.5),
          0.3 + random.nextDouble());
    }
    MetricSurvey built = survey.build();
    Geometry footprints =
        UnaryUnionOp.union(
            new FootprintBuilder(built.scale(), new SurveyedArea(built.surveyedArea()))
                .buildAll(built.scars()).stream().map(Footprint::area).toList());
    Geometry scarred = OverlayNGRobust.overlay(bed, footprints, OverlayNG.INTERSECTION);
    Geometry left = OverlayNGRobust.overlay(bed, footprints, OverlayNG.DIFFERENCE);

    Measurement result = survey.measure();
    assertThat(result.whole().damage().scarredSquareMetres()).isCloseTo(scarred.getArea(), NEAR);
    assertThat(result.patches().size() + result.whole().fragmentation().crumbsAfter())
        .isEqualTo(left.getNumGeometries());
    assertThat(result.patches()).allSatisfy(p -> assertThat(p.geometry().isValid()).isTrue());
    double lengthInBed =
        built.scars().stream()
            .map(Scar::geometry)
            .mapToDouble(
                line -> OverlayNGRobust.overlay(line, bed, OverlayNG.INTERSECTION).getLength())
            .sum();
    assertThat(result.whole().damage().scarLengthMetres()).isCloseTo(lengthInBed, NEAR);
  }

  @Test
  void bedScarredAwayWhollyHasNoPatchLeft() {
    Measurement result =
        new TestSurvey()
            .bed("b", box(0, 0, 10, 10))
            .scar("s", wkt(box(-1, -1, 11, 11)), 0, "grounding")
            .measure();
    assertThat(result.beds().get(0).damage().share()).hasValue(1);
    assertThat(result.whole().fragmentation().after().patchCount()).isZero();
    assertThat(result.whole().fragmentation().after().largestShare()).isEmpty();
    assertThat(result.patches()).isEmpty();
  }

  @Test
  void noBedsAndNoScarsGiveEmptyResults() {
    Measurement nothing = new TestSurvey().measure();
    assertThat(nothing.beds()).isEmpty();
    assertThat(nothing.whole().damage().share()).isEmpty();
    assertThat(nothing.whole().damage().severityKey()).isEqualTo("unknown");
    Measurement scarsOnly = new TestSurvey().scar("s", "LINESTRING (0 0, 10 0)", 0.4).measure();
    assertThat(scarsOnly.scars().get(0).lengthOutsideBedsMetres()).isCloseTo(10, EXACT);
  }

  private static TestSurvey sample() {
    return new TestSurvey()
        .bed("b1", HECTARE)
        .bed("b2", "POLYGON ((120 0, 180 10, 170 90, 125 80, 120 0))")
        .scar("s1", "LINESTRING (-5 40, 50 44, 105 40)", 0.4)
        .scar("s2", "LINESTRING (20 -5, 30 105)", 0.3)
        .scar("s3", "LINESTRING (60 60, 80 85)", 0.5)
        .scar("s4", "LINESTRING (110 30, 190 40)", 0.6)
        .scar("s5", wkt(box(140, 50, 150, 58)), 0, "grounding");
  }

  private static void assertSame(Measurement actual, Measurement expected) {
    Damage a = actual.whole().damage();
    Damage b = expected.whole().damage();
    assertThat(a.grassSquareMetres()).isCloseTo(b.grassSquareMetres(), within(1e-4));
    assertThat(a.scarredSquareMetres()).isCloseTo(b.scarredSquareMetres(), within(1e-4));
    assertThat(a.scarLengthMetres()).isCloseTo(b.scarLengthMetres(), within(1e-4));
    assertThat(a.scarCount()).isEqualTo(b.scarCount());
    assertThat(a.severityKey()).isEqualTo(b.severityKey());
    Fragmentation f = actual.whole().fragmentation();
    Fragmentation g = expected.whole().fragmentation();
    assertThat(f.before().patchCount()).isEqualTo(g.before().patchCount());
    assertThat(f.after().patchCount()).isEqualTo(g.after().patchCount());
    assertThat(f.gaps().count()).isEqualTo(g.gaps().count());
    assertThat(f.gaps().medianMetres().getAsDouble())
        .isCloseTo(g.gaps().medianMetres().getAsDouble(), within(1e-3));
    assertThat(f.crossings())
        .extracting(Fragmentation.Crossing::groupsAfter)
        .isEqualTo(
            List.copyOf(g.crossings().stream().map(Fragmentation.Crossing::groupsAfter).toList()));
  }
}
