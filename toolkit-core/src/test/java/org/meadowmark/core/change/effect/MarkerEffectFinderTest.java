package org.meadowmark.core.change.effect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.change.effect.MarkerEffect.Verdict;
import org.meadowmark.core.change.effect.SegmentRole.Part;
import org.meadowmark.core.rank.network.SegmentNetwork;

class MarkerEffectFinderTest {
  private static final LocalDate DAY = LocalDate.of(2020, 6, 14);
  private static final List<Season> TWO =
      List.of(new Season(DAY, DAY.plusDays(365)), new Season(DAY.plusDays(365), DAY.plusDays(730)));

  private static SegmentSeasons segment(int number, double hectares, double... metres) {
    List<Double> all = new ArrayList<>();
    List<Double> beds = new ArrayList<>();
    for (double one : metres) {
      all.add(one);
      beds.add(hectares);
    }
    return new SegmentSeasons(String.format(Locale.ROOT, "a-%04d", number), 100, all, beds);
  }

  private static MarkerEffect find(
      List<Season> seasons, List<SegmentSeasons> segments, MarkedSegment... marks) {
    double[] lengths = segments.stream().mapToDouble(SegmentSeasons::lengthMetres).toArray();
    List<int[]> pairs = new ArrayList<>();
    for (int i = 1; i < lengths.length; i++) {
      pairs.add(new int[] {i - 1, i});
    }
    return new MarkerEffectFinder(
            seasons,
            segments,
            SegmentNetwork.ofPairs(pairs, lengths),
            20,
            InventedSeasons.settings())
        .find(List.of(marks));
  }

  private static MarkedSegment mark(int number, LocalDate day) {
    return new MarkedSegment(String.format(Locale.ROOT, "a-%04d", number), day, "speed mark");
  }

