package org.meadowmark.core.rank.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.junit.jupiter.api.Test;

class EmpiricalBayesTest {
  private static final double[] COUNTS = {0, 2, 5, 1, 12};
  private static final double[] EXPOSURES = {1, 2, 2.5, 4, 3};

  private static double[] estimates(List<ShrunkenRate> rates) {
    return rates.stream().mapToDouble(rate -> rate.estimate().orElseThrow()).toArray();
  }

  /** Marshall's formula, worked line by line: mean 1.6, variance 2.26, between 1.62. */
  @Test
  void agreesWithMarshallsFormulaWorkedByHand() {
    double mean = (0 + 2 + 5 + 1 + 12) / (1 + 2 + 2.5 + 4 + 3);
    double variance =
        (1 * Math.pow(0 - mean, 2)
                + 2 * Math.pow(1 - mean, 2)
                + 2.5 * Math.pow(2 - mean, 2)
                + 4 * Math.pow(0.25 - mean, 2)
                + 3 * Math.pow(4 - mean, 2))
            / 12.5;
    double between = variance - mean / (12.5 / 5);
    assertThat(mean).isCloseTo(1.6, within(1e-12));
    assertThat(variance).isCloseTo(2.26, within(1e-12));
    assertThat(between).isCloseTo(1.62, within(1e-12));
    double[] byHand = new double[5];
    for (int i = 0; i < 5; i++) {
      double weight = between / (between + mean / EXPOSURES[i]);
      byHand[i] = weight * COUNTS[i] / EXPOSURES[i] + (1 - weight) * mean;
    }

    double[] estimates = estimates(new EmpiricalBayes(1).towardsWhole(COUNTS, EXPOSURES));

    assertThat(estimates).containsExactly(byHand, within(1e-12));
    assertThat(estimates)
        .containsExactly(
            new double[] {0.795031, 1.198347, 1.886726, 0.517327, 3.405573}, within(5e-7));
  }

  @Test
  void collapsesToTheMeanWhereRatesDifferNoMoreThanByChance() {
    List<ShrunkenRate> rates =
        new EmpiricalBayes(1).towardsWhole(new double[] {2, 4, 5, 8, 6}, EXPOSURES);
    assertThat(rates).allMatch(ShrunkenRate::collapsed);
    assertThat(estimates(rates)).containsOnly(2);
    assertThat(rates).allMatch(r -> r.low().equals(r.high()) && r.low().equals(r.estimate()));
  }

  /**
   * Prior of mean 1.6 and variance 1.62 is gamma with shape 1.580247 and rate 0.987654; 12 on 3
   * make it shape 13.580247 and rate 3.987654, whose mean is the estimate. Limits: {@code
   * scipy.stats.gamma.ppf([.05, .95], 1.6**2/1.62+12, scale=1/(1.6/1.62+3))}, SciPy 1.17.1.
   */
  @Test
  void intervalIsTheGammaPosterior() {
    ShrunkenRate rate = new EmpiricalBayes(1).towardsWhole(COUNTS, EXPOSURES).get(4);
    assertThat(rate.low().orElseThrow()).isCloseTo(2.040765725584, within(1e-9));
    assertThat(rate.high().orElseThrow()).isCloseTo(5.054346864162, within(1e-9));
    assertThat(rate.collapsed()).isFalse();
    GammaDistribution posterior = GammaDistribution.of(1.6 * 1.6 / 1.62 + 12, 1 / (1.6 / 1.62 + 3));
    assertThat(posterior.getMean()).isCloseTo(rate.estimate().orElseThrow(), within(1e-12));
  }

  @Test
  void metresInsteadOfKilometresOnlyRescale() {
    double[] metres = {0, 260, 640, 110, 1_530};
    double[] kilometres = Arrays.stream(metres).map(m -> m / 1_000).toArray();
    List<ShrunkenRate> inMetres = new EmpiricalBayes(128).towardsWhole(metres, EXPOSURES);
    List<ShrunkenRate> inKilometres = new EmpiricalBayes(0.128).towardsWhole(kilometres, EXPOSURES);
    assertThat(inMetres).noneMatch(ShrunkenRate::collapsed);
    for (int i = 0; i < metres.length; i++) {
      assertThat(inKilometres.get(i).estimate().orElseThrow() * 1_000)
          .isCloseTo(inMetres.get(i).estimate().orElseThrow(), within(1e-9));
      assertThat(inKilometres.get(i).low().orElseThrow() * 1_000)
          .isCloseTo(inMetres.get(i).low().orElseThrow(), within(1e-9));
      assertThat(inKilometres.get(i).high().orElseThrow() * 1_000)
          .isCloseTo(inMetres.get(i).high().orElseThrow(), within(1e-9));
    }
  }

