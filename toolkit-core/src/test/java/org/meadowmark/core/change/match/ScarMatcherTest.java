package org.meadowmark.core.change.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.change.SeasonSurvey;
import org.meadowmark.core.change.Seasons;
import org.meadowmark.core.model.Progress;

/** Small cases whose answer is plain. The tolerance is 1 m. */
class ScarMatcherTest {
  private static final double MILLIMETRE = 1e-3;

  private final Seasons seasons = new Seasons();

  private static ChangeClass earlier(SeasonMatch match, String id) {
    return find(match.earlier(), id).change();
  }

  private static ChangeClass later(SeasonMatch match, String id) {
    return find(match.later(), id).change();
  }

  private static ScarChange find(List<ScarChange> scars, String id) {
    return scars.stream().filter(scar -> scar.id().equals(id)).findFirst().orElseThrow();
  }

  @Test
  void aScarThatIsMappedAgainALittleAsidePersists() {
    SeasonMatch match =
        seasons
            .before("a", "LINESTRING (0 0, 40 0)")
            .after("b", "LINESTRING (0 0.6, 40 0.6)")
            .match();
    assertThat(match.toleranceMetres()).isCloseTo(1, within(1e-12));
    assertThat(earlier(match, "a")).isEqualTo(ChangeClass.PERSISTING);
    assertThat(later(match, "b")).isEqualTo(ChangeClass.PERSISTING);
    ScarLink link = match.links().get(0);
    assertThat(link.earlierMetres()).isCloseTo(40, within(1e-9));
    assertThat(link.laterMetres()).isCloseTo(40, within(1e-9));
    assertThat(link.distanceMetres().orElseThrow()).isCloseTo(0.6, within(1e-9));
    assertThat(link.telling()).isTrue();
    assertThat(match.observedDistanceMetres().orElseThrow()).isCloseTo(0.6, within(1e-9));
  }

  @Test
  void whatLiesFartherApartIsHealedAndNew() {
    SeasonMatch match =
        seasons
            .before("a", "LINESTRING (0 0, 40 0)")
            .after("b", "LINESTRING (0 1.01, 40 1.01)")
            .match();
    assertThat(match.links()).isEmpty();
    assertThat(find(match.earlier(), "a"))
        .isEqualTo(new ScarChange("a", true, ChangeClass.HEALED, 40, 0, 40, 0, false));
    assertThat(find(match.later(), "b"))
        .isEqualTo(new ScarChange("b", true, ChangeClass.NEW, 40, 0, 40, 0, false));
  }

  /** The later line is in tolerance for a metre beyond the end of the earlier one. */
  @Test
  void anExtendedScarGainsAllThatIsLonger() {
    SeasonMatch match =
        seasons.before("a", "LINESTRING (0 0, 40 0)").after("b", "LINESTRING (0 0, 65 0)").match();
    assertThat(earlier(match, "a")).isEqualTo(ChangeClass.EXTENDED);
    assertThat(later(match, "b")).isEqualTo(ChangeClass.EXTENDED);
    assertThat(find(match.later(), "b").unassignedMetres()).isCloseTo(25, within(MILLIMETRE));
    assertThat(find(match.earlier(), "a").unassignedMetres()).isCloseTo(0, within(MILLIMETRE));
  }

  @Test
  void aShortenedScarLosesTheRest() {
    SeasonMatch match =
        seasons.before("a", "LINESTRING (0 0, 40 0)").after("b", "LINESTRING (10 0, 40 0)").match();
    assertThat(earlier(match, "a")).isEqualTo(ChangeClass.SHORTENED);
    assertThat(find(match.earlier(), "a").unassignedMetres()).isCloseTo(10, within(MILLIMETRE));
  }

  @Test
  void aChangeOfLengthWithinTheToleranceIsMapping() {
    SeasonMatch match =
        seasons.before("a", "LINESTRING (0 0, 5 0)").after("b", "LINESTRING (0 0, 5.9 0)").match();
    assertThat(later(match, "b")).isEqualTo(ChangeClass.PERSISTING);
    assertThat(find(match.later(), "b").unassignedMetres()).isCloseTo(0.9, within(MILLIMETRE));
  }

  @Test
  void oneScarThatIsTwoIsSplit() {
    SeasonMatch match =
        seasons
            .before("a", "LINESTRING (0 0, 100 0)")
            .after("b", "LINESTRING (0 0.2, 40 0.2)")
            .after("c", "LINESTRING (60 0.2, 100 0.2)")
            .match();
    assertThat(earlier(match, "a")).isEqualTo(ChangeClass.SPLIT);
    assertThat(later(match, "b")).isEqualTo(ChangeClass.SPLIT);
    assertThat(later(match, "c")).isEqualTo(ChangeClass.SPLIT);
    assertThat(find(match.earlier(), "a").assignedMetres()).isCloseTo(80, within(MILLIMETRE));
    assertThat(find(match.earlier(), "a").unassignedMetres()).isCloseTo(20, within(MILLIMETRE));
  }

