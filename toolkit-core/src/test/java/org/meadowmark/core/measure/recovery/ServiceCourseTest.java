package org.meadowmark.core.measure.recovery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.meadowmark.core.survey.WithinYear;

/** Closed forms of the discounted sums, and values computed twice from the formulas by hand. */
class ServiceCourseTest {
  private static final Offset<Double> SIX_DECIMALS = within(5e-7);

  @ParameterizedTest
  @CsvSource({"START, 8.786109, 2.414301", "MIDDLE, 8.657210, 2.378881", "END, 8.530203, 2.343981"})
  void oneHectareAtThreePercent(WithinYear when, double tenYears, double linearFiveYears) {
    Discounting discounting = new Discounting(0.03, when);
    assertThat(ServiceCourse.total(0, 10).serviceHectareYears(1, discounting))
        .isCloseTo(tenYears, SIX_DECIMALS);
    assertThat(ServiceCourse.linearDecline(0, 5).serviceHectareYears(1, discounting))
        .isCloseTo(linearFiveYears, SIX_DECIMALS);
  }

  /** Sum of a geometric series: (1 + r) / r. */
  @Test
  void permanentLossIsThePerpetuity() {
    Discounting start = new Discounting(0.03, WithinYear.START);
    assertThat(ServiceCourse.permanent(0).serviceHectareYears(1, start))
        .isCloseTo(1.03 / 0.03, within(1e-10));
    assertThat(
            ServiceCourse.permanent(0).serviceHectareYears(1, new Discounting(0, WithinYear.START)))
        .isInfinite();
  }

  /** Arithmetic–geometric series: Σ (1 − (k + ½)/n) vᵏ. */
  @Property
  void linearDeclineIsTheArithmeticGeometricSeries(
      @ForAll @IntRange(min = 1, max = 60) int years,
      @ForAll @DoubleRange(min = 0.01, max = 0.2) double rate) {
    double v = 1 / (1 + rate);
    double vn = Math.pow(v, years);
    double geometric = (1 - vn) / (1 - v);
    double arithmetic =
        v * (1 - years * Math.pow(v, years - 1) + (years - 1) * vn) / (1 - v) / (1 - v);
    double expected = (1 - 0.5 / years) * geometric - arithmetic / years;
    assertThat(
            ServiceCourse.linearDecline(0, years)
                .serviceHectareYears(1, new Discounting(rate, WithinYear.START)))
        .isCloseTo(expected, within(1e-8 * years));
  }

  /** A project that rises from 0 to 1 in 3 years from year 1 and lasts to year 20, mid-year. */
  @Test
  void compensatingAreaOfALinearLoss() {
    Discounting middle = new Discounting(0.03, WithinYear.MIDDLE);
    List<Double> shares = new ArrayList<>(List.of(1 / 6.0, 0.5, 5 / 6.0));
    while (shares.size() < 20) {
      shares.add(1.0);
    }
    double gain = new ServiceCourse(1, shares, false).serviceHectareYears(1, middle);
    assertThat(gain).isCloseTo(13.247350, SIX_DECIMALS);
    double loss = ServiceCourse.linearDecline(0, 5).serviceHectareYears(1, middle);
    assertThat(ServiceCourse.compensatingHectares(loss, gain)).isCloseTo(0.179574, SIX_DECIMALS);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ServiceCourse.compensatingHectares(loss, 0));
  }

  @Property
  void movingTheBaseYearLeavesTheCompensatingAreaAsItIs(
      @ForAll @IntRange(min = -20, max = 20) int shift,
      @ForAll @DoubleRange(min = 0, max = 0.1) double rate) {
    Discounting discounting = new Discounting(rate, WithinYear.MIDDLE);
    double here =
        ServiceCourse.linearDecline(0, 7.5).serviceHectareYears(2, discounting)
            / ServiceCourse.total(3, 12).serviceHectareYears(1, discounting);
    double moved =
        ServiceCourse.linearDecline(shift, 7.5).serviceHectareYears(2, discounting)
            / ServiceCourse.total(3 + shift, 12).serviceHectareYears(1, discounting);
    assertThat(moved).isCloseTo(here, within(1e-9));
  }

  @Property
  void aHigherRateLowersTheLossAndNoRateLeavesTheArea(
      @ForAll @DoubleRange(min = 0.5, max = 40) double years,
      @ForAll @DoubleRange(min = 0.01, max = 0.2) double rate) {
    ServiceCourse loss = ServiceCourse.linearDecline(0, years);
    double plain = loss.serviceHectareYears(3, new Discounting(0, WithinYear.MIDDLE));
    assertThat(plain).isCloseTo(3 * years / 2, within(1e-9));
    assertThat(loss.serviceHectareYears(3, new Discounting(rate, WithinYear.MIDDLE)))
        .isLessThan(plain);
  }

  @Test
  void printoutAddsUp() {
    Discounting end = new Discounting(0.03, WithinYear.END);
    ServiceCourse course = ServiceCourse.linearDecline(2, 4.5);
    assertThat(
            course.years(7, end).stream()
                .mapToDouble(ServiceCourse.Year::serviceHectareYears)
                .sum())
        .isEqualTo(course.serviceHectareYears(7, end));
    assertThat(course.years(7, end)).hasSize(5);
    assertThat(course.years(7, end).get(0).factor()).isCloseTo(Math.pow(1.03, -3), within(1e-15));
  }

  @Test
  void nonsenseIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> new Discounting(-0.1, WithinYear.END));
    assertThatIllegalArgumentException().isThrownBy(() -> ServiceCourse.linearDecline(0, 0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ServiceCourse(0, List.of(1.2), false));
  }
}
