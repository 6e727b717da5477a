package org.meadowmark.core.rank.statistics;

import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Adjusts p-values so that, of all that are called small, at most a stated share is so by chance on
 * average.
 *
 * <p>For the i-th smallest of n p-values the adjusted value is the least of p₍ₖ₎·n/k over k ≥ i,
 * and at most 1. Rejecting where it is at or below q keeps the false discovery rate at or below q
 * for independent tests: Benjamini &amp; Hochberg (1995), Journal of the Royal Statistical Society
 * B 57:289–300; and for tests that depend on each other positively: Benjamini &amp; Yekutieli
 * (2001), Annals of Statistics 29:1165–1188 (from memory).
 *
 * <p>Time n log n.
 */
public final class FalseDiscovery {
  private FalseDiscovery() {}

  /**
   * {@return adjusted p-values, in the order of the p-values}
   *
   * @param pValues p-values of all tests, in 0–1; the array is left as it is
   * @throws IllegalArgumentException if a value is not from 0 to 1
   */
  public static double[] adjusted(double[] pValues) {
    for (double p : pValues) {
      if (!(p >= 0 && p <= 1)) {
        throw new IllegalArgumentException("no p-value: " + p);
      }
    }
    int n = pValues.length;
    int[] descending =
        IntStream.range(0, n)
            .boxed()
            .sorted(Comparator.comparingDouble((Integer i) -> -pValues[i]))
            .mapToInt(Integer::intValue)
            .toArray();
    double[] adjusted = new double[n];
    double least = 1;
    for (int k = 0; k < n; k++) {
      int i = descending[k];
      least = Math.min(least, pValues[i] * n / (n - k));
      adjusted[i] = least;
    }
    return adjusted;
  }
}