  @Test
  void twoScarsThatAreOneAreMerged() {
    SeasonMatch match =
        seasons
            .before("a", "LINESTRING (0 0, 40 0)")
            .before("b", "LINESTRING (100 0, 60 0)")
            .after("c", "LINESTRING (0 0.2, 100 0.2)")
            .match();
    assertThat(earlier(match, "a")).isEqualTo(ChangeClass.MERGED);
    assertThat(earlier(match, "b")).isEqualTo(ChangeClass.MERGED);
    assertThat(later(match, "c")).isEqualTo(ChangeClass.MERGED);
    assertThat(find(match.later(), "c").unassignedMetres()).isCloseTo(20, within(MILLIMETRE));
  }

  @Test
  void scarsThatCrossDoNotMatch() {
    for (double degrees : new double[] {90, 60, 35}) {
      double x = 20 * Math.cos(Math.toRadians(degrees));
      double y = 20 * Math.sin(Math.toRadians(degrees));
      SeasonMatch match =
          new Seasons()
              .before("a", "LINESTRING (-20 0, 20 0)")
              .after("b", "LINESTRING (%s %s, %s %s)".formatted(-x, -y, x, y))
              .match();
      assertThat(match.links()).as("%s degrees", degrees).isEmpty();
      assertThat(later(match, "b")).isEqualTo(ChangeClass.NEW);
    }
  }

  /** At 20° the two are within a metre of each other for 2/sin 20° = 5.8 m: too little of 40 m. */
  @Test
  void scarsThatCrossAtASharpAngleDoNotMatchEither() {
    double x = 20 * Math.cos(Math.toRadians(20));
    double y = 20 * Math.sin(Math.toRadians(20));
    SeasonMatch match =
        seasons
            .before("a", "LINESTRING (-20 0, 20 0)")
            .after("b", "LINESTRING (%s %s, %s %s)".formatted(-x, -y, x, y))
            .match();
    assertThat(match.links()).isEmpty();
    assertThat(earlier(match, "a")).isEqualTo(ChangeClass.HEALED);
  }

  @Test
  void aNewScarBesideAnOldOneDoesNotTakeItsPlace() {
    SeasonMatch match =
        seasons
            .before("a", "LINESTRING (0 0, 40 0)")
            .after("b", "LINESTRING (0 0.2, 40 0.2)")
            .after("c", "LINESTRING (0 -0.7, 40 -0.7)")
            .match();
    assertThat(later(match, "b")).isEqualTo(ChangeClass.PERSISTING);
    assertThat(later(match, "c")).isEqualTo(ChangeClass.NEW);
    assertThat(find(match.later(), "c").unassignedMetres()).isEqualTo(40);
  }

  /** A shift of half a spacing: nearest neighbours alone would pair the middle ones wrongly. */
  @Test
  void twinTracksThatAreShiftedTogetherMatchOneByOne() {
    SeasonMatch match =
        seasons
            .before("1", "LINESTRING (0 0, 40 0)")
            .before("2", "LINESTRING (0 1, 40 1)")
            .before("3", "LINESTRING (0 2, 40 2)")
            .after("4", "LINESTRING (0 0.6, 40 0.6)")
            .after("5", "LINESTRING (0 1.6, 40 1.6)")
            .after("6", "LINESTRING (0 2.6, 40 2.6)")
            .match();
    assertThat(match.links())
        .extracting(link -> link.earlierId() + link.laterId())
        .containsExactly("14", "25", "36");
    assertThat(SeasonMatch.counts(match.later())).isEqualTo(Map.of(ChangeClass.PERSISTING, 3));
  }

  /** A small new scar closer to the old one than the old one's own line of today. */
  @Test
  void aFragmentDoesNotSplitAWhole() {
    SeasonMatch match =
        seasons
            .before("a", "LINESTRING (0 0, 100 0)")
            .after("b", "LINESTRING (0 0.5, 100 0.5)")
            .after("c", "LINESTRING (50 -0.3, 52 -0.3)")
            .match();
    assertThat(earlier(match, "a")).isEqualTo(ChangeClass.PERSISTING);
    assertThat(later(match, "c")).isEqualTo(ChangeClass.NEW);
  }

