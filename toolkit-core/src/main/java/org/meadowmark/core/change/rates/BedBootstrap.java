package org.meadowmark.core.change.rates;

import java.util.Arrays;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.meadowmark.core.change.Interval;

/**
 * Interval of a figure made of sums over beds: beds are drawn again with replacement, and the
 * percentiles of what the draws give are its limits. Efron &amp; Tibshirani (1993), <i>An
 * Introduction to the Bootstrap</i>, chapter 13 (from memory).
 *
 * <p>It tells how much the figure hangs on single beds; an error that all beds share, such as a
 * survey that saw less, is not in it. Too narrow with few beds: with 10 a 95 % interval holds some
 * 90 % (from memory), so with fewer there is none.
 */
public final class BedBootstrap {
  /** Fewer beds give no interval. */
  public static final int FEWEST_BEDS = 10;

  private final int draws;
  private final long seed;
  private final double confidence;

  /**
   * Creates a bootstrap.
   *
   * @param draws draws of all beds
   * @param seed seed of the draws
   * @param confidence share of intervals that are to hold the truth
   */
  public BedBootstrap(int draws, long seed, double confidence) {
    this.draws = draws;
    this.seed = seed;
    this.confidence = confidence;
  }

  /**
   * Interval of a figure.
   *
   * @param beds number of beds
   * @param figure the figure, from how often each bed was drawn; not a number where it is undefined
   * @return empty with too few beds, without draws, or where a draw in ten leaves it undefined
   */
  public Optional<Interval> interval(int beds, ToDoubleFunction<int[]> figure) {
    if (beds < FEWEST_BEDS || draws < 1) {
      return Optional.empty();
    }
    SplittableRandom random = new SplittableRandom(seed);
    double[] values = new double[draws];
    int defined = 0;
    int[] times = new int[beds];
    for (int draw = 0; draw < draws; draw++) {
      Arrays.fill(times, 0);
      for (int i = 0; i < beds; i++) {
        times[random.nextInt(beds)]++;
      }
      double value = figure.applyAsDouble(times);
      if (Double.isFinite(value)) {
        values[defined] = value;
        defined++;
      }
    }
    if (defined * 10L < draws * 9L) {
      return Optional.empty();
    }
    double[] sorted = Arrays.copyOf(values, defined);
    Arrays.sort(sorted);
    double tail = (1 - confidence) / 2;
    return Optional.of(new Interval(quantile(sorted, tail), quantile(sorted, 1 - tail)));
  }

  private static double quantile(double[] sorted, double share) {
    double at = share * (sorted.length - 1);
    int below = (int) Math.floor(at);
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
  }
}