  /** Lengths 10, 20 and 30: 1,400 / 60. Scales with the unit. */
  @Test
  void eventSizeIsTheLengthThatAMetreOfScarBelongsToOnAverage() {
    assertThat(EmpiricalBayes.eventSize(new double[] {10, 20, 30}).orElseThrow())
        .isCloseTo(1_400.0 / 60, within(1e-12));
    assertThat(EmpiricalBayes.eventSize(new double[] {1, 1, 1}).orElseThrow()).isEqualTo(1);
    assertThat(EmpiricalBayes.eventSize(new double[0])).isEmpty();
    assertThat(EmpiricalBayes.eventSize(new double[] {0, 0})).isEmpty();
  }

  @Test
  void segmentWithoutExposureHasNoEstimateAndChangesNoOther() {
    List<ShrunkenRate> rates =
        new EmpiricalBayes(1)
            .towardsWhole(new double[] {0, 2, 7, 5, 1, 12}, new double[] {1, 2, 0, 2.5, 4, 3});
    assertThat(rates.get(2)).isEqualTo(ShrunkenRate.UNDEFINED);
    assertThat(rates.get(2).estimate()).isEmpty();
    List<ShrunkenRate> others = new EmpiricalBayes(1).towardsWhole(COUNTS, EXPOSURES);
    assertThat(rates.get(5)).isEqualTo(others.get(4));
  }

  @Test
  void withoutAnyAmountEveryEstimateIsNothingAndCollapsed() {
    List<ShrunkenRate> rates = new EmpiricalBayes(1).towardsWhole(new double[5], EXPOSURES);
    assertThat(rates).containsOnly(ShrunkenRate.at(0));
  }

  @Test
  void withoutSegmentsThereIsNothing() {
    assertThat(new EmpiricalBayes(1).towardsWhole(new double[0], new double[0])).isEmpty();
  }

  @Test
  void neighbourhoodOfAllIsTheWholeAndHalvesStandApart() {
    int[] all = {0, 1, 2, 3, 4};
    EmpiricalBayes bayes = new EmpiricalBayes(1);
    assertThat(bayes.towardsNeighbours(COUNTS, EXPOSURES, new int[][] {all, all, all, all, all}))
        .isEqualTo(bayes.towardsWhole(COUNTS, EXPOSURES));

    int[] low = {0, 1, 2};
    int[] high = {3, 4, 5};
    double[] counts = {0, 3, 12, 200, 290, 420};
    double[] exposures = {1, 2, 2, 2, 3, 4};
    List<ShrunkenRate> near =
        bayes.towardsNeighbours(counts, exposures, new int[][] {low, low, low, high, high, high});
    // By hand: mean 15/5 = 3; variance (1·9 + 2·2.25 + 2·9)/5 = 6.3; between 6.3 − 3/(5/3) = 4.5.
    assertThat(near.get(0).estimate().orElseThrow())
        .isCloseTo(3 + 4.5 / (4.5 + 3.0 / 1) * (0 - 3), within(1e-12));
    // By hand: mean 910/9; rates 100, 96.67, 105: variance far below mean / 3, so all collapse.
    assertThat(near.get(5)).isEqualTo(ShrunkenRate.at(910.0 / 9));
  }

  @Test
  void refusesWhatIsNoRate() {
    EmpiricalBayes bayes = new EmpiricalBayes(1);
    assertThatThrownBy(() -> bayes.towardsWhole(new double[] {-1}, new double[] {1}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> bayes.towardsWhole(new double[] {1}, new double[] {Double.NaN}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> bayes.towardsWhole(new double[] {1}, new double[2]))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new EmpiricalBayes(0)).isInstanceOf(IllegalArgumentException.class);
  }

  @Property(tries = 200)
  void estimatesLieBetweenRateAndMeanAndInsideTheirInterval(
      @ForAll @Size(min = 2, max = 12) List<@DoubleRange(min = 0, max = 500) Double> amounts,
      @ForAll @DoubleRange(min = 0.1, max = 20) double exposure,
      @ForAll @DoubleRange(min = 0.5, max = 50) double eventSize) {
    double[] o = amounts.stream().mapToDouble(a -> a).toArray();
    double[] e = new double[o.length];
    for (int i = 0; i < e.length; i++) {
      e[i] = exposure * (1 + i % 3);
    }
    double mean = Arrays.stream(o).sum() / Arrays.stream(e).sum();
    List<ShrunkenRate> rates = new EmpiricalBayes(eventSize).towardsWhole(o, e);
    for (int i = 0; i < e.length; i++) {
      double estimate = rates.get(i).estimate().orElseThrow();
      double slack = 1e-9 * (1 + mean);
      assertThat(estimate)
          .isBetween(Math.min(mean, o[i] / e[i]) - slack, Math.max(mean, o[i] / e[i]) + slack);
      assertThat(rates.get(i).low().orElseThrow())
          .isLessThanOrEqualTo(rates.get(i).high().orElseThrow());
    }
  }
}
