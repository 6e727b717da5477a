package org.meadowmark.core.rank.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Getis–Ord Gi* with binary neighbours, and how often chance gives as high a value.
 *
 * <p>For values x of n segments, the k neighbours of i (itself among them), mean x̄ and S² = Σx²/n
 * − x̄²: Gi* = (Σ neighbours' x − k·x̄) / (S·√((n·k − k²)/(n − 1))). Source: Ord &amp; Getis
 * (1995), <i>Local spatial autocorrelation statistics</i>, Geographical Analysis 27:286–306.
 * Undefined where all values are equal or everything is a neighbour.
 *
 * <p>Gi* describes surroundings: <b>the highest value can stand beside the segment with most scars
 * and not on it</b>, see {@link #CAUTION}.
 *
 * <p><b>Pseudo p-value</b> by conditional permutation: the value of i stays, its k − 1 other
 * neighbours get values drawn without replacement from all other segments; p = (1 + draws at least
 * as high) / (1 + draws), upper tail. Source: Anselin (1995), <i>Local indicators of spatial
 * association</i>, Geographical Analysis 27:93–115. A segment without neighbours cannot be tested
 * so and has no p-value.
 *
 * <p>P permutations can give no p below 1/(P+1), too coarse to stand after adjustment for many
 * segments. So where fewer than {@value #ENOUGH_EXCEEDANCES} of P draws reach the observed value,
 * drawing goes on until {@value #ENOUGH_EXCEEDANCES} have, p then being that number over the number
 * of draws, or until there are {@value #FOLLOW_UP} (P + 1) − 1 draws. Source of stopping by a
 * number of exceedances: Besag &amp; Clifford (1991), <i>Sequential Monte Carlo p-values</i>,
 * Biometrika 78:301–304.
 *
 * <p>Each segment has its own seeded stream, so results do not depend on threads. Time n·P·k.
 */
final class NetworkHotSpots {
  /** What a reader must know about the highest Gi*. */
  static final String CAUTION =
      "Gi* describes a segment together with its neighbours along the channel: the highest value"
          + " can stand beside the segment with the highest rate, not on it.";

  static final int ENOUGH_EXCEEDANCES = 10;
  static final int FOLLOW_UP = 100;

  private static final double EQUAL_SHARE = 1e-12;
  private static final int CHUNK = 64;

  /** Gi* and p-value of a segment. */
  record Score(OptionalDouble z, OptionalDouble p) {
    static final Score NONE = new Score(OptionalDouble.empty(), OptionalDouble.empty());
  }

  private final double[] values;
  private final int[][] neighbours;
  private final double mean;
  private final double deviation;
  private final double tolerance;

  /**
   * Takes values and neighbours.
   *
   * @param values value of each segment
   * @param neighbours positions of the neighbours of each, itself among them
   */
  NetworkHotSpots(double[] values, int[][] neighbours) {
    this.values = values.clone();
    this.neighbours = neighbours;
    this.mean = Arrays.stream(values).average().orElse(0);
    this.deviation =
        Math.sqrt(Arrays.stream(values).map(x -> (x - mean) * (x - mean)).average().orElse(0));
    this.tolerance =
        EQUAL_SHARE * values.length * Arrays.stream(values).map(Math::abs).max().orElse(0);
  }

  /** Gi* of each segment. */
  List<OptionalDouble> z() {
    return IntStream.range(0, values.length).mapToObj(this::z).toList();
  }

  /**
   * Gi* and p-value of each segment.
   *
   * @param permutations draws a segment, before small p-values are followed further
   * @param seed seed of all draws
   */
  List<Score> test(int permutations, long seed) {
    int chunks = (values.length + CHUNK - 1) / CHUNK;
    return IntStream.range(0, chunks)
        .parallel()
        .mapToObj(chunk -> chunk(chunk * CHUNK, permutations, seed))
        .flatMap(List::stream)
        .toList();
  }

  private OptionalDouble z(int i) {
    double n = values.length;
    double k = neighbours[i].length;
    if (!(deviation > tolerance) || k >= n) {
      return OptionalDouble.empty();
    }
    double sum = 0;
    for (int j : neighbours[i]) {
      sum += values[j];
    }
    return OptionalDouble.of((sum - k * mean) / (deviation * Math.sqrt((n * k - k * k) / (n - 1))));
  }

  private List<Score> chunk(int from, int permutations, long seed) {
    double[] urn = values.clone();
    int to = Math.min(values.length, from + CHUNK);
    return IntStream.range(from, to)
        .mapToObj(i -> score(i, urn, permutations, seed))
        .flatMap(Stream::ofNullable)
        .toList();
  }

  private Score score(int i, double[] urn, int permutations, long seed) {
    OptionalDouble z = z(i);
    if (z.isEmpty()) {
      return Score.NONE;
    }
    if (neighbours[i].length == 1) {
      return new Score(z, OptionalDouble.empty());
    }
    return new Score(z, OptionalDouble.of(p(i, urn, permutations, seed)));
  }

  private double p(int i, double[] urn, int permutations, long seed) {
    double observed = -tolerance;
    for (int j : neighbours[i]) {
      observed += j == i ? 0 : values[j];
    }
    int others = neighbours[i].length - 1;
    int last = urn.length - 1;
    swap(urn, i, last);
    SplittableRandom random = new SplittableRandom(mix(seed ^ mix(i + 1L)));
    int[] drawn = new int[others];
    long most = (long) FOLLOW_UP * (permutations + 1L) - 1;
    long draws = 0;
    int exceedances = 0;
    while (draws < permutations || draws < most && exceedances < ENOUGH_EXCEEDANCES) {
      if (draw(urn, last, drawn, random) >= observed) {
        exceedances++;
      }
      draws++;
    }
    swap(urn, i, last);
    boolean stoppedByExceedances = draws > permutations && exceedances >= ENOUGH_EXCEEDANCES;
    return stoppedByExceedances
        ? (double) exceedances / draws
        : (exceedances + 1.0) / (draws + 1.0);
  }

  /** Sum of values drawn without replacement; leaves the urn as it was. */
  private static double draw(double[] urn, int size, int[] drawn, SplittableRandom random) {
    double sum = 0;
    for (int k = 0; k < drawn.length; k++) {
      drawn[k] = k + random.nextInt(size - k);
      swap(urn, k, drawn[k]);
      sum += urn[k];
    }
    for (int k = drawn.length - 1; k >= 0; k--) {
      swap(urn, k, drawn[k]);
    }
    return sum;
  }

  private static void swap(double[] array, int one, int other) {
    double value = array[one];
    array[one] = array[other];
    array[other] = value;
  }

  /** Finaliser of SplitMix. */
  private static long mix(long value) {
    long z = value;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
