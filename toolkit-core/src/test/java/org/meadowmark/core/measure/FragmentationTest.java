package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.meadowmark.core.TestSurvey.box;
import static org.meadowmark.core.TestSurvey.wkt;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.meadowmark.core.TestSurvey;

class FragmentationTest {
  private static final Offset<Double> NEAR = within(1e-6);

  private static Fragmentation whole(TestSurvey survey) {
    return survey.measure().whole().fragmentation();
  }

  private static void assertMesh(
      EffectiveMesh mesh, double size, double division, double splitting) {
    assertThat(mesh.squareMetres().getAsDouble()).isCloseTo(size, NEAR);
    assertThat(mesh.division().getAsDouble()).isCloseTo(division, NEAR);
    assertThat(mesh.splittingIndex().getAsDouble()).isCloseTo(splitting, NEAR);
  }

  /** Patches 50, 30, 20 in a total of 100: m 38, D 0.62, S 2.631579 (Jaeger 2000, by hand). */
  @Test
  void meshOfThreeBeds() {
    Fragmentation pieces =
        whole(
            new TestSurvey()
                .bed("a", box(0, 0, 10, 5))
                .bed("b", box(20, 0, 30, 3))
                .bed("c", box(40, 0, 50, 2)));
    assertThat(pieces.totalSquareMetres()).isCloseTo(100, NEAR);
    assertMesh(pieces.before().mesh(), 38, 0.62, 2.631579);
    assertThat(pieces.after().mesh()).isEqualTo(pieces.before().mesh());
  }

  /** The same patches left of 200 m²: m 19, D 0.905, S 10.526316: pure loss is not invisible. */
  @Test
  void totalIsTheGrassBeforeScarring() {
    TestSurvey survey =
        new TestSurvey()
            .bed("b", box(0, 0, 20, 10))
            .scar("s1", wkt(box(5, -1, 10, 11)), 0, "grounding")
            .scar("s2", wkt(box(13, -1, 18, 11)), 0, "grounding");
    Fragmentation pieces = whole(survey);
    assertThat(pieces.totalSquareMetres()).isCloseTo(200, NEAR);
    assertMesh(pieces.before().mesh(), 200, 0, 1);
    assertMesh(pieces.after().mesh(), 19, 0.905, 10.526316);
    PatchStatistics after = pieces.after();
    assertThat(after.patchCount()).isEqualTo(3);
    assertThat(after.patchSquareMetres()).isCloseTo(100, NEAR);
    assertThat(after.meanSquareMetres().getAsDouble()).isCloseTo(100.0 / 3, NEAR);
    assertThat(after.medianSquareMetres().getAsDouble()).isCloseTo(30, NEAR);
    assertThat(after.largestSquareMetres().getAsDouble()).isCloseTo(50, NEAR);
    assertThat(after.largestShare().getAsDouble()).isCloseTo(0.5, NEAR);
    assertThat(after.patchesPerHectare().getAsDouble()).isCloseTo(150, NEAR);
    assertThat(after.edgeMetres()).isCloseTo(30 + 26 + 24, NEAR);
    assertThat(after.edgeMetresPerHectare().getAsDouble()).isCloseTo(80 / 0.02, NEAR);
    // Bare lanes of 5 m on both sides of the middle patch.
    assertThat(after.nearest().count()).isEqualTo(3);
    assertThat(after.nearest().minimumMetres().getAsDouble()).isCloseTo(5, NEAR);
    assertThat(after.nearest().maximumMetres().getAsDouble()).isCloseTo(5, NEAR);
    assertThat(survey.measure().beds().get(0).fragmentation()).isEqualTo(pieces);
  }

  /** A 100 m square cut by a bare lane x = 40–41: 4,000 and 5,900 m² of 10,000. */
  @Test
  void laneThroughASquare() {
    Fragmentation pieces =
        whole(
            new TestSurvey()
                .bed("b", box(0, 0, 100, 100))
                .scar("lane", "LINESTRING (40.5 -5, 40.5 105)", 1));
    assertMesh(pieces.after().mesh(), 5_081, 0.4919, 1.968117);
    assertThat(pieces.after().edgeMetres()).isCloseTo(280 + 318, NEAR);
  }

