package org.meadowmark.core.change.effect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Statistics against scipy 1.10.1: the values are those that {@code check-values.py}, beside the
 * test resources of this package, prints.
 */
class EffectStatisticsTest {
  private static final double[] BEFORE = {40, 60, 30, 50, 45, 35, 55, 25, 65};
  private static final double[] AFTER = {10, 20, 15, 45, 50, 30, 60, 28, 70};
  private static final int[] LABELS = {0, 0, 0, -1, -1, -1, -1, -1, -1};

  private static Design design(double[] before, double[] after, int[] labels) {
    List<List<Amounts>> amounts = new ArrayList<>();
    for (int i = 0; i < before.length; i++) {
      amounts.add(List.of(new Amounts(before[i], 1, after[i], 1)));
    }
    return new Design(amounts, labels);
  }

  private static GroupChange mean(double... values) {
    double[] weights = new double[values.length];
    Arrays.fill(weights, 3);
    return GroupChange.of(values, weights, values.length);
  }

  @Test
  void differenceOfMeansIsThatOfScipy() {
    DifferenceOfMeans difference =
        DifferenceOfMeans.of(mean(-4.0, -6.5, -1.0, -5.2), mean(0.5, -1.2, 2.2, 0.1, -0.7, 1.4));

    assertThat(difference.difference()).isCloseTo(-4.558333333333334, within(1e-12));
    assertThat(difference.t()).isCloseTo(-3.547687282508644, within(1e-9));
    assertThat(difference.degreesOfFreedom()).isCloseTo(4.193141950942525, within(1e-9));
    assertThat(difference.pValue().orElseThrow()).isCloseTo(0.022049624342367288, within(1e-8));
    assertThat(difference.interval(0.95).orElseThrow().low())
        .isCloseTo(-8.061838282093913, within(1e-6));
    assertThat(difference.interval(0.95).orElseThrow().high())
        .isCloseTo(-1.0548283845727542, within(1e-6));
  }

  @Test
  void ratioHasTheJackknifeIntervalOfScipy() {
    RatioOfRatios ratio = RatioOfRatios.of(design(BEFORE, AFTER, LABELS)).orElseThrow();

    assertThat(ratio.ratio()).isCloseTo(0.33636857841804846, within(1e-12));
    assertThat(ratio.logVariance().orElseThrow()).isCloseTo(0.025081904192615006, within(1e-12));
    assertThat(ratio.degreesOfFreedom()).isCloseTo(2.3059338684941793, within(1e-9));
    assertThat(ratio.interval(0.95).orElseThrow().low())
        .isCloseTo(0.1842867006055094, within(1e-7));
    assertThat(ratio.interval(0.95).orElseThrow().high())
        .isCloseTo(0.6139554301814675, within(1e-7));
  }

  @Test
  void countsAllArrangementsWhereTheyAreFew() {
    Design design = design(BEFORE, AFTER, LABELS);

    assertThat(new RatioSums(design, LABELS).statistic())
        .isCloseTo(-6.404501961943214, within(1e-9));
    PermutationTest test = PermutationTest.of(design, 84, 1);
    assertThat(test.isExact()).isTrue();
    assertThat(test.arrangements()).isEqualTo(84);
    assertThat(test.pValue()).isCloseTo(1 / 84.0, within(1e-12));
    assertThat(test.smallestPValue()).isCloseTo(1 / 84.0, within(1e-12));
  }

  @Test
  void drawsWhereTheyAreManyAndTheSeedSettlesIt() {
    Design design = design(BEFORE, AFTER, LABELS);

    PermutationTest test = PermutationTest.of(design, 83, 7);
    assertThat(test.isExact()).isFalse();
    assertThat(test.arrangements()).isEqualTo(83);
    assertThat(PermutationTest.of(design, 83, 7)).isEqualTo(test);
    // Chance of an arrangement as clear is 1/84: of 83 draws, more than 8 would be one in 10^5.
    assertThat(test.pValue()).isBetween(1 / 84.0, 9 / 84.0);
  }

