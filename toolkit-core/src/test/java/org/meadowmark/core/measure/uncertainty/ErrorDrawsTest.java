package org.meadowmark.core.measure.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.statistics.descriptive.Mean;
import org.apache.commons.statistics.descriptive.StandardDeviation;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.survey.PositionalAccuracy;

/** Distribution of the errors, with bounds of four standard errors of the statistic. */
class ErrorDrawsTest {
  private static final int DRAWS = 100_000;
  private static final ErrorModel MODEL =
      new ErrorModel(DRAWS, 5, Optional.of(PositionalAccuracy.ofRadialRmse(2)));

  private static ErrorDraws errors(String id, double variation, String shared) {
    return new ErrorDraws(
        new UncertainScar(
            id,
            new GeometryFactory().createLineString(),
            0.4,
            1,
            variation,
            Optional.ofNullable(shared)),
        MODEL);
  }

  private static double[] factors(ErrorDraws errors) {
    return IntStream.range(0, DRAWS).mapToDouble(errors::widthFactor).toArray();
  }

  private static double[][] shifts(ErrorDraws errors) {
    double[][] shifts = new double[2][DRAWS];
    IntStream.range(0, DRAWS).forEach(d -> errors.shift(d, shifts[0], shifts[1], d));
    return shifts;
  }

  private static double correlation(double[] a, double[] b) {
    double meanA = Mean.of(a).getAsDouble();
    double meanB = Mean.of(b).getAsDouble();
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += (a[i] - meanA) * (b[i] - meanB);
    }
    return sum
        / a.length
        / StandardDeviation.of(a).getAsDouble()
        / StandardDeviation.of(b).getAsDouble();
  }

  /** Lognormal with mean 1 and coefficient of variation 0.3; its median is 1/√(1 + 0.3²). */
  @Test
  void widthFactorIsLognormalWithMeanOne() {
    double[] factors = factors(errors("s", 0.3, null));
    double standardError = 0.3 / Math.sqrt(DRAWS);
    assertThat(Mean.of(factors).getAsDouble()).isCloseTo(1, within(4 * standardError));
    assertThat(StandardDeviation.of(factors).getAsDouble())
        .isCloseTo(0.3, within(12 * standardError));
    Arrays.sort(factors);
    assertThat(factors[0]).isPositive();
    double below = 4 * Math.sqrt(0.25 / DRAWS);
    double median = 1 / Math.sqrt(1 + 0.09);
    assertThat(Arrays.stream(factors).filter(f -> f < median).count() / (double) DRAWS)
        .isCloseTo(0.5, within(below));
  }

  /** RMSE_r 2 m: √2 m in each axis, independent of each other and of the width. */
  @Test
  void shiftIsCircularNormal() {
    double[][] shifts = shifts(errors("s", 0.3, null));
    double axis = Math.sqrt(2);
    for (double[] shift : shifts) {
      assertThat(Mean.of(shift).getAsDouble()).isCloseTo(0, within(4 * axis / Math.sqrt(DRAWS)));
      assertThat(StandardDeviation.of(shift).getAsDouble())
          .isCloseTo(axis, within(4 * axis / Math.sqrt(2.0 * DRAWS)));
    }
    double radius95 = PositionalAccuracy.ofRadialRmse(2).accuracy95Metres();
    long within95 =
        IntStream.range(0, DRAWS)
            .filter(d -> Math.hypot(shifts[0][d], shifts[1][d]) < radius95)
            .count();
    assertThat(within95 / (double) DRAWS)
        .isCloseTo(0.95, within(4 * Math.sqrt(0.95 * 0.05 / DRAWS)));
    double none = 4 / Math.sqrt(DRAWS);
    assertThat(correlation(shifts[0], shifts[1])).isCloseTo(0, within(none));
    assertThat(correlation(shifts[0], factors(errors("s", 0.3, null)))).isCloseTo(0, within(none));
  }

  @Test
  void scarsErrAloneUnlessTheyShareADefault() {
    double none = 4 / Math.sqrt(DRAWS);
    assertThat(correlation(factors(errors("1", 0.3, null)), factors(errors("2", 0.3, null))))
        .isCloseTo(0, within(none));
    assertThat(factors(errors("1", 0.3, "propeller")))
        .isEqualTo(factors(errors("2", 0.3, "propeller")));
    assertThat(
            correlation(
                factors(errors("1", 0.3, "propeller")), factors(errors("2", 0.3, "unknown"))))
        .isCloseTo(0, within(none));
    assertThat(correlation(shifts(errors("1", 0.3, "a"))[0], shifts(errors("2", 0.3, "a"))[0]))
        .isCloseTo(0, within(none));
  }

  @Test
  void noVariationMeansNoError() {
    assertThat(factors(errors("s", 0, null))).containsOnly(1);
  }
}
