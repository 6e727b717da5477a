package org.meadowmark.core.rank.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.apache.commons.statistics.distribution.HypergeometricDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class NetworkHotSpotsTest {
  private static int[][] path(int size, int steps) {
    return IntStream.range(0, size)
        .mapToObj(
            i ->
                IntStream.rangeClosed(Math.max(0, i - steps), Math.min(size - 1, i + steps))
                    .toArray())
        .toArray(int[][]::new);
  }

  private static double[] z(double[] values, int[][] neighbours) {
    return new NetworkHotSpots(values, neighbours)
        .z().stream().mapToDouble(OptionalDouble::orElseThrow).toArray();
  }

  /** Worked by hand from Ord &amp; Getis (1995): the highest is beside the 10, not on it. */
  @Test
  void agreesWithGiStarWorkedByHandOnAPath() {
    double[] z = z(new double[] {1, 2, 3, 10, 4}, path(5, 1));
    assertThat(z)
        .containsExactly(
            new double[] {-1.290994, -1.549193, 0.774597, 1.290994, 1.549193}, within(5e-7));
    // x̄ = 4, S = √10; the third: 15 − 12 over √10·√((15 − 9)/4).
    assertThat(z[2]).isCloseTo(3 / (Math.sqrt(10) * Math.sqrt(6.0 / 4)), within(1e-12));
    assertThat(NetworkHotSpots.CAUTION).contains("beside");
  }

  @Test
  void isUndefinedWhereAllAreEqualOrAllAreNeighbours() {
    assertThat(new NetworkHotSpots(new double[] {0.1, 0.1, 0.1, 0.1}, path(4, 1)).z())
        .containsOnly(OptionalDouble.empty());
    assertThat(new NetworkHotSpots(new double[] {1, 2, 3}, path(3, 2)).z())
        .containsOnly(OptionalDouble.empty());
    assertThat(new NetworkHotSpots(new double[] {7}, path(1, 0)).z())
        .containsOnly(OptionalDouble.empty());
    assertThat(
            new NetworkHotSpots(new double[0], new int[0][]).test(PermutationScheme.TOTAL, 99, 1))
        .isEmpty();
  }

  /**
   * With values 0 and 1 a sum of draws is hypergeometric, so its mean and standard deviation give
   * Gi* and its tail the p-value: checked against Commons Statistics.
   */
  @Test
  void onZerosAndOnesAgreesWithTheHypergeometricDistribution() {
    double[] values = new double[40];
    for (int one : new int[] {3, 4, 5, 6, 11, 20, 21, 30, 39}) {
      values[one] = 1;
    }
    int[][] neighbours = path(40, 2);
    List<NetworkHotSpots.Score> total =
        new NetworkHotSpots(values, neighbours).test(PermutationScheme.TOTAL, 99_999, 5);
    List<NetworkHotSpots.Score> conditional =
        new NetworkHotSpots(values, neighbours).test(PermutationScheme.CONDITIONAL, 99_999, 5);
    for (int i = 0; i < values.length; i++) {
      int k = neighbours[i].length;
      int ones = (int) Arrays.stream(neighbours[i]).mapToDouble(j -> values[j]).sum();
      HypergeometricDistribution sum = HypergeometricDistribution.of(40, 9, k);
      assertThat(total.get(i).z().orElseThrow())
          .isCloseTo((ones - sum.getMean()) / Math.sqrt(sum.getVariance()), within(1e-9));
      assertClose(total.get(i).p(), sum.survivalProbability(ones - 1));
      int own = (int) values[i];
      HypergeometricDistribution others = HypergeometricDistribution.of(39, 9 - own, k - 1);
      assertClose(conditional.get(i).p(), others.survivalProbability(ones - own - 1));
    }
  }

  /** Five standard errors of a share of 99,999 draws or, followed up, of ten exceedances. */
  private static void assertClose(OptionalDouble p, double exact) {
    double error = Math.sqrt(exact * (1 - exact) / 99_999);
    assertThat(p.orElseThrow()).isCloseTo(exact, within(5 * error + 2e-5));
  }

  /** The one highest arrangement of many: far below what 99 draws alone could tell. */
  @Test
  void followsSmallValuesFurtherThanThePermutationsAskedFor() {
    double[] values = new double[200];
    Arrays.fill(values, 50, 55, 1);
    List<NetworkHotSpots.Score> scores =
        new NetworkHotSpots(values, path(200, 2)).test(PermutationScheme.TOTAL, 99, 1);
    assertThat(scores.get(52).p().orElseThrow()).isEqualTo(1 / 10_000.0);
    assertThat(scores.get(120).p().orElseThrow()).isEqualTo(1);
  }

  /**
   * Under random values p is at or below u no more often than u, however it was stopped: Besag
   * &amp; Clifford (1991). 20,000 tests; three standard errors.
   */
  @ParameterizedTest
  @EnumSource
  void pValuesAreNoSmallerThanChanceMakesThem(PermutationScheme scheme) {
    int size = 20_000;
    double[] values = new Random(8).doubles(size).map(x -> x * x * x).toArray();
    // Neighbourhoods that share no segment, so that tests are independent.
    int[][] neighbours =
        IntStream.range(0, size)
            .mapToObj(i -> IntStream.range(i / 4 * 4, i / 4 * 4 + 4).toArray())
            .toArray(int[][]::new);
    List<NetworkHotSpots.Score> scores =
        new NetworkHotSpots(values, neighbours).test(scheme, 99, 2);
    double[] p =
        IntStream.range(0, size / 4)
            .mapToDouble(i -> scores.get(4 * i).p().orElseThrow())
            .toArray();
    for (double u : new double[] {0.002, 0.01, 0.05, 0.2, 0.5}) {
      double share = Arrays.stream(p).filter(x -> x <= u).count() / (double) p.length;
      assertThat(share).isLessThan(u + 3 * Math.sqrt(u * (1 - u) / p.length));
      assertThat(share).isGreaterThan(u / 2 - 3 * Math.sqrt(u * (1 - u) / p.length));
    }
  }

  @Test
  void withItsOwnValueKeptASegmentWithoutNeighboursCannotBeTested() {
    NetworkHotSpots spots =
        new NetworkHotSpots(
            new double[] {9, 1, 2, 3}, new int[][] {{0}, {1, 2}, {1, 2, 3}, {2, 3}});
    assertThat(spots.test(PermutationScheme.CONDITIONAL, 99, 1).get(0).p()).isEmpty();
    // One of four has the highest value.
    assertThat(spots.test(PermutationScheme.TOTAL, 9_999, 1).get(0).p().orElseThrow())
        .isCloseTo(0.25, within(0.025));
  }

  @Test
  void doesNotDependOnThreads() throws Exception {
    double[] values = new Random(1).doubles(500).toArray();
    NetworkHotSpots spots = new NetworkHotSpots(values, path(500, 2));
    List<List<NetworkHotSpots.Score>> results = new ArrayList<>();
    for (int threads : new int[] {1, 4}) {
      ForkJoinPool pool = new ForkJoinPool(threads);
      try {
        results.add(pool.submit(() -> spots.test(PermutationScheme.TOTAL, 199, 3)).get());
      } finally {
        pool.shutdown();
      }
    }
    assertThat(results.get(1)).isEqualTo(results.get(0));
    assertThat(spots.test(PermutationScheme.TOTAL, 199, 4)).isNotEqualTo(results.get(0));
  }

  @Property(tries = 100)
  void doesNotChangeWithTheUnitOfTheValuesOrTheOrderOfTheSegments(
      @ForAll @Size(min = 5, max = 30) List<@DoubleRange(min = 0, max = 100) Double> given,
      @ForAll @DoubleRange(min = 0.01, max = 1_000) double unit,
      @ForAll long seed) {
    double[] values = given.stream().mapToDouble(v -> v).toArray();
    values[0] += 1;
    values[1] = values[0] + 1;
    int[][] neighbours = path(values.length, 1);
    double[] z = z(values, neighbours);
    double[] scaled = z(Arrays.stream(values).map(v -> v * unit).toArray(), neighbours);
    assertThat(scaled).containsExactly(z, within(1e-6));

    List<Integer> order = new ArrayList<>(IntStream.range(0, values.length).boxed().toList());
    Collections.shuffle(order, new Random(seed));
    int[][] moved =
        order.stream()
            .map(i -> Arrays.stream(neighbours[i]).map(order::indexOf).toArray())
            .toArray(int[][]::new);
    double[] around = z(order.stream().mapToDouble(i -> values[i]).toArray(), moved);
    for (int i = 0; i < values.length; i++) {
      assertThat(around[i]).isCloseTo(z[order.get(i)], within(1e-9));
    }
  }
}
