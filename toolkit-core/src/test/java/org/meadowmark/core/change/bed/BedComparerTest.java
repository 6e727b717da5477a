package org.meadowmark.core.change.bed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.change.SeasonSurvey;
import org.meadowmark.core.change.Seasons;
import org.meadowmark.core.model.Progress;

/** Rectangles whose areas are plain. The tolerance is 1 m. */
class BedComparerTest {
  private static final double ROUNDING = 1e-6;

  private final Seasons seasons = new Seasons();

  private SeasonBedChange compare() {
    return BedComparer.compare(seasons.earlierSurvey(), seasons.laterSurvey(), 0.05, Progress.NONE);
  }

  private static GrassChange grass(
      double earlier,
      double later,
      double scars,
      double otherwise,
      double slivers,
      double gained,
      double thin) {
    return new GrassChange(earlier, later, scars, otherwise, slivers, gained, thin);
  }

  private static void check(GrassChange actual, GrassChange expected) {
    assertThat(actual)
        .usingRecursiveComparison()
        .withComparatorForType(
            (Double a, Double b) -> Math.abs(a - b) < ROUNDING ? 0 : Double.compare(a, b),
            Double.class)
        .isEqualTo(expected);
  }

  @Test
  void aBedThatMovesLosesOnOneSideAndGainsOnTheOther() {
    seasons.earlier().bed("a", TestSurvey.box(0, 0, 100, 50));
    seasons.later().bed("b", TestSurvey.box(10, 0, 105, 50));
    SeasonBedChange change = compare();
    check(change.whole(), grass(5_000, 4_750, 0, 500, 0, 250, 0));
    check(change.beds().get(0).change(), grass(5_000, 0, 0, 500, 0, 0, 0));
    check(change.beds().get(1).change(), grass(0, 4_750, 0, 0, 0, 250, 0));
  }

  /** An edge drawn 0.9 m aside is within an accuracy of 1 m; one 1.1 m aside is not. */
  @Test
  void sliversNarrowerThanTheAccuracyAreCountedApart() {
    seasons.earlier().bed("a", TestSurvey.box(0, 0, 100, 50));
    seasons.later().bed("b", TestSurvey.box(0.9, 0, 101.1, 50));
    GrassChange whole = compare().whole();
    assertThat(whole.lostWithinAccuracySquareMetres()).isCloseTo(45, within(ROUNDING));
    assertThat(whole.lostOtherwiseSquareMetres()).isCloseTo(0, within(ROUNDING));
    assertThat(whole.gainedClearlySquareMetres()).isCloseTo(55, within(ROUNDING));
    assertThat(whole.gainedWithinAccuracySquareMetres()).isCloseTo(0, within(ROUNDING));
  }

  /** A lane of 6 m is lost; a scar 1 m wide runs along it: it explains 1 m and 1 m to each side. */
  @Test
  void lossOnFootprintsOfScarsIsExplained() {
    seasons.earlier().bed("a", TestSurvey.box(0, 0, 100, 50));
    seasons
        .later()
        .bed("b", TestSurvey.box(0, 0, 100, 20))
        .bed("c", TestSurvey.box(0, 26, 100, 50))
        .scar("s", "LINESTRING (-10 23, 110 23)", 1);
    check(compare().whole(), grass(5_000, 4_400, 300, 300, 0, 0, 0));
  }

  @Test
  void nothingIsSaidOutsideEitherSurvey() {
    seasons
        .earlier()
        .bed("a", TestSurvey.box(0, 0, 100, 50))
        .surveyed(TestSurvey.box(0, 0, 60, 50));
    seasons
        .later()
        .bed("b", TestSurvey.box(20, 0, 90, 50))
        .surveyed(TestSurvey.box(10, 0, 200, 50));
    SeasonBedChange change = compare();
    check(change.whole(), grass(2_500, 2_000, 0, 500, 0, 0, 0));
    assertThat(change.beds().get(0).areaSquareMetres()).isEqualTo(5_000);
    assertThat(change.beds().get(0).notComparableSquareMetres()).isCloseTo(2_500, within(ROUNDING));
    assertThat(change.beds().get(1).notComparableSquareMetres()).isCloseTo(1_500, within(ROUNDING));
  }

