package org.meadowmark.core.rank.statistics;

import java.util.Arrays;
import org.apache.commons.statistics.descriptive.Quantile;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Makes p-values as large as they should be where most of them are spread too wide.
 *
 * <p>Random arrangements take segments for independent. Segments side by side share bed and long
 * scars, so their sums vary more than those of arrangements, and small p-values are too frequent.
 * With z the normal score of p, the spread of the middle half of all z, which few hot spots hardly
 * change, tells by how much: λ = max(1, interquartile range of z / 1.349), and the p-value of z / λ
 * is taken. Source: Efron (2004), <i>Large-scale simultaneous hypothesis testing: the choice of a
 * null hypothesis</i>, Journal of the American Statistical Association 99:96–104; with λ at least
 * 1, so that nothing gets easier, as in the genomic control of Devlin &amp; Roeder (1999),
 * Biometrics 55:997–1004 (both from memory).
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

  /** How much wider than normal the middle half of the normal scores is, at least 1. */
  static double inflation(double[] pValues) {
    if (pValues.length == 0) {
      return 1;
    }
    double[] quartiles = Quantile.withDefaults().evaluate(scores(pValues), 0.25, 0.75);
    return Math.max(1, (quartiles[1] - quartiles[0]) / NORMAL_INTERQUARTILE_RANGE);
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
