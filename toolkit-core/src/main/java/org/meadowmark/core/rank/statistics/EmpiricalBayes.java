package org.meadowmark.core.rank.statistics;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.GammaDistribution;

/**
 * Empirical-Bayes rates: each rate is drawn towards the mean, the more the smaller its exposure.
 *
 * <p>For amounts oᵢ on exposures eᵢ with rates rᵢ = oᵢ / eᵢ: mean m = Σo / Σe; variance s² = Σ
 * eᵢ(rᵢ − m)² / Σe; variance between segments a = max(0, s² − φ·m / ē) with ē the mean exposure;
 * estimate = m + a / (a + φ·m / eᵢ) · (rᵢ − m). With φ = 1 this is the estimator for counts of
 * Marshall (1991), <i>Mapping disease and mortality rates using empirical Bayes estimators</i>,
 * Applied Statistics 40:283–294. The whole or a neighbourhood gives m and a.
 *
 * <p><b>Event size.</b> Marshall's sampling variance m / e is that of counts. Metres of scar are no
 * counts: in kilometres the same damage would have a thousandth of the mean but a millionth of the
 * variance. If scars fall independently and the length of each piece on a segment has mean E(l),
 * their sum is compound Poisson with variance E(l²) / E(l) times its mean. So φ = Σl² / Σl over all
 * pieces, in metres: one event is a piece of that length, and a change of unit only rescales
 * estimates and intervals. Scars that come in groups (two propellers of one boat, a boat that gets
 * free and sticks again) vary more than this; the surplus counts as variance between segments, so
 * intervals are too narrow and rates are shrunk too little. φ is taken as known.
 *
 * <p><b>Interval.</b> Mean and variance between segments are matched by a gamma distribution, whose
 * posterior given oᵢ / φ events on eᵢ is gamma with shape m²/a + oᵢ/φ and rate m/a + eᵢ/φ; its mean
 * is the estimate. Gamma–Poisson model as in Clayton &amp; Kaldor (1987), Biometrics 43:671–681
 * (from memory). The prior is taken as known, so the interval is somewhat too narrow where there
 * are few segments. Where a is 0 the interval collapses to the mean and says so.
 *
 * <p>Time and memory linear in segments and neighbour pairs. Immutable and thread-safe.
 */
public final class EmpiricalBayes {
  /** Share of the posterior inside the interval. */
  public static final double INTERVAL_SHARE = 0.90;

  private final double eventSize;

  /**
   * Creates the estimator.
   *
   * @param eventSize amount of one event: 1 for counts, Σl² / Σl for lengths
   * @throws IllegalArgumentException if it is not more than 0 and finite
   */
  public EmpiricalBayes(double eventSize) {
    if (!(eventSize > 0) || Double.isInfinite(eventSize)) {
      throw new IllegalArgumentException("event size must be more than 0: " + eventSize);
    }
    this.eventSize = eventSize;
  }

  /**
   * {@return event size Σl² / Σl of some amounts; empty where they add up to nothing}
   *
   * @param pieces amount of each piece, not negative, such as the metres of a scar on a segment
   */
  public static OptionalDouble eventSize(double[] pieces) {
    double sum = 0;
    double squares = 0;
    for (double piece : pieces) {
      sum += piece;
      squares += piece * piece;
    }
    return squares > 0 ? OptionalDouble.of(squares / sum) : OptionalDouble.empty();
  }

  /**
   * Estimates drawn towards the mean of all.
   *
   * @param amounts amount of each segment, not negative
   * @param exposures exposure of each; a segment with 0 gets no estimate and takes no part
   * @return one each, in the order of the segments
   * @throws IllegalArgumentException if the arrays differ in length or a value is negative or not
   *     finite
   */
  public List<ShrunkenRate> towardsWhole(double[] amounts, double[] exposures) {
    check(amounts, exposures);
    Prior prior = new Prior();
    for (int i = 0; i < amounts.length; i++) {
      prior.add(amounts[i], exposures[i]);
    }
    prior.finish(i -> i, amounts.length, amounts, exposures);
    List<ShrunkenRate> rates = new ArrayList<>(amounts.length);
    for (int i = 0; i < amounts.length; i++) {
      rates.add(estimate(prior, amounts[i], exposures[i]));
    }
    return rates;
  }