  @Test
  void aBedDividedIntoSeveralLosesNothing() {
    seasons.earlier().bed("a", TestSurvey.box(0, 0, 100, 50));
    seasons.later().bed("b", TestSurvey.box(0, 0, 50, 50)).bed("c", TestSurvey.box(50, 0, 100, 50));
    check(compare().whole(), grass(5_000, 5_000, 0, 0, 0, 0, 0));
  }

  @Test
  void areasShareOutTheChange() {
    seasons.earlier().bed("a", TestSurvey.box(0, 0, 100, 50));
    seasons
        .later()
        .bed("b", TestSurvey.box(0, 0, 100, 40))
        .area("west", TestSurvey.box(0, 0, 30, 50))
        .area("east", TestSurvey.box(30, 0, 100, 50));
    SeasonBedChange change = compare();
    assertThat(change.areas()).extracting(AreaChange::areaId).containsExactly("east", "west");
    check(change.areas().get(0).change(), grass(3_500, 2_800, 0, 700, 0, 0, 0));
    check(change.areas().get(1).change(), grass(1_500, 1_200, 0, 300, 0, 0, 0));
  }

  @Test
  void bedsOfOneSurveyOnlyAreLostOrGainedWhole() {
    seasons.earlier().bed("a", TestSurvey.box(0, 0, 10, 10));
    seasons.later().bed("b", TestSurvey.box(50, 0, 60, 10));
    GrassChange whole = compare().whole();
    assertThat(whole.lostSquareMetres()).isCloseTo(100, within(ROUNDING));
    assertThat(whole.gainedSquareMetres()).isCloseTo(100, within(ROUNDING));
    assertThat(
            BedComparer.compare(
                    new Seasons().earlierSurvey(), new Seasons().laterSurvey(), 0.05, Progress.NONE)
                .whole())
        .isEqualTo(GrassChange.NONE);
  }

  /** later − earlier = gained − lost, for any beds; and the reverse comparison swaps the two. */
  @Property(tries = 60, seed = "20260601")
  void whatIsGainedAndLostIsTheDifference(@ForAll @LongRange(min = 0, max = 100_000) long seed) {
    Random random = new Random(seed);
    Seasons drawn = new Seasons();
    for (int i = 0; i < 4; i++) {
      for (TestSurvey survey : new TestSurvey[] {drawn.earlier(), drawn.later()}) {
        survey.bed("b" + i, blob(random, 120 * i));
      }
    }
    SeasonSurvey earlier = drawn.earlierSurvey();
    SeasonSurvey later = drawn.laterSurvey();
    GrassChange there = BedComparer.compare(earlier, later, 0.05, Progress.NONE).whole();
    assertThat(there.gainedSquareMetres() - there.lostSquareMetres())
        .isCloseTo(there.laterSquareMetres() - there.earlierSquareMetres(), within(1e-4));
    GrassChange back =
        BedComparer.compare(
                new SeasonSurvey(Seasons.EARLIER, later.survey(), later.accuracy()),
                new SeasonSurvey(Seasons.LATER, earlier.survey(), earlier.accuracy()),
                0.05,
                Progress.NONE)
            .whole();
    assertThat(back.gainedClearlySquareMetres())
        .isCloseTo(there.lostOtherwiseSquareMetres(), within(1e-4));
    assertThat(back.lostWithinAccuracySquareMetres())
        .isCloseTo(there.gainedWithinAccuracySquareMetres(), within(1e-4));
  }

  private static Geometry blob(Random random, double x) {
    Coordinate[] ring = new Coordinate[25];
    for (int i = 0; i < 24; i++) {
      double angle = 2 * Math.PI * i / 24;
      double radius = 30 + 20 * random.nextDouble();
      ring[i] = new Coordinate(x + radius * Math.cos(angle), radius * Math.sin(angle));
    }
    ring[24] = ring[0];
    return new GeometryFactory().createPolygon(ring);
  }
}