  private static List<SegmentSeasons> row() {
    List<SegmentSeasons> segments = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      segments.add(segment(i, 5, 100 + i, i < 2 ? 40 : 105));
    }
    segments.set(9, segment(9, 0.2, 10, 10));
    segments.set(10, segment(10, 5, 900, 900));
    return segments;
  }

  @Test
  void saysOfEverySegmentWhatItIsAndWhy() {
    MarkerEffect effect = find(TWO, row(), mark(0, DAY.plusDays(365)), mark(1, DAY.plusDays(365)));

    assertThat(effect.roles())
        .extracting(SegmentRole::part)
        .containsExactly(
            Part.MARKED,
            Part.MARKED,
            Part.BESIDE,
            Part.BESIDE,
            Part.CONTROL,
            Part.CONTROL,
            Part.CONTROL,
            Part.CONTROL,
            Part.CONTROL,
            Part.LEFT_OUT,
            Part.LEFT_OUT,
            Part.CONTROL);
    assertThat(effect.roles().get(3).reason())
        .isEqualTo("within 250 m along the channel of marked a-0001: damage may have moved here");
    assertThat(effect.roles().get(9).reason())
        .isEqualTo("less than 1.00 ha of bed in reach that every survey looked at");
    assertThat(effect.roles().get(10).reason()).contains("higher than that of the marked segments");
  }

  /** By hand: marked 201 to 80, controls 100·6 + 41 to 105·6; seasons of 365 days. */
  @Test
  void ratesAndDifferenceAreThoseByHand() {
    MarkerEffect effect = find(TWO, row(), mark(0, DAY.plusDays(365)), mark(1, DAY.plusDays(365)));
    double years = 365 / 365.25;

    MarkerEffect.Rates rates = effect.rates().orElseThrow();
    assertThat(rates.markedBefore()).isCloseTo(201 / (10 * years), within(1e-9));
    assertThat(rates.markedAfter()).isCloseTo(80 / (10 * years), within(1e-9));
    assertThat(rates.controlBefore()).isCloseTo(641 / (30 * years), within(1e-9));
    assertThat(rates.controlAfter()).isCloseTo(630 / (30 * years), within(1e-9));
    assertThat(effect.difference().orElseThrow())
        .isCloseTo(((80 - 201) / 10.0 - (630 - 641) / 30.0) / years, within(1e-9));
    assertThat(effect.ratio().orElseThrow()).isCloseTo(80.0 / 201 / (630.0 / 641), within(1e-9));
    assertThat(effect.permutation().orElseThrow().arrangements()).isEqualTo(28);
  }

  @Test
  void oneMarkedSegmentIsTooFewToTell() {
    MarkerEffect effect = find(TWO, row(), mark(0, DAY.plusDays(365)));

    assertThat(effect.verdict()).isEqualTo(Verdict.TOO_FEW_SEGMENTS);
    assertThat(effect.words()).startsWith("Too few segments to tell (1 marked, 7 controls)");
    assertThat(effect.differenceInterval()).isEmpty();
    assertThat(effect.permutation()).isEmpty();
    assertThat(effect.power()).isEmpty();
  }

  @Test
  void twoMarkedAndThreeControlsCannotBeEvidence() {
    List<SegmentSeasons> segments = new ArrayList<>();
    for (int i = 0; i < 7; i++) {
      segments.add(segment(i, 5, 100 + i, i < 2 ? 1 : 105 + i));
    }
    MarkerEffect effect =
        find(TWO, segments, mark(0, DAY.plusDays(365)), mark(1, DAY.plusDays(365)));

    assertThat(effect.permutation().orElseThrow().smallestPValue()).isCloseTo(0.1, within(1e-12));
    assertThat(effect.verdict()).isEqualTo(Verdict.TOO_FEW_SEGMENTS);
    assertThat(effect.words()).contains("even the clearest difference would have p = 0.10");
  }

  @Test
  void oneSeasonHasNoBefore() {
    List<SegmentSeasons> segments = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      segments.add(segment(i, 5, 100));
    }
    MarkerEffect effect = find(TWO.subList(0, 1), segments, mark(0, DAY.plusDays(100)));

    assertThat(effect.verdict()).isEqualTo(Verdict.NOTHING_TO_COMPARE);
    assertThat(effect.words()).contains("takes three surveys or more");
  }

  @Test
  void aSeasonThatTheDayLiesInIsNotUsed() {
    List<Season> three =
        List.of(TWO.get(0), TWO.get(1), new Season(DAY.plusDays(730), DAY.plusDays(1095)));
    List<SegmentSeasons> segments = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      segments.add(segment(i, 5, 100, 7_777, 90));
    }
    MarkerEffect effect = find(three, segments, mark(0, DAY.plusDays(500)));

    assertThat(effect.roles().get(0).reason())
        .isEqualTo("speed mark placed 2021-10-27; the season that this day lies in is not used");
    assertThat(effect.ratio().orElseThrow()).isCloseTo(1, within(1e-12));
  }

  @Test
  void markersOfTwoDaysAreComparedEachWithItsOwnSeasons() {
    List<Season> three =
        List.of(TWO.get(0), TWO.get(1), new Season(DAY.plusDays(730), DAY.plusDays(1095)));
    List<SegmentSeasons> segments = new ArrayList<>();
    for (int i = 0; i < 14; i++) {
      double[] metres = {100, 200, 50};
      if (i == 0) {
        metres = new double[] {100, 100, 25};
      }
      if (i == 13) {
        metres = new double[] {100, 200, 25};
      }
      segments.add(segment(i, 5, metres));
    }
    MarkerEffect effect =
        find(three, segments, mark(0, DAY.plusDays(365)), mark(13, DAY.plusDays(730)));

    // Every season is bad or good for all alike, and each mark halves what comes after its day.
    assertThat(effect.ratio().orElseThrow()).isCloseTo(0.5, within(1e-12));
    assertThat(effect.seasonTest()).isEmpty();
  }

  @Test
  void morePowerComesWithMoreSeasonsButNotWithoutBound() {
    MarkerEffect effect =
        new InventedSeasons(new InventedSeasons.Truth(60, 3, 2, 1, 1, 20, 0.5, 0), 4)
            .effect(InventedSeasons.settings());
    PowerForecast power = effect.power().orElseThrow();

    for (int i = 1; i < power.points().size(); i++) {
      assertThat(power.points().get(i).power())
          .isGreaterThan(power.points().get(i - 1).power())
          .isLessThan(power.bestPower());
    }
    power
        .seasonsNeeded()
        .ifPresentOrElse(
            seasons ->
                assertThat(power.points().get(seasons).power())
                    .isGreaterThanOrEqualTo(power.target()),
            () -> assertThat(power.points().get(20).power()).isLessThan(power.target()));
    power.smallestDropNow().ifPresent(drop -> assertThat(drop).isGreaterThan(0).isLessThan(1));
  }
}
