package org.meadowmark.core.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.meadowmark.core.TestParameters;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.recovery.Estimate;
import org.meadowmark.core.measure.recovery.LossConventions;
import org.meadowmark.core.measure.recovery.Planting;
import org.meadowmark.core.measure.recovery.ScarRecovery;
import org.meadowmark.core.measure.recovery.ScarRegrowth;
import org.meadowmark.core.measure.recovery.SurveyRecoveryEstimator;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.Parameters;

class LaterGainsTest {
  /** The mean of each year by many small steps of the bare shares, each year by its own weight. */
  @ParameterizedTest
  @CsvSource({"0, 0", "0, 2", "0.03, 0", "0.03, 1", "0.03, 4", "0.1, 3"})
  void gainIsTheDifferenceOfTheCoursesYearByYear(double rate, int yearsLater) {
    Case one = new Case(rate);
    double sum = 0;
    int steps = 2_000;
    for (int year = 0; year < 15; year++) {
      double difference = 0;
      for (int i = 0; i < steps; i++) {
        double time = year + (i + 0.5) / steps;
        difference +=
            one.regrowth().bareShare(Estimate.MIDDLE, time)
                - one.regrowth().bareShare(Estimate.MIDDLE, time, one.planting, yearsLater);
      }
      sum += difference / steps / Math.pow(1 + rate, year + 0.5);
    }
    double hectares = one.recovery.areaInBedsSquareMetres() / 10_000;
    assertThat(one.later().grass(one.scar, yearsLater))
        .isCloseTo(hectares * sum, within(2e-3 * hectares * sum));
  }

  @Test
  void plantingAfterTheScarHasClosedGainsNothing() {
    Case one = new Case(0.03);
    assertThat(one.later().grass(one.scar, 40)).isCloseTo(0, within(1e-12));
    assertThat(one.later().grass(one.scar, 1)).isLessThan(one.later().grass(one.scar, 0));
    assertThat(one.later().share(2)).isCloseTo(1 / 1.03 / 1.03, within(1e-12));
  }

  /** One scar in a bed of turtlegrass. */
  private static final class Case {
    final LossConventions conventions;
    final Planting planting;
    final ScarRecovery recovery;
    final RepairScar scar;

    Case(double rate) {
      Parameters parameters = TestParameters.of("discount_rate", rate);
      TestSurvey survey = new TestSurvey();
      survey
          .beds()
          .add(
              new Bed(
                  "b",
                  FeatureRef.layer("beds", ""),
                  TestSurvey.wkt(TestSurvey.box(0, 0, 200, 100)),
                  "turtlegrass",
                  ""));
      survey.scar("s", "LINESTRING (10 50, 110 50)", 0.6);
      Measurement measurement = survey.measure();
      conventions = LossConventions.of(parameters, OptionalInt.empty());
      planting = Planting.of(parameters.recovery());
      recovery =
          new SurveyRecoveryEstimator(
                  parameters, ReferenceTablesReader.bundled(), OptionalInt.empty(), Progress.NONE)
              .estimate(measurement)
              .scars()
              .get(0);
      scar =
          new RepairScar(
              measurement.scars().get(0),
              "R1",
              recovery.species(),
              recovery.areaInBedsSquareMetres(),
              1,
              1,
              planting.survival(),
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              new RepairCost(0, 0, 0),
              recovery.gainServiceHectareYears(),
              "",
              OptionalDouble.empty(),
              RescarRisk.UNKNOWN,
              1,
              Fitness.PLANT,
              List.of(),
              List.of());
    }

    ScarRegrowth regrowth() {
      return recovery.regrowth().orElseThrow();
    }

    LaterGains later() {
      return new LaterGains(conventions, planting, List.of(recovery));
    }
  }
}