  /** Two scars end to end whose border was drawn elsewhere: both persist, every metre is kept. */
  @Test
  void aBorderThatMovedMakesNothingNew() {
    SeasonMatch match =
        seasons
            .before("a", "LINESTRING (0 0, 50 0)")
            .before("b", "LINESTRING (50 0, 100 0)")
            .after("c", "LINESTRING (0 0, 58 0)")
            .after("d", "LINESTRING (58 0, 100 0)")
            .match();
    assertThat(SeasonMatch.counts(match.earlier())).isEqualTo(Map.of(ChangeClass.PERSISTING, 2));
    assertThat(SeasonMatch.counts(match.later())).isEqualTo(Map.of(ChangeClass.PERSISTING, 2));
    assertThat(match.laterTotals().unassignedMetres()).isCloseTo(0, within(2 * MILLIMETRE));
    assertThat(match.links()).extracting(ScarLink::telling).containsExactly(true, false, true);
  }

  /** A drawing with more bends is longer: that is not damage. */
  @Test
  void bendsOfTheDrawingHandAreNotNew() {
    StringBuilder zigzag = new StringBuilder("LINESTRING (0 0");
    for (int x = 2; x <= 40; x += 2) {
      zigzag.append(", ").append(x).append(' ').append(x % 4 == 0 ? 0 : 0.5);
    }
    SeasonMatch match =
        seasons.before("a", "LINESTRING (0 0.25, 40 0.25)").after("b", zigzag + ")").match();
    ScarChange b = find(match.later(), "b");
    assertThat(b.lengthMetres()).isCloseTo(20 * Math.hypot(2, 0.5), within(1e-9));
    assertThat(b.change()).isEqualTo(ChangeClass.PERSISTING);
    assertThat(b.unassignedMetres()).isLessThan(0.2);
  }

  @Test
  void whereTheOtherSurveyDidNotLookNothingIsSaid() {
    seasons.earlier().surveyed(TestSurvey.box(-10, -10, 50, 10));
    SeasonMatch match =
        seasons
            .before("a", "LINESTRING (0 0, 40 0)")
            .after("b", "LINESTRING (0 5, 100 5)")
            .after("c", "LINESTRING (60 0, 90 0)")
            .match();
    assertThat(find(match.later(), "c"))
        .isEqualTo(new ScarChange("c", true, ChangeClass.NOT_COMPARABLE, 30, 0, 0, 30, false));
    assertThat(find(match.later(), "b"))
        .isEqualTo(new ScarChange("b", true, ChangeClass.NEW, 100, 0, 50, 50, false));
    assertThat(earlier(match, "a")).isEqualTo(ChangeClass.HEALED);
  }

  @Test
  void aScarThatLeavesTheSurveyedAreaPersistsInside() {
    seasons.later().surveyed(TestSurvey.box(-10, -10, 50, 10));
    SeasonMatch match =
        seasons.before("a", "LINESTRING (0 0, 100 0)").after("b", "LINESTRING (0 0, 50 0)").match();
    assertThat(earlier(match, "a")).isEqualTo(ChangeClass.PERSISTING);
    assertThat(find(match.earlier(), "a").notComparableMetres()).isCloseTo(50, within(1e-9));
  }

  @Test
  void surveysWithoutAnyCommonAreaSayNothing() {
    seasons.earlier().surveyed(TestSurvey.box(0, 0, 10, 10));
    seasons.later().surveyed(TestSurvey.box(20, 0, 30, 10));
    SeasonMatch match =
        seasons.before("a", "LINESTRING (1 1, 9 9)").after("b", "LINESTRING (21 1, 29 9)").match();
    assertThat(earlier(match, "a")).isEqualTo(ChangeClass.NOT_COMPARABLE);
    assertThat(later(match, "b")).isEqualTo(ChangeClass.NOT_COMPARABLE);
  }

  @Test
  void partsOfALineFollowEachOther() {
    SeasonMatch match =
        seasons
            .before("a", "MULTILINESTRING ((0 0, 40 0), (50 0, 80 0))")
            .after("b", "LINESTRING (0 0, 40 0)")
            .after("c", "LINESTRING (80 0, 50 0)")
            .match();
    assertThat(earlier(match, "a")).isEqualTo(ChangeClass.SPLIT);
    assertThat(find(match.earlier(), "a").assignedMetres()).isCloseTo(70, within(MILLIMETRE));
  }

  @Test
  void aBasinThatClosesFromItsEdgePersists() {
    SeasonMatch match =
        seasons
            .before("a", TestSurvey.box(0, 0, 10, 10))
            .after("b", TestSurvey.box(1.5, 1.5, 8.5, 8.5))
            .after("c", TestSurvey.box(14, 0, 20, 6))
            .match();
    assertThat(earlier(match, "a").key()).isIn("persisting", "shortened");
    assertThat(later(match, "c")).isEqualTo(ChangeClass.NEW);
    ScarChange a = find(match.earlier(), "a");
    assertThat(a.isLine()).isFalse();
    assertThat(a.lengthMetres()).isEqualTo(20);
    // 9 × 9 m of 10 × 10 m lie within a metre of the later basin.
    assertThat(match.links().get(0).earlierMetres()).isLessThanOrEqualTo(0.81 * 20 + 0.1);
    assertThat(match.links().get(0).laterMetres()).isCloseTo(14, within(MILLIMETRE));
  }

