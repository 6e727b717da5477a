package org.meadowmark.core.rank.statistics;

import java.util.Arrays;
import org.apache.commons.statistics.descriptive.Quantile;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Makes p-values as large as they should be where most of them are spread too wide.
 *
 * <p>Random arrangements take segments for independent. Segments side by side share bed and long
 * scars, so their sums vary more than those of arrangements, and small p-values are too frequent.
 * With z the normal score of p, the spread of the middle of all z, which few hot spots hardly
 * change, tells by how much: λ is the larger of the interquartile range of z over its normal value
 * 1.349, and of the median less the 15.9th percentile, which hot spots do not touch; at least 1.
 * The p-value of z / λ is taken. Source: Efron (2004), <i>Large-scale simultaneous hypothesis
 * testing: the choice of a null hypothesis</i>, Journal of the American Statistical Association
 * 99:96–104; λ at least 1, so that nothing gets easier, as in the genomic control of Devlin &amp;
 * Roeder (1999), Biometrics 55:997–1004 (both from memory).
 *
 * <p>Time n log n.
 */
final class NullCalibration {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
  private static final double NORMAL_INTERQUARTILE_RANGE =
      2 * NORMAL.inverseCumulativeProbability(0.75);

  /** A p of 1 has no normal score. */
  private static final double LARGEST = 1 - 1e-6;

  private NullCalibration() {}

  /** How much wider than normal the middle of the normal scores is, at least 1. */
  static double inflation(double[] pValues) {
    if (pValues.length == 0) {
      return 1;
    }
    double[] quantiles =
        Quantile.withDefaults()
            .evaluate(scores(pValues), NORMAL.cumulativeProbability(-1), 0.25, 0.5, 0.75);
    double middle = (quantiles[3] - quantiles[1]) / NORMAL_INTERQUARTILE_RANGE;
    double lower = quantiles[2] - quantiles[0];
    return Math.max(1, Math.max(middle, lower));
  }

  /** Larger p-values by the inflation; the same where there is none. */
  static double[] calibrated(double[] pValues) {
    double inflation = inflation(pValues);
    return inflation == 1
        ? pValues.clone()
        : Arrays.stream(scores(pValues))
            .map(score -> NORMAL.survivalProbability(score / inflation))
            .toArray();
  }

  private static double[] scores(double[] pValues) {
    return Arrays.stream(pValues)
        .map(p -> NORMAL.inverseSurvivalProbability(Math.min(p, LARGEST)))
        .toArray();
  }
}