  @Test
  void laneThatStopsShortDoesNotDivide() {
    Fragmentation pieces =
        whole(
            new TestSurvey()
                .bed("b", box(0, 0, 100, 100))
                .scar("lane", "LINESTRING (40.5 -5, 40.5 99)", 1));
    assertThat(pieces.after().patchCount()).isEqualTo(1);
    assertThat(pieces.after().mesh().squareMetres().getAsDouble())
        .isCloseTo(9_901.0 * 9_901 / 10_000, NEAR);
  }

  /** Inside (6, 4) of whole patches (10, 4), total 10: 7.6 (Moser and others 2007, by hand). */
  @Test
  void areaBoundaryIsNotFragmentation() {
    Measurement result =
        new TestSurvey()
            .bed("cut", box(0, 0, 10, 1))
            .bed("inside", box(6, 3, 8, 5))
            .area("east", box(4, -10, 50, 50))
            .measure();
    Fragmentation east = result.areas().get(0).fragmentation();
    assertThat(east.totalSquareMetres()).isCloseTo(10, NEAR);
    assertThat(east.before().mesh().boundaryCorrectedSquareMetres().getAsDouble())
        .isCloseTo(7.6, NEAR);
    assertThat(east.before().mesh().squareMetres().getAsDouble()).isCloseTo(5.2, NEAR);
    // The line of cut at x = 4 is no edge of grass: 6 + 6 + 1 of the one, 8 of the other.
    assertThat(east.before().edgeMetres()).isCloseTo(13 + 8, NEAR);

    Fragmentation outside = result.areas().get(1).fragmentation();
    assertThat(outside.totalSquareMetres()).isCloseTo(4, NEAR);
    assertThat(outside.before().mesh().boundaryCorrectedSquareMetres().getAsDouble())
        .isCloseTo(10, NEAR);
    assertThat(outside.before().edgeMetres()).isCloseTo(9, NEAR);
    // The neighbour of the one patch that reaches out lies inside the area.
    assertThat(outside.before().nearest().minimumMetres().getAsDouble()).isCloseTo(2, NEAR);

    Fragmentation all = result.whole().fragmentation();
    assertThat(all.before().mesh().boundaryCorrectedSquareMetres())
        .isEqualTo(all.before().mesh().squareMetres());
  }

  @Test
  void totalsAndEdgesOfAreasAddUp() {
    Measurement result = scaled(1).area("west", box(-50, -50, 55, 150)).measure();
    Fragmentation west = result.areas().get(0).fragmentation();
    Fragmentation outside = result.areas().get(1).fragmentation();
    Fragmentation whole = result.whole().fragmentation();
    assertThat(west.totalSquareMetres() + outside.totalSquareMetres())
        .isCloseTo(whole.totalSquareMetres(), NEAR);
    assertThat(west.before().edgeMetres() + outside.before().edgeMetres())
        .isCloseTo(whole.before().edgeMetres(), NEAR);
    assertThat(west.after().edgeMetres() + outside.after().edgeMetres())
        .isCloseTo(whole.after().edgeMetres(), NEAR);
    assertThat(west.after().patchSquareMetres() + outside.after().patchSquareMetres())
        .isCloseTo(whole.after().patchSquareMetres(), NEAR);
  }

