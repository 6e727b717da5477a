package org.meadowmark.core.change.rates;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.meadowmark.core.change.Interval;

/**
 * Intervals of expected numbers and lengths of scars that fall independently of each other.
 *
 * <p>Number: exact, ½χ²(α/2; 2n) to ½χ²(1 − α/2; 2n + 2), Garwood (1936), <i>Fiducial limits for
 * the Poisson distribution</i>, Biometrika 28:437–442. Length: each scar is a Poisson event that
 * weighs its metres; the gamma limits of Fay &amp; Feuer (1997), <i>Confidence intervals for
 * directly standardized rates</i>, Statistics in Medicine 16:791–801, which are Garwood's where all
 * weigh the same. (Both formulas from memory.) They hold at least the stated share; scars that come
 * in groups make them too narrow.
 */
public final class PoissonInterval {
  private PoissonInterval() {}

  /**
   * {@return limits of the expected number}
   *
   * @param count number seen, 0 or more
   * @param confidence share of intervals that are to hold the truth
   */
  public static Interval ofCount(long count, double confidence) {
    return new Interval(low(count, 1, confidence), high(count, 1, confidence));
  }

  /**
   * {@return limits of the expected sum of metres}
   *
   * @param metres length of each scar, more than 0
   * @param leastMetres length that one more scar is taken to have at least, for the upper limit
   *     where none was seen
   * @param confidence share of intervals that are to hold the truth
   */
  public static Interval ofLengths(double[] metres, double leastMetres, double confidence) {
    double sum = 0;
    double squares = 0;
    double longest = leastMetres;
    for (double one : metres) {
      sum += one;
      squares += one * one;
      longest = Math.max(longest, one);
    }
    double lower = sum > 0 ? low(sum * sum / squares, squares / sum, confidence) : 0;
    double sumAbove = sum + longest;
    double squaresAbove = squares + longest * longest;
    double scale = squaresAbove / sumAbove;
    double events = sumAbove / scale;
    return new Interval(
        lower,
        scale
            / 2
            * ChiSquaredDistribution.of(2 * events).inverseSurvivalProbability(tail(confidence)));
  }

  private static double low(double events, double scale, double confidence) {
    return events > 0
        ? scale
            / 2
            * ChiSquaredDistribution.of(2 * events).inverseCumulativeProbability(tail(confidence))
        : 0;
  }

  private static double high(double events, double scale, double confidence) {
    return scale
        / 2
        * ChiSquaredDistribution.of(2 * events + 2).inverseSurvivalProbability(tail(confidence));
  }

  private static double tail(double confidence) {
    return (1 - confidence) / 2;
  }
}