  @Test
  void orderOfSegmentsDoesNotMatter() {
    List<Integer> order = new ArrayList<>(List.of(0, 1, 2, 3, 4, 5, 6, 7, 8));
    Collections.shuffle(order, new Random(3));
    double[] before = order.stream().mapToDouble(i -> BEFORE[i]).toArray();
    double[] after = order.stream().mapToDouble(i -> AFTER[i]).toArray();
    int[] labels = order.stream().mapToInt(i -> LABELS[i]).toArray();

    assertThat(PermutationTest.of(design(before, after, labels), 1_000, 1))
        .isEqualTo(PermutationTest.of(design(BEFORE, AFTER, LABELS), 1_000, 1));
  }

  @Test
  void kilometresInPlaceOfMetresOnlyRescale() {
    double[] before = Arrays.stream(BEFORE).map(metres -> metres / 1_000).toArray();
    double[] after = Arrays.stream(AFTER).map(metres -> metres / 1_000).toArray();
    Design small = design(before, after, LABELS);
    Design large = design(BEFORE, AFTER, LABELS);

    assertThat(small.difference().difference())
        .isCloseTo(large.difference().difference() / 1_000, within(1e-12));
    assertThat(RatioOfRatios.of(small).orElseThrow().logVariance().orElseThrow())
        .isCloseTo(
            RatioOfRatios.of(large).orElseThrow().logVariance().orElseThrow(), within(1e-12));
  }

  @Test
  void aSeasonTwiceAsLongWithTwiceTheScarsHasTheSameRate() {
    List<List<Amounts>> amounts = new ArrayList<>();
    for (int i = 0; i < BEFORE.length; i++) {
      amounts.add(List.of(new Amounts(2 * BEFORE[i], 2, AFTER[i], 1)));
    }
    Design design = new Design(amounts, LABELS);

    assertThat(RatioOfRatios.of(design).orElseThrow().ratio())
        .isCloseTo(0.33636857841804846, within(1e-12));
  }

  /** Two groups of markers whose seasons are the same are one group. */
  @Test
  void groupsWithTheSameSeasonsAreLikeOne() {
    List<List<Amounts>> amounts = new ArrayList<>();
    for (int i = 0; i < BEFORE.length; i++) {
      Amounts own = new Amounts(BEFORE[i], 1, AFTER[i], 1);
      amounts.add(List.of(own, own));
    }
    Design design = new Design(amounts, new int[] {0, 1, 0, -1, -1, -1, -1, -1, -1});

    assertThat(design.difference().difference())
        .isCloseTo(design(BEFORE, AFTER, LABELS).difference().difference(), within(1e-12));
    assertThat(RatioOfRatios.of(design).orElseThrow().ratio())
        .isCloseTo(0.33636857841804846, within(1e-12));
    assertThat(PermutationTest.of(design, 1_000, 1).arrangements()).isEqualTo(84 * 3);
  }

  @Test
  void seasonsAsSampleAreThatOfScipy() {
    SeasonTest test =
        SeasonTest.of(new double[] {3, 5, 4}, new double[] {-1, 0.5, -2}, 0.95).orElseThrow();

    assertThat(test.difference()).isCloseTo(-4.833333333333333, within(1e-12));
    assertThat(test.pValue().orElseThrow()).isCloseTo(0.007417086974604403, within(1e-8));
    assertThat(SeasonTest.of(new double[] {3}, new double[] {-1, 0.5}, 0.95)).isEmpty();
  }

  /** The approximation against the noncentral t distribution of scipy. */
  @Test
  void powerIsNearThatOfTheNoncentralDistribution() {
    assertThat(PowerForecast.chance(2.0, 5.5, 0.95)).isCloseTo(0.38040223401575846, within(0.01));
    assertThat(PowerForecast.chance(3.0, 12, 0.95)).isCloseTo(0.7862866625693914, within(0.01));
    assertThat(PowerForecast.chance(1.0, 40, 0.95)).isCloseTo(0.16259988594395813, within(0.01));
  }
}