  @Test
  void areaThatOnlyTouchesABedLeavesItWholeOutside() {
    Measurement result =
        new TestSurvey().bed("b", box(0, 0, 10, 10)).area("beside", box(10, -5, 20, 15)).measure();
    assertThat(result.areas().get(0).fragmentation().before().patchCount()).isZero();
    assertThat(result.areas().get(0).fragmentation().before().edgeMetres()).isZero();
    assertThat(result.areas().get(0).fragmentation().before().mesh().division()).isEmpty();
    assertThat(result.areas().get(1).fragmentation().before().edgeMetres()).isCloseTo(40, NEAR);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 5, 17})
  void equalPatches(int n) {
    TestSurvey survey = new TestSurvey();
    for (int i = 0; i < n; i++) {
      survey.bed("b" + i, box(20 * i, 0, 20 * i + 3, 4));
    }
    assertMesh(whole(survey).before().mesh(), 12, 1 - 1.0 / n, n);
  }

  /** A regular n-gon: perimeter 2nr·sin(π/n), area ½nr²·sin(2π/n); a circle in the limit: 1. */
  @Test
  void shapeIndexOfCircleAndOfARing() {
    int n = 400;
    Geometry circle = wkt("POINT (0 0)").buffer(50, n / 4);
    PatchStatistics one = whole(new TestSurvey().bed("c", circle)).before();
    double expected =
        2
            * n
            * Math.sin(Math.PI / n)
            / (2 * Math.sqrt(Math.PI * n / 2 * Math.sin(2 * Math.PI / n)));
    assertThat(one.meanShapeIndex().getAsDouble()).isCloseTo(expected, within(1e-9));
    assertThat(one.meanShapeIndex().getAsDouble()).isCloseTo(1, within(1e-4));

    PatchStatistics ring =
        whole(
                new TestSurvey()
                    .bed("b", box(0, 0, 100, 100))
                    .scar("s", wkt(box(40, 40, 60, 60)), 0, "grounding"))
            .after();
    assertThat(ring.meanShapeIndex().getAsDouble())
        .isCloseTo(480 / (2 * Math.sqrt(Math.PI * 9_600)), NEAR);
  }

  @Test
  void shapeIndexIsGivenPlainAndWeightedByArea() {
    PatchStatistics two =
        whole(
                new TestSurvey()
                    .bed("square", box(0, 0, 50, 50))
                    .bed("long", box(100, 0, 200, 25))
                    .bed("tiny", box(300, 0, 304, 1)))
            .before();
    double tiny = 10 / (2 * Math.sqrt(Math.PI * 4));
    assertThat(two.meanShapeIndex().getAsDouble())
        .isCloseTo((1.128379 + 1.410474 + tiny) / 3, NEAR);
    assertThat(two.areaWeightedShapeIndex().getAsDouble())
        .isCloseTo((2_500 * 1.128379 + 2_500 * 1.410474 + 4 * tiny) / 5_004, NEAR);
  }

  @Test
  void singlePatchHasNoNeighbour() {
    LengthDistribution nearest =
        whole(new TestSurvey().bed("b", box(0, 0, 10, 10))).before().nearest();
    assertThat(nearest).isEqualTo(LengthDistribution.NONE);
    assertThat(nearest.minimumMetres()).isEmpty();
  }

  /** Distances 1, 1, 4, 9 m by hand: median 2.5, 90th percentile 4 + 0.7·5 (type 7). */
  @Test
  void nearestDistancesBeforeAndAfter() {
    TestSurvey survey =
        new TestSurvey()
            .bed("a", box(0, 0, 10, 10))
            .bed("b", box(11, 0, 20, 10))
            .bed("c", box(24, 0, 30, 10))
            .bed("d", box(39, 0, 60, 10));
    LengthDistribution before = whole(survey).before().nearest();
    assertThat(before.minimumMetres().getAsDouble()).isCloseTo(1, NEAR);
    assertThat(before.medianMetres().getAsDouble()).isCloseTo(2.5, NEAR);
    assertThat(before.ninetiethPercentileMetres().getAsDouble()).isCloseTo(7.5, NEAR);
    assertThat(before.maximumMetres().getAsDouble()).isCloseTo(9, NEAR);
    LengthDistribution after =
        whole(survey.scar("s", "LINESTRING (50 -1, 50 11)", 0.5)).after().nearest();
    assertThat(after.count()).isEqualTo(5);
    assertThat(after.minimumMetres().getAsDouble()).isCloseTo(0.5, NEAR);
    assertThat(after.maximumMetres().getAsDouble()).isCloseTo(4, NEAR);
  }

  /** Two scars at a small angle: from 0.4 m where they lie on each other to 2.4 m at the end. */
  @Test
  void widthAlongAGapHasAMinimumAndAMean() {
    Measurement result =
        new TestSurvey()
            .bed("b", box(0, 0, 100, 100))
            .scar("basin", wkt("POLYGON ((-5 40, 105 40, 105 40.2, -5 44.6, -5 40))"), 0, "hull")
            .scar("line", "LINESTRING (-5 40.1, 105 40.1)", 0.2)
            .measure();
    Gap along =
        result.gaps().stream().filter(g -> g.scarId().equals("line")).findFirst().orElseThrow();
    assertThat(along.minimumWidthMetres()).isBetween(0.4, 0.45);
    assertThat(along.meanWidthMetres().getAsDouble())
        .isGreaterThan(along.minimumWidthMetres())
        .isLessThan(4.4);
    Gap across =
        result.gaps().stream().filter(g -> g.scarId().equals("basin")).findFirst().orElseThrow();
    assertThat(across.meanWidthMetres()).isEmpty();
    assertThat(across.minimumWidthMetres()).isCloseTo(0.4, within(0.01));
  }

  @Test
  void scarAloneHasItsWidthAsMinimumAndMean() {
    Gap gap =
        new TestSurvey()
            .bed("b", box(0, 0, 100, 100))
            .scar("s", "LINESTRING (-5 40, 105 47)", 0.35)
            .measure()
            .gaps()
            .get(0);
    assertThat(gap.minimumWidthMetres()).isCloseTo(0.35, NEAR);
    assertThat(gap.meanWidthMetres().getAsDouble()).isCloseTo(0.35, NEAR);
  }

  /** Limits of the test's parameters: 0.1, 0.4, 1 and 5 m; 0.4 belongs to the class above it. */
  @Test
  void gapsAreCountedInClasses() {
    Measurement result =
        new TestSurvey()
            .bed("b", box(0, 0, 100, 100))
            .scar("s1", "LINESTRING (-5 20, 105 20)", 0.4)
            .scar("s2", "LINESTRING (-5 40, 105 40)", 0.3)
            .scar("s3", "LINESTRING (-5 60, 105 60)", 6)
            .scar("s4", "LINESTRING (-5 80, 105 80)", 0.99)
            .measure();
    List<GapBin> bins = result.whole().fragmentation().gapBins();
    assertThat(bins).extracting(GapBin::fromMetres).containsExactly(0.0, 0.1, 0.4, 1.0, 5.0);
    assertThat(bins).extracting(GapBin::count).containsExactly(0, 1, 2, 0, 1);
    assertThat(bins.get(4).toMetres()).isEmpty();
    assertThat(result.beds().get(0).fragmentation().gapBins()).isEqualTo(bins);
  }

  @Test
  void bedScarredAwayWhollyIsDividedWholly() {
    Fragmentation pieces =
        whole(
            new TestSurvey()
                .bed("b", box(0, 0, 10, 10))
                .scar("s", wkt(box(-1, -1, 11, 11)), 0, "grounding"));
    assertThat(pieces.after().patchCount()).isZero();
    assertThat(pieces.after().mesh().division()).hasValue(1);
    assertThat(pieces.after().mesh().squareMetres()).hasValue(0);
    assertThat(pieces.after().mesh().splittingIndex()).isEmpty();
    assertThat(pieces.after().meanSquareMetres()).isEmpty();
    assertThat(pieces.after().meanShapeIndex()).isEmpty();
    assertThat(pieces.after().patchesPerHectare()).hasValue(0);
  }

  /** Twice the map: areas × 4, lengths × 2, densities accordingly, pure numbers unchanged. */
  @Test
  void figuresFollowTheScaleOfTheMap() {
    Fragmentation one = whole(scaled(1));
    Fragmentation two = whole(scaled(2));
    for (boolean scarred : new boolean[] {false, true}) {
      PatchStatistics a = scarred ? one.after() : one.before();
      PatchStatistics b = scarred ? two.after() : two.before();
      assertRatio(b.mesh().squareMetres(), a.mesh().squareMetres(), 4);
      assertRatio(b.mesh().division(), a.mesh().division(), 1);
      assertRatio(b.mesh().splittingIndex(), a.mesh().splittingIndex(), 1);
      assertRatio(b.edgeMetresPerHectare(), a.edgeMetresPerHectare(), 0.5);
      assertRatio(b.patchesPerHectare(), a.patchesPerHectare(), 0.25);
      assertRatio(b.meanShapeIndex(), a.meanShapeIndex(), 1);
      assertRatio(b.areaWeightedShapeIndex(), a.areaWeightedShapeIndex(), 1);
      assertRatio(b.medianSquareMetres(), a.medianSquareMetres(), 4);
      assertRatio(b.nearest().medianMetres(), a.nearest().medianMetres(), 2);
    }
    assertRatio(two.gaps().medianMetres(), one.gaps().medianMetres(), 2);
    assertThat(two.after().patchCount()).isEqualTo(one.after().patchCount()).isGreaterThan(3);
  }

  private static void assertRatio(OptionalDouble actual, OptionalDouble base, double factor) {
    double expected = base.getAsDouble() * factor;
    assertThat(actual.getAsDouble()).isCloseTo(expected, within(1e-6 * Math.abs(expected)));
  }

  @Test
  void figuresDoNotDependOnLabelsPositionOrTheSplitIntoTouchingBeds() {
    List<Double> expected = numbers(whole(scaled(1)));
    assertThat(expected).hasSizeGreaterThan(60);

    TestSurvey relabelled = scaled(1);
    relabelled.beds().clear();
    relabelled.bed("z", box(0, 0, 100, 100)).bed("a", TILTED);
    assertClose(numbers(whole(relabelled)), expected);

    AffineTransformation turn =
        AffineTransformation.rotationInstance(1.1).translate(432_100.25, 3_055_000.5);
    assertClose(numbers(whole(scaled(1).map(turn::transform))), expected);

    TestSurvey split = scaled(1);
    split.beds().clear();
    split
        .bed("b1", "POLYGON ((0 0, 100 0, 100 30, 37.3 61, 0 43.21, 0 0))")
        .bed("b2", "POLYGON ((100 30, 100 100, 0 100, 0 43.21, 37.3 61, 100 30))")
        .bed("b3", TILTED);
    assertClose(numbers(whole(split)), expected);
  }

  private static final String TILTED = "POLYGON ((120 0, 180 10, 170 90, 125 80, 120 0))";

  /** A survey of two beds and four scars, everything times a factor. */
  private static TestSurvey scaled(double factor) {
    AffineTransformation grow = AffineTransformation.scaleInstance(factor, factor);
    TestSurvey survey = new TestSurvey();
    survey.bed("b1", grow.transform(wkt(box(0, 0, 100, 100))));
    survey.bed("b2", grow.transform(wkt(TILTED)));
    String[] lines = {
      "LINESTRING (-5 40, 50 44, 105 40)",
      "LINESTRING (20 -5, 30 105)",
      "LINESTRING (60 60, 80 85)",
      "LINESTRING (110 30, 190 40)"
    };
    for (int i = 0; i < lines.length; i++) {
      survey.scar(
          String.format(Locale.ROOT, "s%d", i),
          grow.transform(wkt(lines[i])),
          factor * (0.4 + 0.1 * i),
          "propeller");
    }
    return survey;
  }

  /** Every number of a result, whatever is added to it later. */
  private static List<Double> numbers(Record result) {
    List<Double> numbers = new ArrayList<>();
    for (RecordComponent component : result.getClass().getRecordComponents()) {
      Object value;
      try {
        value = component.getAccessor().invoke(result);
      } catch (ReflectiveOperationException e) {
        throw new IllegalStateException(e);
      }
      if (value instanceof Record inner) {
        numbers.addAll(numbers(inner));
      } else if (value instanceof OptionalDouble optional) {
        numbers.add(optional.orElse(Double.NaN));
      } else if (value instanceof Optional<?> optional) {
        optional.ifPresent(inner -> numbers.addAll(numbers((Record) inner)));
      } else if (value instanceof Number number) {
        numbers.add(number.doubleValue());
      } else if (value instanceof List<?> list) {
        list.forEach(item -> numbers.addAll(numbers((Record) item)));
      } else {
        throw new IllegalStateException("a new kind of value: " + component);
      }
    }
    return numbers;
  }

  private static void assertClose(List<Double> actual, List<Double> expected) {
    assertThat(actual).hasSameSizeAs(expected);
    for (int i = 0; i < expected.size(); i++) {
      double wanted = expected.get(i);
      if (Double.isNaN(wanted)) {
        assertThat(actual.get(i)).isNaN();
      } else {
        assertThat(actual.get(i))
            .as("number " + i)
            .isCloseTo(wanted, within(1e-6 + 1e-6 * Math.abs(wanted)));
      }
    }
  }
}
