package org.meadowmark.core.measure.recovery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ContinuousLossTest {
  /** The integral worked out by the trapezium rule in a million steps. */
  @Test
  void isTheDiscountedTriangle() {
    int steps = 1_000_000;
    for (double years : new double[] {0.5, 5, 9.5, 40}) {
      for (double rate : new double[] {0.001, 0.03, 0.1}) {
        double sum = 0;
        for (int i = 0; i <= steps; i++) {
          double t = years * i / steps;
          double end = i == 0 || i == steps ? 0.5 : 1;
          sum += end * (1 - t / years) * Math.pow(1 + rate, -t);
        }
        assertThat(ContinuousLoss.yearsLost(years, rate))
            .isCloseTo(sum * years / steps, within(1e-8));
      }
    }
  }

  /** Recovery in 5 years at 3 %: 2.381258, and 2.5 without discount; computed apart by hand. */
  @Test
  void fiveYearsAtThreePercent() {
    assertThat(ContinuousLoss.yearsLost(5, 0.03)).isCloseTo(2.381258, within(5e-7));
    assertThat(ContinuousLoss.yearsLost(5, 0)).isEqualTo(2.5);
    assertThat(ContinuousLoss.yearsLost(5, 1e-5)).isCloseTo(2.5, within(1e-4));
  }
}
