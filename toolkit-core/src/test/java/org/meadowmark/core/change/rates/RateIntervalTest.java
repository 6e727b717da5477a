package org.meadowmark.core.change.rates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.change.Interval;

/**
 * Intervals against scipy 1.10.1: the values are those that {@code check-values.py}, beside the
 * test resources of this package, prints.
 */
class RateIntervalTest {
  private static void isInterval(Interval interval, double low, double high) {
    assertThat(interval.low()).isCloseTo(low, within(1e-7 * (1 + Math.abs(low))));
    assertThat(interval.high()).isCloseTo(high, within(1e-7 * (1 + Math.abs(high))));
  }

  @Test
  void countsHaveTheExactLimits() {
    isInterval(PoissonInterval.ofCount(0, 0.95), 0, 3.6888794541139354);
    isInterval(PoissonInterval.ofCount(1, 0.95), 0.025317807984289876, 5.571643390938898);
    isInterval(PoissonInterval.ofCount(7, 0.95), 2.8143630515198654, 14.422675361702376);
    isInterval(PoissonInterval.ofCount(100, 0.95), 81.36399125092314, 121.62679379242638);
  }

  @Test
  void lengthsHaveTheGammaLimits() {
    isInterval(
        PoissonInterval.ofLengths(new double[] {5, 12, 30, 8, 8, 21, 3}, 1, 0.95),
        26.53232102865477,
        234.68950849913256);
  }

  @Test
  void equalLengthsAreCounts() {
    double[] seven = new double[7];
    Arrays.fill(seven, 12);
    Interval lengths = PoissonInterval.ofLengths(seven, 12, 0.9);
    Interval counts = PoissonInterval.ofCount(7, 0.9);

    isInterval(lengths, 12 * counts.low(), 12 * counts.high());
    isInterval(PoissonInterval.ofLengths(new double[0], 12, 0.95), 0, 12 * 3.6888794541139354);
  }

  @Test
  void sharesHaveTheExactLimits() {
    isInterval(BinomialInterval.of(0, 10, 0.95), 0, 0.30849710781876294);
    isInterval(BinomialInterval.of(3, 10, 0.95), 0.06673951117773447, 0.652452850060008);
    isInterval(BinomialInterval.of(10, 10, 0.95), 0.6915028921812371, 1);
    isInterval(BinomialInterval.of(45, 60, 0.95), 0.6214036445204557, 0.8528139262009966);
    assertThatThrownBy(() -> BinomialInterval.of(0, 0, 0.95))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** 926 to 971 of 1,000 hold 99.9 % of a binomial count at 95 %; the exact limits hold more. */
  @Test
  void limitsOfLengthsHoldTheExpectedSum() {
    SplittableRandom random = new SplittableRandom(8);
    int held = 0;
    for (int survey = 0; survey < 1_000; survey++) {
      // 15 scars expected, lengths 5 to 45 m: 375 m.
      double[] metres = new double[200];
      int scars = 0;
      for (double at = -Math.log(1 - random.nextDouble());
          at <= 15;
          at -= Math.log(1 - random.nextDouble())) {
        metres[scars] = 5 + 40 * random.nextDouble();
        scars++;
      }
      Interval limits = PoissonInterval.ofLengths(Arrays.copyOf(metres, scars), 5, 0.95);
      held += limits.holds(375) ? 1 : 0;
    }
    assertThat(held).isBetween(926, 990);
  }

  /** Mean of a normal sample: the standard error is known, 1/√50. */
  @Test
  void bootstrapOfAMeanHasItsStandardError() {
    double[] values = new double[50];
    SplittableRandom random = new SplittableRandom(3);
    double mean = 0;
    for (int i = 0; i < values.length; i++) {
      values[i] =
          Math.sqrt(-2 * Math.log(1 - random.nextDouble()))
              * Math.cos(2 * Math.PI * random.nextDouble());
      mean += values[i] / values.length;
    }
    double squares = 0;
    for (double value : values) {
      squares += (value - mean) * (value - mean) / values.length;
    }
    Interval interval =
        new BedBootstrap(4_000, 1, 0.95)
            .interval(
                values.length,
                times -> {
                  double sum = 0;
                  for (int i = 0; i < times.length; i++) {
                    sum += times[i] * values[i];
                  }
                  return sum / times.length;
                })
            .orElseThrow();
    double half = 1.96 * Math.sqrt(squares / values.length);
    assertThat(interval.low()).isCloseTo(mean - half, within(0.1 * half));
    assertThat(interval.high()).isCloseTo(mean + half, within(0.1 * half));
  }

  @Test
  void fewBedsGiveNoInterval() {
    assertThat(new BedBootstrap(100, 1, 0.95).interval(9, times -> 1)).isEmpty();
    assertThat(new BedBootstrap(0, 1, 0.95).interval(20, times -> 1)).isEmpty();
    assertThat(new BedBootstrap(100, 1, 0.95).interval(20, times -> Double.NaN)).isEmpty();
  }
}
