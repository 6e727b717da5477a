package org.meadowmark.core.write.loss;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.TestParameters;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.measure.recovery.SurveyRecovery;
import org.meadowmark.core.measure.recovery.SurveyRecoveryEstimator;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.reference.ScarRecoveryTime;

/** Follows the printout with its printed figures alone, as a reader with a calculator would. */
class WorkedLossTextTest {
  private static final Map<String, ScarRecoveryTime> PUBLISHED =
      ReferenceTablesReader.bundled().scarRecovery();

  private static final Pattern YEAR =
      Pattern.compile(" +(\\d+) +(\\d{4}) +([\\d.]+) +([\\d.]+) +([\\d.]+) +([\\d.]+)");

  private static SurveyRecovery recovery(Object... parameters) {
    TestSurvey survey = new TestSurvey();
    survey
        .beds()
        .add(
            new Bed(
                "b",
                new FeatureRef("beds.gpkg", "beds", "b"),
                TestSurvey.wkt(TestSurvey.box(0, 0, 300, 100)),
                "turtlegrass",
                ""));
    survey
        .beds()
        .add(
            new Bed(
                "e",
                new FeatureRef("beds.gpkg", "beds", "e"),
                TestSurvey.wkt(TestSurvey.box(400, 0, 600, 100)),
                "eelgrass",
                ""));
    survey.scar("s1", "LINESTRING (10 50, 210 50)", 0.5).scar("s2", "LINESTRING (420 9, 520 9)", 1);
    return new SurveyRecoveryEstimator(
            TestParameters.of(parameters),
            ReferenceTablesReader.bundled(),
            OptionalInt.of(2025),
            Progress.NONE)
        .estimate(survey.measure());
  }

  @Test
  void printedFiguresGiveThePrintedProductsAndSums() {
    SurveyRecovery recovery = recovery();
    String text = WorkedLossText.of("Invented Sound", recovery, PUBLISHED);
    String section =
        text.substring(
            text.indexOf("Without planting, middle"), text.indexOf("Without planting, high"));
    double hectares = 0.01;
    assertThat(text).contains("Of it with a forecast: 0.0100000000 ha");
    double sum = 0;
    int year = 0;
    Matcher line = YEAR.matcher(section);
    while (line.find()) {
      assertThat(Integer.parseInt(line.group(1))).isEqualTo(year);
      assertThat(Integer.parseInt(line.group(2))).isEqualTo(2025 + year);
      double factor = Double.parseDouble(line.group(4));
      assertThat(factor).isCloseTo(1 / Math.pow(1.03, year + 0.5), within(5.1e-11));
      double product = Double.parseDouble(line.group(5));
      assertThat(product)
          .isCloseTo(hectares * Double.parseDouble(line.group(3)) * factor, within(5.1e-9));
      sum += product;
      assertThat(Double.parseDouble(line.group(6))).isCloseTo(sum, within(6e-8));
      year++;
    }
    // 0.25 m a side at 0.03 m a year: 8.33 years.
    assertThat(year).isEqualTo(9);
    assertThat(section)
        .contains("= %.6f discounted".formatted(recovery.whole().alone().orElseThrow().middle()));
    assertThat(recovery.whole().alone().orElseThrow().middle()).isCloseTo(sum, within(6e-8));
  }

  @Test
  void statesEveryConventionAndWhatIsLeftOut() {
    String text = WorkedLossText.of("Invented Sound", recovery(), PUBLISHED);
    for (String part :
        List.of(
            "Base year (year 0):   2025",
            "Discount rate:        3 % a year",
            "service counts at the middle of the year",
            "nothing counts after year 99",
            "Without a forecast:   0.010000 ha",
            "1 scar(s): species eelgrass: no published recovery time",
            "Source for turtlegrass: 3.6 to 6.4 years: Dawes",
            "from memory",
            "Not closed at the horizon (low, middle, high): 0, 0, 0",
            "gain of one hectare 13.247350")) {
      assertThat(text).contains(part);
    }
  }

  @Test
  void withoutDiscountEveryFactorIsOne() {
    String text =
        WorkedLossText.of("x", recovery("discount_rate", 0, "within_year", "end"), PUBLISHED);
    Matcher line = YEAR.matcher(text);
    int lines = 0;
    while (line.find()) {
      assertThat(Double.parseDouble(line.group(4))).isEqualTo(1);
      lines++;
    }
    assertThat(lines).isGreaterThan(20);
    assertThat(text).contains("so nothing is discounted");
  }

  @Test
  void nothingKnownIsSaid() {
    TestSurvey survey = new TestSurvey().bed("e", TestSurvey.box(0, 0, 100, 100));
    survey.scar("s", "LINESTRING (10 10, 60 10)", 0.4);
    SurveyRecovery recovery =
        new SurveyRecoveryEstimator(
                TestParameters.of(),
                ReferenceTablesReader.bundled(),
                OptionalInt.empty(),
                Progress.NONE)
            .estimate(survey.measure());
    assertThat(WorkedLossText.of("x", recovery, PUBLISHED))
        .contains("not stated")
        .contains("nothing to sum")
        .contains("Without a forecast:   0.002000 ha");
  }
}
