package org.meadowmark.core.rank.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class FalseDiscoveryTest {
  /**
   * The 15 p-values of Benjamini &amp; Hochberg (1995), from memory; four are rejected at 0.05.
   * Adjusted values agree with {@code scipy.stats.false_discovery_control}, SciPy 1.17.1.
   */
  @Test
  void agreesWithThePapersExample() {
    double[] adjusted =
        FalseDiscovery.adjusted(
            new double[] {
              0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.3240,
              0.4262, 0.5719, 0.6528, 0.7590, 1
            });
    assertThat(adjusted)
        .containsExactly(
            new double[] {
              0.0015,
              0.003,
              0.0095,
              0.035625,
              0.0603,
              0.06385714285714286,
              0.06385714285714286,
              0.0645,
              0.0765,
              0.486,
              0.5811818181818181,
              0.714875,
              0.7532307692307693,
              0.8132142857142857,
              1
            },
            within(1e-12));
    assertThat(Arrays.stream(adjusted).filter(p -> p <= 0.05)).hasSize(4);
  }

  /** {@code scipy.stats.false_discovery_control}, SciPy 1.17.1, with ties and out of order. */
  @Test
  void agreesWithScipyOnTiesOutOfOrder() {
    assertThat(
            FalseDiscovery.adjusted(
                new double[] {0.3, 0.01, 0.04, 0.01, 0.9, 0.04, 0.2, 0.0005, 0.5, 0.05}))
        .containsExactly(
            new double[] {
              0.375,
              0.03333333333333333,
              0.08,
              0.03333333333333333,
              0.9,
              0.08,
              0.28571428571428575,
              0.005,
              0.5555555555555556,
              0.08333333333333334
            },
            within(1e-12));
  }

  @Test
  void nothingIsAdjustedToNothingAndOneValueStays() {
    assertThat(FalseDiscovery.adjusted(new double[0])).isEmpty();
    assertThat(FalseDiscovery.adjusted(new double[] {0.03})).containsExactly(0.03);
  }

  @Test
  void refusesWhatIsNoProbability() {
    for (double wrong : new double[] {-0.1, 1.1, Double.NaN}) {
      assertThatThrownBy(() -> FalseDiscovery.adjusted(new double[] {0.5, wrong}))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }

  @Property(tries = 300)
  void keepsOrderNeverFallsBelowAndFollowsThePValuesAround(
      @ForAll @Size(min = 1, max = 40) List<@DoubleRange(min = 0, max = 1) Double> values,
      @ForAll long seed) {
    double[] p = values.stream().mapToDouble(v -> v).toArray();
    double[] adjusted = FalseDiscovery.adjusted(p);
    for (int i = 0; i < p.length; i++) {
      assertThat(adjusted[i]).isBetween(p[i] - 1e-12, 1.0);
      for (int j = 0; j < p.length; j++) {
        assertThat(p[i] <= p[j] && adjusted[i] > adjusted[j]).isFalse();
      }
    }
    List<Integer> order = new ArrayList<>(IntStream.range(0, p.length).boxed().toList());
    Collections.shuffle(order, new Random(seed));
    double[] moved = FalseDiscovery.adjusted(order.stream().mapToDouble(i -> p[i]).toArray());
    for (int i = 0; i < p.length; i++) {
      assertThat(moved[i]).isEqualTo(adjusted[order.get(i)]);
    }
  }
}