  @Test
  void aLineMappedAsAThinPolygonIsTheSameScar() {
    SeasonMatch match =
        seasons
            .before("a", "LINESTRING (0 0, 40 0)")
            .after("b", TestSurvey.box(0, -0.2, 40, 0.2))
            .match();
    assertThat(later(match, "b")).isEqualTo(ChangeClass.PERSISTING);
    assertThat(match.links().get(0).earlierMetres()).isCloseTo(40, within(0.01));
  }

  @Test
  void aLineThatPassesOverABasinIsNotTheBasin() {
    SeasonMatch match =
        seasons
            .before("a", TestSurvey.box(18, -8, 34, 8))
            .after("b", "LINESTRING (0 0, 100 0)")
            .match();
    assertThat(later(match, "b")).isEqualTo(ChangeClass.NEW);
    assertThat(earlier(match, "a")).isEqualTo(ChangeClass.HEALED);
  }

  @Test
  void aScarWithoutLengthIsNotComparable() {
    SeasonMatch match =
        seasons
            .before("a", "LINESTRING (5 5, 5 5)")
            .before("b", "LINESTRING (0 0, 40 0)")
            .after("c", "LINESTRING (5 5, 5 5)")
            .after("d", "LINESTRING (0 0, 20 0, 20 0, 40 0)")
            .match();
    assertThat(earlier(match, "a")).isEqualTo(ChangeClass.NOT_COMPARABLE);
    assertThat(later(match, "c")).isEqualTo(ChangeClass.NOT_COMPARABLE);
    assertThat(later(match, "d")).isEqualTo(ChangeClass.PERSISTING);
  }

  @Test
  void noScarsAtAllAreNoTrouble() {
    assertThat(seasons.match().links()).isEmpty();
    assertThat(new Seasons().before("a", "LINESTRING (0 0, 1 0)").match().later()).isEmpty();
  }

  @Test
  void equalScarsMatchOneByOne() {
    for (int i = 1; i <= 30; i++) {
      seasons.before("e" + i, "LINESTRING (0 0, 40 0)");
      if (i <= 25) {
        seasons.after("l" + i, "LINESTRING (0 0, 40 0)");
      }
    }
    SeasonMatch match = seasons.match();
    assertThat(match.laterTotals().assignedMetres()).isCloseTo(25 * 40, within(0.1));
    assertThat(match.earlierTotals().unassignedMetres()).isCloseTo(5 * 40, within(0.1));
    assertThat(SeasonMatch.counts(match.earlier()).get(ChangeClass.HEALED)).isEqualTo(5);
  }

  @Test
  void aThousandScarsOverOneAnotherMatchOneByOne() {
    for (int i = 0; i < 1_000; i++) {
      seasons
          .before("e" + i, "LINESTRING (0 0, 40 0)")
          .after("l" + i, "LINESTRING (0 0.3, 40 0.3)");
    }
    SeasonMatch match = seasons.match();
    assertThat(match.earlier()).allMatch(ScarChange::crowded);
    assertThat(match.earlierTotals().assignedMetres()).isCloseTo(40_000, within(1.0));
    assertThat(match.laterTotals().assignedMetres()).isCloseTo(40_000, within(1.0));
  }

  @Test
  void aThousandScarsAcrossOneAnotherAreToldApart() {
    Random random = new Random(3);
    for (int i = 0; i < 1_000; i++) {
      double angle = Math.PI * i / 1_000;
      double x = 20 * Math.cos(angle);
      double y = 20 * Math.sin(angle);
      double east = 20 * random.nextDouble();
      double north = 20 * random.nextDouble();
      String line = "LINESTRING (%s %s, %s %s)";
      seasons.before("e" + i, line.formatted(east - x, north - y, east + x, north + y));
      seasons.after(
          "l" + i, line.formatted(east - x, north - y + 0.02, east + x, north + y + 0.02));
    }
    SeasonMatch match = seasons.match();
    long right =
        match.links().stream()
            .filter(
                link ->
                    link.telling()
                        && link.earlierId().substring(1).equals(link.laterId().substring(1)))
            .count();
    assertThat(right).isGreaterThan(900);
    assertThat(match.earlierTotals().lengthMetres()).isCloseTo(40_000, within(0.1));
  }

  @Test
  void orderAndGridAreChecked() {
    SeasonSurvey one = seasons.earlierSurvey();
    SeasonSurvey other = seasons.laterSurvey();
    ScarMatcher matcher = new ScarMatcher(Seasons.PARAMETERS);
    assertThatThrownBy(() -> matcher.match(other, one, Progress.NONE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("not the earlier");
  }
}
