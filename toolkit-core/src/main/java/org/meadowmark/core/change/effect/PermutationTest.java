package org.meadowmark.core.change.effect;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * How often the marks, put on other segments of the comparison, would show a difference as clear.
 *
 * <p>The statistic is the difference in differences of logarithms, ln R of {@link RatioSums}, over
 * its standard error: seasons that are bad for all multiply rates, and with the standard error the
 * test holds its level in large samples even where marked and control segments vary differently
 * (Janssen 1997, Statistics &amp; Probability Letters 36:9–21; Chung &amp; Romano 2013, Annals of
 * Statistics 41:484–507, both from memory). Two-sided. All arrangements are counted where there are
 * few; else p = (1 + as clear ones) / (1 + draws), Phipson &amp; Smyth (2010), Statistical
 * Applications in Genetics and Molecular Biology 9, article 39 (from memory).
 *
 * @param pValue share of arrangements whose difference is as clear or clearer
 * @param arrangements arrangements counted
 * @param isExact whether these are all
 * @param smallestPValue the smallest p-value that these segments can give
 */
public record PermutationTest(
    double pValue, long arrangements, boolean isExact, double smallestPValue) {
  /** Rounding of sums in another order must not turn equal statistics into different ones. */
  private static final double EQUAL = 1e-9;

  static PermutationTest of(Design design, int most, long seed) {
    double observed = Math.abs(new RatioSums(design, design.labels()).statistic());
    double bound = observed == Double.POSITIVE_INFINITY ? observed : observed * (1 - EQUAL) - EQUAL;
    double all = arrangements(design);
    if (all <= most) {
      return exact(design, bound, all);
    }
    SplittableRandom random = new SplittableRandom(seed);
    int[] labels = design.labels().clone();
    long clear = 0;
    for (int draw = 0; draw < most; draw++) {
      shuffle(labels, random);
      clear += Math.abs(new RatioSums(design, labels).statistic()) >= bound ? 1 : 0;
    }
    return new PermutationTest((1.0 + clear) / (1.0 + most), most, false, 1.0 / (1.0 + most));
  }

  private static PermutationTest exact(Design design, double bound, double all) {
    int[] labels = design.labels().clone();
    Arrays.sort(labels);
    long clear = 0;
    long counted = 0;
    do {
      counted++;
      clear += Math.abs(new RatioSums(design, labels).statistic()) >= bound ? 1 : 0;
    } while (next(labels));
    return new PermutationTest((double) clear / counted, counted, true, 1 / all);
  }

  /** n! / Π nₖ! over controls and groups. */
  private static double arrangements(Design design) {
    int[] counts = new int[design.groups() + 1];
    double ways = 1;
    int placed = 0;
    for (int label : design.labels()) {
      placed++;
      int kind = label + 1;
      counts[kind]++;
      ways *= (double) placed / counts[kind];
    }
    return Math.rint(ways);
  }

  /** The next arrangement in lexical order, or false after the last. */
  private static boolean next(int[] labels) {
    int pivot = labels.length - 2;
    while (pivot >= 0 && labels[pivot] >= labels[pivot + 1]) {
      pivot--;
    }
    if (pivot < 0) {
      return false;
    }
    int larger = labels.length - 1;
    while (labels[larger] <= labels[pivot]) {
      larger--;
    }
    swap(labels, pivot, larger);
    for (int i = pivot + 1, j = labels.length - 1; i < j; i++, j--) {
      swap(labels, i, j);
    }
    return true;
  }

  private static void shuffle(int[] labels, SplittableRandom random) {
    for (int i = labels.length - 1; i > 0; i--) {
      swap(labels, i, random.nextInt(i + 1));
    }
  }

  private static void swap(int[] labels, int i, int j) {
    int kept = labels[i];
    labels[i] = labels[j];
    labels[j] = kept;
  }
}