  /**
   * Estimates each drawn towards the mean of a neighbourhood.
   *
   * @param amounts amount of each segment, not negative
   * @param exposures exposure of each; a segment with 0 gets no estimate and takes no part
   * @param neighbourhoods positions of the segments of each neighbourhood, itself among them
   * @return one each, in the order of the segments
   * @throws IllegalArgumentException if the arrays differ in length or a value is negative or not
   *     finite
   */
  public List<ShrunkenRate> towardsNeighbours(
      double[] amounts, double[] exposures, int[][] neighbourhoods) {
    check(amounts, exposures);
    if (neighbourhoods.length != amounts.length) {
      throw new IllegalArgumentException("neighbourhoods and amounts differ in number");
    }
    List<ShrunkenRate> rates = new ArrayList<>(amounts.length);
    for (int i = 0; i < amounts.length; i++) {
      int[] near = neighbourhoods[i];
      Prior prior = new Prior();
      for (int j : near) {
        prior.add(amounts[j], exposures[j]);
      }
      prior.finish(k -> near[k], near.length, amounts, exposures);
      rates.add(estimate(prior, amounts[i], exposures[i]));
    }
    return rates;
  }

  private ShrunkenRate estimate(Prior prior, double amount, double exposure) {
    if (exposure == 0) {
      return ShrunkenRate.UNDEFINED;
    }
    double mean = prior.mean;
    if (prior.between == 0) {
      return ShrunkenRate.at(mean);
    }
    double sampling = eventSize * mean / exposure;
    double weight = prior.between / (prior.between + sampling);
    double estimate = mean + weight * (amount / exposure - mean);
    double shape = mean * mean / prior.between + amount / eventSize;
    GammaDistribution posterior = GammaDistribution.of(shape, estimate / shape);
    double tail = (1 - INTERVAL_SHARE) / 2;
    return new ShrunkenRate(
        OptionalDouble.of(estimate),
        OptionalDouble.of(posterior.inverseCumulativeProbability(tail)),
        OptionalDouble.of(posterior.inverseSurvivalProbability(tail)),
        false);
  }

  private static void check(double[] amounts, double[] exposures) {
    if (amounts.length != exposures.length) {
      throw new IllegalArgumentException("amounts and exposures differ in number");
    }
    for (int i = 0; i < amounts.length; i++) {
      if (!(amounts[i] >= 0 && exposures[i] >= 0)
          || Double.isInfinite(amounts[i])
          || Double.isInfinite(exposures[i])) {
        throw new IllegalArgumentException(
            "segment " + i + ": " + amounts[i] + " on " + exposures[i] + " is no rate");
      }
    }
  }

  @FunctionalInterface
  private interface Positions {
    int at(int k);
  }

  /** Mean and variance between the segments of one neighbourhood. */
  private final class Prior {
    private double amount;
    private double exposure;
    private int exposed;
    private double mean;
    private double between;

    void add(double oneAmount, double oneExposure) {
      if (oneExposure > 0) {
        amount += oneAmount;
        exposure += oneExposure;
        exposed++;
      }
    }

    void finish(Positions positions, int count, double[] amounts, double[] exposures) {
      if (exposed == 0) {
        return;
      }
      mean = amount / exposure;
      double squares = 0;
      for (int k = 0; k < count; k++) {
        int i = positions.at(k);
        if (exposures[i] > 0) {
          double difference = amounts[i] / exposures[i] - mean;
          squares += exposures[i] * difference * difference;
        }
      }
      double meanExposure = exposure / exposed;
      between = Math.max(0, squares / exposure - eventSize * mean / meanExposure);
    }
  }
}
