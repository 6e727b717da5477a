package org.meadowmark.core.change.rates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.change.CommonGround;
import org.meadowmark.core.change.MeasuredSeason;
import org.meadowmark.core.change.Scope;
import org.meadowmark.core.change.SeasonPair;
import org.meadowmark.core.change.SeasonSurvey;
import org.meadowmark.core.change.match.ScarMatcher;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.recovery.SurveyRecoveryEstimator;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.rank.SegmentScars;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.PositionalAccuracy;

/** Rates between surveys whose scars are known one by one; values by hand. */
class SeasonRatesTest {
  private static final LocalDate DAY = LocalDate.of(2020, 6, 14);

  /** A bed of 2 ha in two management areas beside a channel. */
  private static TestSurvey place() {
    return new TestSurvey()
        .ranking("unlisted_recovery_years", "1 2 4", "analysis_crs", "EPSG:32617")
        .bed("b", TestSurvey.box(0, 0, 200, 100))
        .area("west", TestSurvey.box(-10, -10, 100, 110))
        .area("east", TestSurvey.box(100, -10, 210, 110))
        .channel("c", "c", "LINESTRING (0 -20, 200 -20)");
  }

  private static MeasuredSeason season(LocalDate date, TestSurvey survey) {
    Measurement measurement = survey.measure();
    Parameters parameters = survey.parameters();
    return new MeasuredSeason(
        new SeasonSurvey(date, survey.build(), PositionalAccuracy.ofRadialRmse(0.2)),
        measurement,
        new SurveyRecoveryEstimator(
                parameters, TestSurvey.tables(), OptionalInt.of(2020), Progress.NONE)
            .estimate(measurement));
  }

  private static SeasonPair pair(MeasuredSeason earlier, MeasuredSeason later) {
    return new SeasonPair(
        earlier,
        later,
        new ScarMatcher(place().parameters().matching())
            .match(earlier.survey(), later.survey(), Progress.NONE),
        CommonGround.of(earlier.mapped(), later.mapped()));
  }

  /** Scar 1 persists, 2 heals, 3 grows by 10 m, 4 is new and half outside the bed, 5 is new. */
  private static SeasonPair twoYears() {
    return pair(
        season(
            DAY,
            place()
                .scar("1", "LINESTRING (10 20, 10 40)", 0.4)
                .scar("2", "LINESTRING (30 20, 30 40)", 0.2)
                .scar("3", "LINESTRING (150 20, 150 40)", 0.4)),
        season(
            DAY.plusDays(731),
            place()
                .scar("a", "LINESTRING (10 20, 10 40)", 0.4)
                .scar("b", "LINESTRING (150 20, 150 50)", 0.4)
                .scar("c", "LINESTRING (170 90, 170 110)", 0.4)
                .scar("d", "LINESTRING (60 20, 60 45)", 0.4)));
  }

