package org.meadowmark.core.measure.recovery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.survey.WithinYear;

/** Years from width/2 over the rate a side, areas and discounted sums in closed form. */
class ScarRegrowthTest {
  private static final Range RATE = Range.exactly(0.14);

  /** width/2/0.14, computed by hand. */
  @ParameterizedTest
  @CsvSource({"0.30, 1.0714", "0.50, 1.7857"})
  void lineCloses(double width, double years) {
    ScarRegrowth scar = new ScarRegrowth(new StripShape(width, List.of(80.0)), RATE, 1);
    assertThat(scar.yearsToFull().middle()).isCloseTo(years, within(5e-5));
    assertThat(scar.bareShare(Estimate.MIDDLE, years + 0.001)).isZero();
  }

  @Test
  void circleCloses() {
    ScarRegrowth scar = new ScarRegrowth(new OutlineShape(ScarShapeTest.disc(6.2317), 1), RATE, 1);
    assertThat(scar.yearsToFull().middle()).isCloseTo(44.51, within(0.02));
    // π(R − et)² is half of πR² at R(1 − 1/√2)/e.
    assertThat(scar.yearsToHalf().middle())
        .isCloseTo(6.2317 * (1 - Math.sqrt(0.5)) / 0.14, within(0.02));
  }

  /** Without discount the loss is the integral of (L − 2et)(w − 2et). */
  @Test
  void lossWithoutDiscountIsTheIntegral() {
    double length = 40;
    double width = 0.5;
    double rate = 0.03;
    ScarRegrowth scar =
        new ScarRegrowth(new StripShape(width, List.of(length)), Range.exactly(rate), 1);
    double end = width / 2 / rate;
    double integral =
        length * width * end
            - rate * end * end * (length + width)
            + 4 * rate * rate * end * end * end / 3;
    double loss =
        scar.outlook(length * width / 10_000, new Discounting(0, WithinYear.MIDDLE), 1000)
            .lossServiceHectareYears()
            .middle();
    assertThat(loss).isCloseTo(integral / 10_000, within(1e-12));
  }

  @Test
  void excavationAndSlowRatesCostTime() {
    ScarShape strip = new StripShape(0.3, List.of(50.0));
    ScarRegrowth flat = new ScarRegrowth(strip, new Range(0.02, 0.03, 0.06), 1);
    ScarRegrowth dug = new ScarRegrowth(strip, new Range(0.02, 0.03, 0.06), 2);
    assertThat(flat.yearsToFull().low()).isCloseTo(2.5, within(1e-12));
    assertThat(flat.yearsToFull().middle()).isCloseTo(5, within(1e-12));
    assertThat(flat.yearsToFull().high()).isCloseTo(7.5, within(1e-12));
    assertThat(dug.yearsToFull().middle()).isCloseTo(10, within(1e-12));
  }

  @Test
  void horizonCutsTheSum() {
    ScarRegrowth scar = new ScarRegrowth(new StripShape(1, List.of(50.0)), Range.exactly(0.01), 1);
    assertThat(scar.course(Estimate.MIDDLE, 3).meanShares()).hasSize(3);
    assertThat(scar.course(Estimate.MIDDLE, 100).meanShares()).hasSize(50);
  }

  @Test
  void widthZeroLosesNothing() {
    ScarRegrowth scar = new ScarRegrowth(new StripShape(0, List.of(50.0)), RATE, 1);
    Outlook outlook = scar.outlook(0, new Discounting(0, WithinYear.START), 100);
    assertThat(outlook.lossServiceHectareYears()).isEqualTo(Range.exactly(0));
    assertThat(outlook.yearsToFull()).isEqualTo(Range.exactly(0));
  }

  @Test
  void unitsThatAllDieChangeNothing() {
    ScarRegrowth scar =
        new ScarRegrowth(new StripShape(0.4, List.of(50.0)), Range.exactly(0.03), 1);
    Planting dead = new Planting(0.5, Range.exactly(0), 0.1, true);
    for (double years = 0; years < 7; years += 0.3) {
      assertThat(scar.bareShare(Estimate.MIDDLE, years, dead, 0))
          .isEqualTo(scar.bareShare(Estimate.MIDDLE, years));
    }
  }

  /** The model drawn at random: units thrown out one by one, points looked up one by one. */
  @ParameterizedTest
  @CsvSource({"0.4, 0.5, 1", "0.4, 3, 1", "1.5, 2, 3"})
  void plantedShareIsThatOfDrawnUnits(double width, double years, int rows) {
    double spacing = 0.5;
    double survival = 0.4;
    double rate = 0.05;
    double start = 0.1;
    Planting planting = new Planting(spacing, Range.exactly(survival), start, true);
    assertThat(planting.rows(width)).isEqualTo(rows);
    double length = 4000;
    ScarRegrowth scar =
        new ScarRegrowth(new StripShape(width, List.of(length)), Range.exactly(rate), 1);
    double radius = start + rate * years;
    double half = width / 2 - rate * years;
    Random random = new Random(7);
    int units = (int) (length / spacing) + 1;
    boolean[][] lives = new boolean[rows][units];
    double[] shift = new double[rows];
    for (int row = 0; row < rows; row++) {
      shift[row] = random.nextDouble() * spacing;
      for (int unit = 0; unit < units; unit++) {
        lives[row][unit] = random.nextDouble() < survival;
      }
    }
    int bare = 0;
    int points = 400_000;
    for (int i = 0; i < points; i++) {
      double x = 2 + random.nextDouble() * (length - 4);
      double y = (2 * random.nextDouble() - 1) * half;
      boolean covered = false;
      for (int row = 0; row < rows && !covered; row++) {
        double dy = y - (-width / 2 + (row + 0.5) * width / rows);
        int near = (int) Math.round((x - shift[row]) / spacing);
        for (int unit = near - 2; unit <= near + 2 && !covered; unit++) {
          covered = lives[row][unit] && Math.hypot(x - shift[row] - unit * spacing, dy) <= radius;
        }
      }
      bare += covered ? 0 : 1;
    }
    double expected = scar.bareShare(Estimate.MIDDLE, years) * bare / points;
    assertThat(scar.bareShare(Estimate.MIDDLE, years, planting, 0))
        .isCloseTo(expected, within(0.012));
  }

  @ParameterizedTest
  @EnumSource(Estimate.class)
  void plantingHelpsAndItsDelayCosts(Estimate estimate) {
    ScarRegrowth scar =
        new ScarRegrowth(new StripShape(0.4, List.of(50.0)), new Range(0.02, 0.03, 0.05), 1.5);
    Planting planting = new Planting(0.5, new Range(0.37, 0.38, 0.42), 0.1, true);
    Discounting discounting = new Discounting(0.03, WithinYear.MIDDLE);
    double alone = scar.course(estimate, 100).serviceHectareYears(1, discounting);
    double now = scar.course(estimate, 100, planting, 0).serviceHectareYears(1, discounting);
    double later = scar.course(estimate, 100, planting, 3).serviceHectareYears(1, discounting);
    assertThat(now).isLessThan(later);
    assertThat(later).isLessThan(alone);
    assertThat(scar.yearsToFull(planting, 0).middle()).isLessThan(scar.yearsToFull().middle());
    assertThat(scar.yearsToHalf(planting, 0).middle()).isLessThan(scar.yearsToHalf().middle());
  }
}
