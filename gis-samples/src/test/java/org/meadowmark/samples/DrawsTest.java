package org.meadowmark.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class DrawsTest {
  private static final int MANY = 40_000;

  /** First outputs of SplitMix64 for seed 1234567, a published test vector (from memory). */
  @Test
  void scattersBitsAsSplitMix() {
    long golden = 0x9e3779b97f4a7c15L;
    assertThat(Long.toUnsignedString(Draws.mix(1_234_567L))).isEqualTo("6457827717110365317");
    assertThat(Long.toUnsignedString(Draws.mix(1_234_567L + golden)))
        .isEqualTo("3203168211198807973");
    assertThat(Long.toUnsignedString(Draws.mix(1_234_567L + 2 * golden)))
        .isEqualTo("9817491932198370423");
  }

  /** Mean 0, variance 1 and fourth moment 3 of the standard normal. */
  @Test
  void normalHasItsMoments() {
    Draws draws = Draws.of(1, 2, 3);
    double sum = 0;
    double squares = 0;
    double fourths = 0;
    for (int i = 0; i < MANY; i++) {
      double value = draws.normal();
      sum += value;
      squares += value * value;
      fourths += value * value * value * value;
    }
    assertThat(sum / MANY).isCloseTo(0, within(0.02));
    assertThat(squares / MANY).isCloseTo(1, within(0.03));
    assertThat(fourths / MANY).isCloseTo(3, within(0.25));
  }

  @Test
  void lognormalHasItsMedianAndKeepsItsLimits() {
    Draws draws = Draws.of(4, 5, 6);
    double[] values = new double[MANY];
    for (int i = 0; i < MANY; i++) {
      values[i] = draws.lognormal(0.4, 0.25, 0.1, 1.6);
    }
    Arrays.sort(values);
    assertThat(values[MANY / 2]).isCloseTo(0.4, within(0.005));
    // One standard deviation above the median: 0.4 e^0.25 at the 84.13th percentile.
    assertThat(values[(int) (MANY * 0.8413)]).isCloseTo(0.4 * Math.exp(0.25), within(0.01));
    assertThat(values[0]).isGreaterThanOrEqualTo(0.1);
    assertThat(values[MANY - 1]).isLessThanOrEqualTo(1.6);
  }

  @Test
  void streamsOfDifferentKeysDiffer() {
    assertThat(Draws.of(1, 2, 3).uniform()).isEqualTo(Draws.of(1, 2, 3).uniform());
    assertThat(Draws.of(1, 2, 3).uniform()).isNotEqualTo(Draws.of(1, 2, 4).uniform());
    assertThat(Draws.of(1, 2, 3).uniform()).isNotEqualTo(Draws.of(1, 3, 2).uniform());
    assertThat(Draws.of(1, 2, 3).uniform()).isNotEqualTo(Draws.of(2, 1, 3).uniform());
  }
}
