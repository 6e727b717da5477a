package org.meadowmark.core.change.rates;

import org.apache.commons.statistics.distribution.BetaDistribution;
import org.meadowmark.core.change.Interval;

/**
 * Exact interval of a share: Clopper &amp; Pearson (1934), <i>The use of confidence or fiducial
 * limits illustrated in the case of the binomial</i>, Biometrika 26:404–413 (formula from memory).
 */
public final class BinomialInterval {
  private BinomialInterval() {}

  /**
   * {@return limits of the share}
   *
   * @param hits members that have it
   * @param all members, 1 or more
   * @param confidence share of intervals that are to hold the truth
   * @throws IllegalArgumentException if there is no member, or there are more hits
   */
  public static Interval of(long hits, long all, double confidence) {
    if (all < 1 || hits < 0 || hits > all) {
      throw new IllegalArgumentException("no share: " + hits + " of " + all);
    }
    double tail = (1 - confidence) / 2;
    return new Interval(
        hits == 0
            ? 0
            : BetaDistribution.of(hits, all - hits + 1.0).inverseCumulativeProbability(tail),
        hits == all
            ? 1
            : BetaDistribution.of(hits + 1.0, all - hits).inverseSurvivalProbability(tail));
  }
}