  private static NewScarRate in(List<NewScarRate> rates, String area) {
    return rates.stream()
        .filter(rate -> rate.scope().areaId().equals(area))
        .filter(rate -> !rate.scope().equals(Scope.OUTSIDE))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void newMetresAreThoseOfNewScarsAndOfGrowthInsideBeds() {
    List<NewScarRate> rates = NewScarRates.of(twoYears(), 0.95);
    double years = 731 / 365.25;

    NewScarRate whole = in(rates, "");
    assertThat(whole.newScars()).isEqualTo(2);
    // c: 10 of 20 m in the bed; d: 25 m; b: 10 m new of 30 m.
    assertThat(whole.newMetres()).isCloseTo(10 + 25 + 10, within(0.5));
    assertThat(whole.bedHectares()).isCloseTo(2, within(1e-9));
    assertThat(whole.metresPerHectareYear().orElseThrow())
        .isCloseTo(whole.newMetres() / (2 * years), within(1e-9));
    assertThat(in(rates, "west").newScars()).isEqualTo(1);
    assertThat(in(rates, "west").newMetres()).isCloseTo(25, within(1e-6));
    assertThat(in(rates, "west").bedHectares()).isCloseTo(1, within(1e-9));
    assertThat(in(rates, "east").newMetres()).isCloseTo(20, within(0.5));
  }

  @Test
  void healedScarsAreCountedByAreaAndByWidthAgainstTheModel() {
    List<HealingRate> rates = HealingRates.of(twoYears(), List.of(0.3, 0.5), 0.95);

    HealingRate whole = rates.get(3);
    assertThat(whole.scope()).isEqualTo(Scope.WHOLE);
    assertThat(whole.scars()).isEqualTo(3);
    assertThat(whole.healed()).isEqualTo(1);
    // A scar of 0.3 m closes in 1, 2, 4 years; of 0.2 m in 0.67, 1.33, 2.67; of 0.4 in 1.33, 2.67.
    assertThat(whole.expected().low()).isEqualTo(0);
    assertThat(whole.expected().middle()).isEqualTo(1);
    assertThat(whole.expected().high()).isEqualTo(3);
    assertThat(rates.get(0).scope().areaId()).isEqualTo("west");
    assertThat(rates.get(0).healed()).isEqualTo(1);
    HealingRate narrow = rates.get(4);
    assertThat(narrow.species()).isEqualTo("eelgrass");
    assertThat(narrow.widthLowMetres().orElseThrow()).isEqualTo(0);
    assertThat(narrow.widthHighMetres().orElseThrow()).isEqualTo(0.3);
    assertThat(narrow.scars()).isEqualTo(1);
    assertThat(narrow.healed()).isEqualTo(1);
    assertThat(narrow.perYear()).isEmpty();
    HealingRate wide = rates.get(5);
    assertThat(wide.scars()).isEqualTo(2);
    assertThat(wide.healed()).isZero();
    assertThat(wide.perYear().orElseThrow()).isZero();
  }

  @Test
  void scarsAreFollowedFromFirstSightToTheSurveyAtWhichTheyWereGone() {
    SeasonPair first = twoYears();
    MeasuredSeason last =
        season(DAY.plusDays(1096), place().scar("x", "LINESTRING (150 20, 150 50)", 0.4));
    List<ClosingObservation> seen =
        ClosingObservations.of(List.of(first, pair(first.later(), last)), 0.2);

    double two = 731 / 365.25;
    double three = 1096 / 365.25;
    double one = 365 / 365.25;
    assertThat(seen)
        .containsExactly(
            new ClosingObservation("eelgrass", 0.2, two, three),
            new ClosingObservation("eelgrass", 0.1, 0, two),
            new ClosingObservation("eelgrass", 0.2, three, Double.POSITIVE_INFINITY),
            new ClosingObservation("eelgrass", 0.2, 0, one),
            new ClosingObservation("eelgrass", 0.2, 0, one));
  }

  @Test
  void aNewScarOnGroundScarredBeforeIsCutAgain() {
    SeasonPair first = twoYears();
    MeasuredSeason last =
        season(
            DAY.plusDays(1096),
            place()
                .scar("x", "LINESTRING (30 18, 30 38)", 0.4)
                .scar("y", "LINESTRING (20 30, 40 30)", 0.4)
                .scar("z", "LINESTRING (120 20, 120 40)", 0.4));
    SeasonPair second = pair(first.later(), last);

    // x lies on scar 2, which was gone a survey before; y crosses it; z is elsewhere.
    assertThat(ReScarring.of(List.of(first, second))).isEqualTo(Set.of("x"));
    assertThat(ReScarring.of(List.of(first))).isEmpty();
  }

  @Test
  void segmentsShareNewMetresAndSayWhatWasCutAgain() {
    SeasonPair pair = twoYears();
    SegmentScars segments = new SegmentScars(pair.later().mapped(), place().parameters());
    SegmentRates.Rates rates =
        SegmentRates.of(
            pair,
            segments.segments(),
            segments.bedHectares(Progress.NONE),
            segments.shares(Progress.NONE),
            Set.of("d"),
            0.95);

    assertThat(rates.rates()).hasSize(2);
    SegmentRate west = rates.rates().get(0);
    assertThat(west.newMetres()).isCloseTo(25, within(1e-6));
    assertThat(west.newScars()).isEqualTo(1);
    assertThat(west.cutAgain()).isEqualTo(1);
    // Unlike the rate of an area, that of a segment has the metres outside beds too.
    assertThat(rates.rates().get(1).newMetres()).isCloseTo(30, within(0.5));
    assertThat(rates.pieceMetres()).hasSize(3);
  }

  @Test
  void figuresChangeByHandAndHaveNoIntervalWithOneBed() {
    List<FigureChange> changes = FigureChanges.of(twoYears(), 10, new BedBootstrap(100, 1, 0.95));

    FigureChange scarred =
        changes.stream()
            .filter(change -> change.scope().equals(Scope.WHOLE))
            .filter(change -> change.figure() == ChangeFigure.SCARRED_SHARE)
            .findFirst()
            .orElseThrow();
    assertThat(scarred.earlier().orElseThrow())
        .isCloseTo(100 * (20 * 0.4 + 20 * 0.2 + 20 * 0.4) / 20_000, within(1e-9));
    assertThat(scarred.later().orElseThrow())
        .isCloseTo(100 * (20 + 30 + 10 + 25) * 0.4 / 20_000, within(1e-9));
    assertThat(scarred.ratio().orElseThrow()).isCloseTo(34.0 / 20, within(1e-9));
    assertThat(scarred.ratioInterval()).isEmpty();
    assertThat(changes).extracting(FigureChange::figure).contains(ChangeFigure.CONNECTED_AREA);
  }

  @Test
  void intervalsOverBedsHoldTheChangeOfEqualBeds() {
    TestSurvey earlier = new TestSurvey();
    TestSurvey later = new TestSurvey();
    for (int i = 0; i < 12; i++) {
      String bed = TestSurvey.box(200 * i, 0, 200 * i + 100, 100);
      earlier.bed("b" + i, bed).scar("s" + i, line(200 * i + 20), 0.4);
      later.bed("b" + i, bed).scar("s" + i, line(200 * i + 20), 0.4);
      later.scar("t" + i, line(200 * i + 60), 0.4);
    }
    List<FigureChange> changes =
        FigureChanges.of(
            pair(season(DAY, earlier), season(DAY.plusDays(365), later)),
            10,
            new BedBootstrap(200, 1, 0.95));

    List<ChangeFigure> checked = new ArrayList<>();
    for (FigureChange change : changes) {
      if (change.ratioInterval().isPresent()) {
        double ratio = change.ratio().orElseThrow();
        assertThat(change.ratioInterval().get().low()).isCloseTo(ratio, within(1e-9));
        assertThat(change.ratioInterval().get().high()).isCloseTo(ratio, within(1e-9));
        checked.add(change.figure());
      }
    }
    assertThat(checked).contains(ChangeFigure.values());
  }

  private static String line(double x) {
    return "LINESTRING (%s -5, %s 105)".formatted(x, x);
  }
}
