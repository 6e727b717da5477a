package org.meadowmark.core.change.rates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.change.rates.EdgeRateFit.Outcome;

class EdgeRateFitterTest {
  private static final double[] ONE_LOOK = {1};
  private static final double[] TWO_LOOKS = {1, 2.5};

  private static ClosingObservation seen(double distance, double metresPerYear, double... looks) {
    double closes = distance / metresPerYear;
    double open = 0;
    double closed = Double.POSITIVE_INFINITY;
    for (double look : looks) {
      if (look < closes) {
        open = look;
      } else if (closed > look) {
        closed = look;
      }
    }
    return new ClosingObservation("shoalgrass", distance, open, closed);
  }

  /** The same scars as in check-values.py. */
  private static List<ClosingObservation> scars() {
    NormalDistribution normal = NormalDistribution.of(0, 1);
    List<ClosingObservation> scars = new ArrayList<>();
    for (int i = 0; i < 120; i++) {
      double distance = 0.05 + 0.25 * (i * 37 % 120) / 120;
      double z = normal.inverseCumulativeProbability((i * 53 % 120 + 0.5) / 120);
      scars.add(seen(distance, 0.08 * Math.exp(0.6 * z), i % 3 == 0 ? ONE_LOOK : TWO_LOOKS));
    }
    return scars;
  }

  /** Maximum and profile of the likelihood by scipy 1.10.1: check-values.py. */
  @Test
  void fitAndLimitsAreThoseOfScipy() {
    EdgeRateFit fit = EdgeRateFitter.fit("shoalgrass", scars(), 0.95);

    assertThat(fit.outcome()).isEqualTo(Outcome.FITTED);
    assertThat(fit.closed()).isEqualTo(56);
    assertThat(fit.metresPerYear().orElseThrow()).isCloseTo(0.08173098308562915, within(1e-7));
    assertThat(fit.logSpread().orElseThrow()).isCloseTo(0.5751929124982803, within(1e-6));
    assertThat(fit.interval().orElseThrow().low()).isCloseTo(0.07009984825301184, within(1e-6));
    assertThat(fit.interval().orElseThrow().high()).isCloseTo(0.09341555563630755, within(1e-6));
  }

  @Test
  void orderDoesNotMatterMuchAndUnitsOnlyRescale() {
    List<ClosingObservation> shuffled = new ArrayList<>(scars());
    Collections.shuffle(shuffled, new Random(2));
    List<ClosingObservation> centimetres =
        scars().stream()
            .map(
                scar ->
                    new ClosingObservation(
                        scar.species(),
                        100 * scar.distanceMetres(),
                        scar.openYears(),
                        scar.closedYears()))
            .toList();
    double rate = EdgeRateFitter.fit("", scars(), 0.95).metresPerYear().orElseThrow();

    assertThat(EdgeRateFitter.fit("", shuffled, 0.95).metresPerYear().orElseThrow())
        .isCloseTo(rate, within(1e-9));
    assertThat(EdgeRateFitter.fit("", centimetres, 0.95).metresPerYear().orElseThrow())
        .isCloseTo(100 * rate, within(1e-6));
  }

  /** 179 to 198 of 200 hold 99.9 % of a binomial count at 95 % (scipy.stats.binom.ppf). */
  @Test
  void limitsHoldThePlantedRateAtTheStatedRate() {
    int held = 0;
    int fitted = 0;
    for (int seed = 0; seed < 200; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      List<ClosingObservation> scars = new ArrayList<>();
      for (int i = 0; i < 80; i++) {
        double z =
            Math.sqrt(-2 * Math.log(1 - random.nextDouble()))
                * Math.cos(2 * Math.PI * random.nextDouble());
        scars.add(seen(0.05 + 0.3 * random.nextDouble(), 0.1 * Math.exp(0.5 * z), 1, 2, 3));
      }
      EdgeRateFit fit = EdgeRateFitter.fit("", scars, 0.95);
      fitted += fit.outcome() == Outcome.FITTED ? 1 : 0;
      held += fit.interval().map(limits -> limits.holds(0.1)).orElse(false) ? 1 : 0;
    }
    assertThat(fitted).isEqualTo(200);
    assertThat(held).isBetween(179, 198);
  }

  @Test
  void saysWhatScarsLeaveOpen() {
    List<ClosingObservation> closed = new ArrayList<>();
    List<ClosingObservation> open = new ArrayList<>();
    List<ClosingObservation> parted = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      double distance = 0.02 + 0.01 * i;
      closed.add(new ClosingObservation("", distance, 0, 1));
      open.add(new ClosingObservation("", distance, 1, Double.POSITIVE_INFINITY));
      parted.add(i < 6 ? closed.get(i) : open.get(i));
    }

    assertThat(EdgeRateFitter.fit("", closed, 0.95).outcome()).isEqualTo(Outcome.ALL_CLOSED);
    assertThat(EdgeRateFitter.fit("", open, 0.95).outcome()).isEqualTo(Outcome.NONE_CLOSED);
    assertThat(EdgeRateFitter.fit("", closed.subList(0, 9), 0.95).outcome())
        .isEqualTo(Outcome.TOO_FEW);
    EdgeRateFit between = EdgeRateFitter.fit("", parted, 0.95);
    assertThat(between.outcome()).isEqualTo(Outcome.PARTED);
    assertThat(between.interval().orElseThrow().low()).isCloseTo(0.07, within(1e-12));
    assertThat(between.interval().orElseThrow().high()).isCloseTo(0.08, within(1e-12));
  }

  /**
   * Scars of one width, looked at once: half of them closed says where the median lies, not more.
   */
  @Test
  void scarsOfOneWidthAndOneLookHaveARateButNoLimits() {
    List<ClosingObservation> scars = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      scars.add(new ClosingObservation("", 0.15, i % 2, i % 2 == 0 ? 1 : Double.POSITIVE_INFINITY));
    }
    EdgeRateFit fit = EdgeRateFitter.fit("", scars, 0.95);

    assertThat(fit.outcome()).isEqualTo(Outcome.NO_LIMITS);
    assertThat(fit.interval()).isEmpty();
    assertThat(fit.closingYears(0.3)).isEmpty();
  }

  @Test
  void closingTimeIsHalfTheWidthByTheRate() {
    EdgeRateFit fit = EdgeRateFitter.fit("shoalgrass", scars(), 0.95);

    assertThat(fit.closingYears(0.3).orElseThrow().middle())
        .isCloseTo(0.15 / 0.08173098308562915, within(1e-5));
    assertThat(fit.closingYears(0.3).orElseThrow().low())
        .isCloseTo(0.15 / 0.09341555563630755, within(1e-4));
  }
}
