package org.meadowmark.core.measure.recovery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.meadowmark.core.TestParameters;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.reference.ReferenceTablesReader;

/** Whole surveys of rectangles, whose losses are sums in closed form. */
class SurveyRecoveryEstimatorTest {
  private final TestSurvey survey = new TestSurvey();

  private void bed(String id, String wkt, String species) {
    survey
        .beds()
        .add(
            new Bed(id, new FeatureRef("beds.gpkg", "beds", id), TestSurvey.wkt(wkt), species, ""));
  }

  private SurveyRecovery estimate(Object... parameters) {
    return new SurveyRecoveryEstimator(
            TestParameters.of(parameters),
            ReferenceTablesReader.bundled(),
            OptionalInt.of(2025),
            Progress.NONE)
        .estimate(survey.measure());
  }

  @Test
  void publishedScarTakesThePublishedYears() {
    bed("b", TestSurvey.box(0, 0, 200, 100), "turtlegrass");
    survey.scar("s", "LINESTRING (10 50, 110 50)", 0.3);
    ScarRecovery scar = estimate("discount_rate", 0).scars().get(0);
    Range years = scar.alone().orElseThrow().yearsToFull();
    assertThat(years.low()).isCloseTo(3.6, within(1e-9));
    assertThat(years.middle()).isCloseTo(5, within(1e-9));
    assertThat(years.high()).isCloseTo(9.5, within(1e-9));
    // ∫ (L − 2et)(w − 2et) dt over 5 years at 0.03 m a year.
    double e = 0.03;
    double integral = 100 * 0.3 * 5 - e * 25 * 100.3 + 4 * e * e * 125 / 3;
    assertThat(scar.alone().orElseThrow().lossServiceHectareYears().middle())
        .isCloseTo(integral / 10_000, within(1e-9));
    assertThat(scar.basis())
        .contains("table scar-recovery, turtlegrass")
        .contains("excavation not mapped");
    Range planted = scar.planted().orElseThrow().lossServiceHectareYears();
    assertThat(planted.middle()).isLessThan(integral / 10_000).isPositive();
    assertThat(scar.gainServiceHectareYears().orElseThrow().middle())
        .isCloseTo(integral / 10_000 - planted.middle(), within(1e-12));
  }

  @Test
  void speciesWithoutPublishedTimeHasNoForecastUntilARangeIsGiven() {
    bed("b", TestSurvey.box(0, 0, 200, 100), "eelgrass");
    survey.scar("s", "LINESTRING (10 50, 110 50)", 0.6);
    SurveyRecovery none = estimate();
    assertThat(none.scars().get(0).alone()).isEmpty();
    assertThat(none.scars().get(0).planted()).isEmpty();
    assertThat(none.scars().get(0).gainServiceHectareYears()).isEmpty();
    assertThat(none.scars().get(0).basis())
        .contains("eelgrass")
        .contains("unlisted_recovery_years");
    assertThat(none.whole().alone()).isEmpty();
    assertThat(none.whole().compensatingHectares()).isEmpty();
    assertThat(none.whole().forecastSquareMetres()).isZero();
    assertThat(none.whole().scarredSquareMetres()).isCloseTo(60, within(1e-6));

    ScarRecovery given = estimate("unlisted_recovery_years", "2 3 4").scars().get(0);
    // Twice the width of the scars that the range is for takes twice as long.
    assertThat(given.alone().orElseThrow().yearsToFull().middle()).isCloseTo(6, within(1e-9));
    assertThat(given.basis()).contains("unlisted_recovery_years, species eelgrass");
  }

  @Test
  void missingSpeciesAndNoBedAreSaid() {
    bed("b", TestSurvey.box(0, 0, 200, 100), "");
    survey.scar("in", "LINESTRING (10 50, 110 50)", 0.6);
    survey.scar("out", "LINESTRING (10 500, 110 500)", 0.6);
    SurveyRecovery recovery = estimate();
    assertThat(recovery.scars().get(0).basis()).contains("no species mapped");
    assertThat(recovery.scars().get(1).basis()).contains("lies in no surveyed bed");
    assertThat(recovery.scars().get(1).bedId()).isEmpty();
  }

  @Test
  void excavationSlows() {
    bed("b", TestSurvey.box(0, 0, 200, 100), "shoalgrass");
    survey.scar("flat", "LINESTRING (10 50, 110 50)", 0.3);
    survey.scar("dug", "LINESTRING (10 20, 110 20)", 0.3);
    Scar dug = survey.scars().get(1);
    survey
        .scars()
        .set(
            1,
            new Scar(
                dug.id(),
                dug.ref(),
                dug.geometry(),
                dug.cause(),
                dug.widthMetres(),
                dug.widthSource(),
                Optional.empty(),
                OptionalDouble.of(0.1)));
    SurveyRecovery recovery = estimate();
    ScarRecovery deep =
        recovery.scars().stream().filter(s -> s.scarId().equals("dug")).findFirst().orElseThrow();
    assertThat(deep.alone().orElseThrow().yearsToFull().middle())
        .isCloseTo(1.7 * 1.5, within(1e-9));
    assertThat(deep.basis()).doesNotContain("not mapped");
  }

