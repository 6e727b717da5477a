package org.meadowmark.core.change.effect;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.change.Interval;

/**
 * Marked rate less control rate, season by season, after against before: the test of Stewart-Oaten,
 * Murdoch &amp; Parker (1986), in which seasons and not segments are the sample.
 *
 * @param seasonsBefore seasons before
 * @param seasonsAfter seasons after
 * @param difference mean difference after less mean difference before
 * @param interval its interval; empty where the seasons do not vary
 * @param pValue two-sided p-value of Welch's t; empty where the seasons do not vary
 */
public record SeasonTest(
    int seasonsBefore,
    int seasonsAfter,
    double difference,
    Optional<Interval> interval,
    OptionalDouble pValue) {

  /** The test; empty with fewer than two seasons before or after. */
  static Optional<SeasonTest> of(double[] before, double[] after, double confidence) {
    if (before.length < 2 || after.length < 2) {
      return Optional.empty();
    }
    DifferenceOfMeans difference = DifferenceOfMeans.of(mean(after), mean(before));
    return Optional.of(
        new SeasonTest(
            before.length,
            after.length,
            difference.difference(),
            difference.interval(confidence),
            difference.pValue()));
  }

  private static GroupChange mean(double[] values) {
    double[] weights = new double[values.length];
    Arrays.fill(weights, 1);
    return GroupChange.of(values, weights, values.length);
  }
}
