package org.meadowmark.core.change.comparability;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.change.CommonGround;
import org.meadowmark.core.change.Scope;
import org.meadowmark.core.change.comparability.SurveyDifference.Judgement;
import org.meadowmark.core.survey.ComparisonParameters;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.PositionalAccuracy;
import org.meadowmark.core.survey.SurveyFacts;

class SurveyComparisonTest {
  private static final ComparisonParameters LIMITS =
      ParametersTable.bundled().defaults().comparison();
  private static final LocalDate DAY = LocalDate.of(2025, 6, 14);

  private static SurveyTraits traits(
      LocalDate date, double hours, double secchi, double pixel, double rmse) {
    return new SurveyTraits(
        "sound",
        date,
        new SurveyFacts(Optional.of("drone"), OptionalDouble.of(hours), OptionalDouble.of(secchi)),
        OptionalDouble.of(pixel),
        Optional.of(PositionalAccuracy.ofRadialRmse(rmse)),
        "EPSG:32621",
        1);
  }

  private static CommonGround ground(TestSurvey earlier, TestSurvey later) {
    return CommonGround.of(earlier.build(), later.build());
  }

  private static TestSurvey beds() {
    return new TestSurvey().bed("1", TestSurvey.box(0, 0, 100, 100));
  }

  private static SurveyDifference in(Aspect aspect, SurveyTraits earlier, SurveyTraits later) {
    return in(aspect, SurveyComparison.of(earlier, later, ground(beds(), beds()), LIMITS));
  }

  private static SurveyDifference in(Aspect aspect, List<SurveyDifference> differences) {
    return differences.stream().filter(one -> one.aspect() == aspect).findFirst().orElseThrow();
  }

  @Test
  void likeSurveysAreAlikeInEverything() {
    SurveyTraits earlier = traits(DAY, 10, 2, 0.1, 0.3);
    SurveyTraits later = traits(DAY.plusYears(1), 10, 2, 0.1, 0.3);

    assertThat(SurveyComparison.of(earlier, later, ground(beds(), beds()), LIMITS))
        .hasSize(Aspect.values().length)
        .allSatisfy(one -> assertThat(one.judgement()).isEqualTo(Judgement.ALIKE));
  }

  @ParameterizedTest
  @CsvSource({
    "2026-06-14, 0, ALIKE",
    "2026-08-13, 60, DIFFERENT",
    "2026-08-14, 61, UNSAFE",
    "2026-01-01, 164, UNSAFE",
    "2026-12-14, 182, UNSAFE"
  })
  void seasonsOfTheYearAreHeldAgainstEachOtherTheShortWayRound(
      LocalDate date, int days, Judgement judgement) {
    SurveyDifference difference =
        in(Aspect.SEASON_OF_YEAR, traits(DAY, 10, 2, 0.1, 0.3), traits(date, 10, 2, 0.1, 0.3));

    assertThat(SurveyComparison.daysApart(DAY, date)).isEqualTo(days);
    assertThat(difference.judgement()).isEqualTo(judgement);
    assertThat(SurveyComparison.daysApart(LocalDate.of(2024, 12, 31), LocalDate.of(2026, 1, 1)))
        .isEqualTo(1);
  }

  @ParameterizedTest
  @CsvSource({
    "EFFORT, 20, 2, 0.1, 0.3, DIFFERENT",
    "EFFORT, 21, 2, 0.1, 0.3, UNSAFE",
    "WATER_CLARITY, 10, 1, 0.1, 0.3, DIFFERENT",
    "WATER_CLARITY, 10, 0.9, 0.1, 0.3, UNSAFE",
    "RESOLUTION, 10, 2, 0.2, 0.3, DIFFERENT",
    "RESOLUTION, 10, 2, 0.25, 0.3, UNSAFE",
    "POSITIONAL_ACCURACY, 10, 2, 0.1, 5, DIFFERENT",
    "POSITIONAL_ACCURACY, 10, 2, 0.1, 6, UNSAFE"
  })
  void whatDiffersTooMuchIsUnsafe(
      Aspect aspect, double hours, double secchi, double pixel, double rmse, Judgement judgement) {
    SurveyTraits earlier = traits(DAY, 10, 2, 0.1, 0.3);
    SurveyTraits later = traits(DAY.plusYears(1), hours, secchi, pixel, rmse);

    assertThat(in(aspect, earlier, later).judgement()).isEqualTo(judgement);
    assertThat(SurveyComparison.of(earlier, later, ground(beds(), beds()), LIMITS))
        .filteredOn(one -> one.aspect() != aspect)
        .allSatisfy(one -> assertThat(one.judgement()).isEqualTo(Judgement.ALIKE));
  }

  @Test
  void whatIsNotStatedIsSaidAndPositionsMustBe() {
    SurveyTraits nothing =
        new SurveyTraits(
            "sound",
            DAY.plusYears(1),
            SurveyFacts.NONE,
            OptionalDouble.empty(),
            Optional.empty(),
            "EPSG:32621",
            1);
    List<SurveyDifference> differences =
        SurveyComparison.of(traits(DAY, 10, 2, 0.1, 0.3), nothing, ground(beds(), beds()), LIMITS);

    for (Aspect aspect :
        List.of(Aspect.METHOD, Aspect.EFFORT, Aspect.WATER_CLARITY, Aspect.RESOLUTION)) {
      assertThat(in(aspect, differences).judgement()).isEqualTo(Judgement.NOT_STATED);
    }
    assertThat(in(Aspect.POSITIONAL_ACCURACY, differences).judgement()).isEqualTo(Judgement.UNSAFE);
  }

  /** By hand: 0.4 of the earlier bed's hectare is inside the later survey's area. */
  @Test
  void surveysOfOtherPartsOfTheBedsAreUnsafe() {
    CommonGround ground =
        ground(
            beds().area("west", TestSurvey.box(0, 0, 50, 100)),
            beds()
                .area("west", TestSurvey.box(0, 0, 50, 100))
                .surveyed(TestSurvey.box(-10, -10, 40, 110)));

    assertThat(ground.earlierHectares()).isEqualTo(1);
    assertThat(ground.laterHectares()).isEqualTo(0.4);
    assertThat(ground.hectares()).isEqualTo(0.4);
    assertThat(ground.hectaresByScope().get(Scope.OUTSIDE)).isZero();
    assertThat(ground.commonShare()).isEqualTo(1);

    CommonGround apart =
        ground(
            beds().surveyed(TestSurvey.box(-10, -10, 50, 110)),
            beds().surveyed(TestSurvey.box(40, -10, 110, 110)));
    assertThat(apart.hectares()).isEqualTo(0.1);
    assertThat(
            in(
                    Aspect.SURVEYED_AREA,
                    SurveyComparison.of(
                        traits(DAY, 10, 2, 0.1, 0.3),
                        traits(DAY.plusYears(1), 10, 2, 0.1, 0.3),
                        apart,
                        LIMITS))
                .judgement())
        .isEqualTo(Judgement.UNSAFE);
    CommonGround nothing =
        ground(
            beds().surveyed(TestSurvey.box(-10, -10, 50, 110)),
            beds().surveyed(TestSurvey.box(60, -10, 110, 110)));
    assertThat(nothing.hectares()).isZero();
  }

  @Test
  void anotherBedLayerIsSaid() {
    TestSurvey other = new TestSurvey().bed("1", TestSurvey.box(0, 0, 100, 99));

    assertThat(ground(beds(), beds()).sameBeds()).isTrue();
    assertThat(ground(beds(), other).sameBeds()).isFalse();
  }
}
