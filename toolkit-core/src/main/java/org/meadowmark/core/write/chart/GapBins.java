package org.meadowmark.core.write.chart;

import java.util.Arrays;

/**
 * Gap widths counted in bins of one width, from zero; the few widest gaps go into a last bin
 * without an upper end, so that they do not squeeze all others into one bar.
 *
 * @param binMetres width of a bin
 * @param counts gaps by bin
 * @param beyond gaps wider than the last bin
 */
record GapBins(double binMetres, int[] counts, int beyond) {
  private static final int MOST_BINS = 16;
  private static final double CORE = 0.98;
  private static final double STRETCH = 3;
  private static final double ROUNDING = 1e-9;
  private static final double[] STEPS = {1, 2, 5, 10};

  /**
   * Counts widths.
   *
   * @param widthsMetres at least one width
   */
  static GapBins of(double[] widthsMetres) {
    double[] sorted = widthsMetres.clone();
    Arrays.sort(sorted);
    double largest = sorted[sorted.length - 1];
    double core = sorted[(int) Math.ceil(CORE * sorted.length) - 1];
    if (sorted.length > 1 && core == largest) {
      double second = sorted[sorted.length - 2];
      core = largest > STRETCH * second ? Math.max(second, largest / MOST_BINS) : largest;
    }
    double reach = largest <= STRETCH * core ? largest : core;
    double bin = niceStep(Math.max(reach, Double.MIN_NORMAL) / MOST_BINS);
    int[] counts = new int[(int) Math.floor(reach / bin + ROUNDING) + 1];
    int beyond = 0;
    for (double width : sorted) {
      int place = (int) Math.min(Math.floor(width / bin + ROUNDING), Integer.MAX_VALUE);
      if (place < counts.length) {
        counts[place]++;
      } else {
        beyond++;
      }
    }
    return new GapBins(bin, counts, beyond);
  }

  double endMetres() {
    return counts.length * binMetres;
  }

  /** The smallest of 1, 2 and 5 times a power of ten that is not below a value. */
  static double niceStep(double atLeast) {
    double magnitude = Math.pow(10, Math.floor(Math.log10(atLeast)));
    for (double step : STEPS) {
      if (step * magnitude >= atLeast) {
        return step * magnitude;
      }
    }
    return STEPS[STEPS.length - 1] * magnitude;
  }
}