  @Test
  void theBedWithMostOfTheLineGivesTheSpecies() {
    bed("west", TestSurvey.box(0, 0, 100, 100), "shoalgrass");
    bed("east", TestSurvey.box(100, 0, 200, 100), "turtlegrass");
    survey.scar("s", "LINESTRING (70 50, 140 50)", 0.3);
    assertThat(estimate().scars().get(0).bedId()).isEqualTo("east");
  }

  /** Two scars of 100 m by 0.3 m that cross cover 59.91 m², not 60. */
  @Test
  void overlapsCountOnceInBedsAndAreas() {
    bed("b", TestSurvey.box(0, 0, 200, 200), "turtlegrass");
    survey.scar("a", "LINESTRING (50 100, 150 100)", 0.3);
    survey.scar("c", "LINESTRING (100 50, 100 150)", 0.3);
    SurveyRecovery recovery = estimate();
    double sum =
        recovery.scars().stream()
            .mapToDouble(s -> s.alone().orElseThrow().lossServiceHectareYears().middle())
            .sum();
    BedLoss bed = recovery.beds().get(0);
    assertThat(bed.scarredSquareMetres()).isCloseTo(59.91, within(1e-6));
    assertThat(bed.forecastSquareMetres()).isCloseTo(59.91, within(1e-6));
    assertThat(bed.alone().orElseThrow().middle()).isCloseTo(sum * 59.91 / 60, within(1e-12));
    assertThat(recovery.worked().hectares()).isCloseTo(59.91e-4, within(1e-10));
  }

  @ParameterizedTest
  @EnumSource(Estimate.class)
  void areasAddUpToTheWholeAndSoDoYears(Estimate estimate) {
    bed("b1", TestSurvey.box(0, 0, 100, 100), "turtlegrass");
    bed("b2", TestSurvey.box(100, 0, 200, 100), "manateegrass");
    survey.scar("s1", "LINESTRING (10 50, 90 50)", 0.3);
    survey.scar("s2", "LINESTRING (30 20, 160 20)", 0.5);
    survey.scar("s3", TestSurvey.box(150, 60, 170, 90), 0);
    survey.area("north", TestSurvey.box(0, 40, 60, 100));
    SurveyRecovery recovery = estimate();
    AreaLoss whole = recovery.whole();
    assertThat(whole.kind()).isEqualTo(Kind.WHOLE_SURVEY);
    assertThat(recovery.areas()).hasSize(3);
    double inside =
        recovery.areas().stream()
            .filter(area -> area.kind() != Kind.WHOLE_SURVEY)
            .mapToDouble(area -> estimate.ofLoss(area.alone().orElseThrow()))
            .sum();
    double loss = estimate.ofLoss(whole.alone().orElseThrow());
    assertThat(inside).isCloseTo(loss, within(1e-9));
    Discounting discounting = recovery.conventions().discounting();
    assertThat(
            recovery
                .worked()
                .alone()
                .of(estimate)
                .serviceHectareYears(recovery.worked().hectares(), discounting))
        .isCloseTo(loss, within(1e-9));
    assertThat(
            recovery
                .worked()
                .planted()
                .of(estimate)
                .serviceHectareYears(recovery.worked().hectares(), discounting))
        .isCloseTo(estimate.ofLoss(whole.planted().orElseThrow()), within(1e-9));
    assertThat(estimate.ofLoss(whole.compensatingHectares().orElseThrow()))
        .isCloseTo(loss / recovery.conventions().projectGainPerHectare(), within(1e-12));
  }

  /** The project of the check values: 0 to 1 in 3 years from year 1, 20 years, mid-year, 3 %. */
  @Test
  void projectGainIsThatOfTheCheckValues() {
    assertThat(estimate().conventions().projectGainPerHectare()).isCloseTo(13.247350, within(5e-7));
  }

  @Test
  void bentLineGoesByItsOutline() {
    bed("b", TestSurvey.box(0, 0, 200, 100), "turtlegrass");
    // A hairpin whose legs overlap: a band of 0.7 m.
    survey.scar("s", "LINESTRING (10 50, 60 50, 60 50.3, 10 50.3)", 0.4);
    Range years = estimate().scars().get(0).alone().orElseThrow().yearsToFull();
    assertThat(years.middle()).isCloseTo(0.35 / 0.03, within(0.2));
  }

  @Test
  void surveyWithoutScarsLosesNothing() {
    bed("b", TestSurvey.box(0, 0, 200, 100), "turtlegrass");
    SurveyRecovery recovery = estimate();
    assertThat(recovery.scars()).isEmpty();
    assertThat(recovery.whole().alone()).contains(Range.exactly(0));
    assertThat(recovery.worked().alone().middle().meanShares()).isEmpty();
  }
}
