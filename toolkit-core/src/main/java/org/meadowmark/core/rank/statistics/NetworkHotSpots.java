package org.meadowmark.core.rank.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

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
 * <p><b>Pseudo p-value</b> by permutation, upper tail: p = (1 + draws at least as high) / (1 +
 * draws). What is drawn, without replacement, is up to the {@link PermutationScheme}. Source:
 * Anselin (1995), <i>Local indicators of spatial association</i>, Geographical Analysis 27:93–115.
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
  private final double[] pool;
  private final int[] placeInPool;
  private final double mean;
  private final double deviation;
  private final double tolerance;

  /**
   * Takes values and neighbours; draws are from all values.
   *
   * @param values value of each segment
   * @param neighbours positions of the neighbours of each, itself among them
   */
  NetworkHotSpots(double[] values, int[][] neighbours) {
    this(values, neighbours, IntStream.range(0, values.length).toArray());
  }

  /**
   * Takes values and neighbours.
   *
   * @param values value of each segment
   * @param neighbours positions of the neighbours of each, itself among them
   * @param reference positions of the segments whose values are drawn from
   */
  NetworkHotSpots(double[] values, int[][] neighbours, int[] reference) {
    this.values = values.clone();
    this.neighbours = neighbours;
    this.pool = Arrays.stream(reference).mapToDouble(i -> values[i]).toArray();
    this.placeInPool = new int[values.length];
    Arrays.fill(placeInPool, -1);
    for (int k = 0; k < reference.length; k++) {
      placeInPool[reference[k]] = k;
    }
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
   * @param scheme what is drawn
   * @param permutations draws a segment, before small p-values are followed further
   * @param seed seed of all draws
   */
  List<Score> test(PermutationScheme scheme, int permutations, long seed) {
    int chunks = (values.length + CHUNK - 1) / CHUNK;
    return IntStream.range(0, chunks)
        .parallel()
        .mapToObj(chunk -> chunk(chunk * CHUNK, new Draws(scheme, permutations, seed)))
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

  private record Draws(PermutationScheme scheme, int permutations, long seed) {
    boolean keepOwn() {
      return scheme == PermutationScheme.CONDITIONAL;
    }

    long most() {
      return FOLLOW_UP * (permutations + 1L) - 1;
    }

    SplittableRandom stream(int segment) {
      return new SplittableRandom(mix(seed ^ mix(segment + 1L)));
    }
  }

  private List<Score> chunk(int from, Draws draws) {
    double[] urn = pool.clone();
    int to = Math.min(values.length, from + CHUNK);
    return IntStream.range(from, to).mapToObj(i -> score(i, urn, draws)).toList();
  }

  private Score score(int i, double[] urn, Draws draws) {
    OptionalDouble z = z(i);
    if (z.isEmpty()) {
      return Score.NONE;
    }
    int drawn = neighbours[i].length - (draws.keepOwn() ? 1 : 0);
    boolean canBeDrawn = drawn > 0 && drawn < pool.length;
    return new Score(
        z, canBeDrawn ? OptionalDouble.of(p(i, drawn, urn, draws)) : OptionalDouble.empty());
  }

  private double p(int i, int drawn, double[] urn, Draws draws) {
    double observed = draws.keepOwn() ? -values[i] : 0;
    for (int j : neighbours[i]) {
      observed += values[j];
    }
    int last = urn.length - 1;
    boolean isAside = draws.keepOwn() && placeInPool[i] >= 0;
    int size = isAside ? last : urn.length;
    int own = isAside ? placeInPool[i] : last;
    int[] places = new int[drawn];
    SplittableRandom random = draws.stream(i);
    swap(urn, own, last);
    long done = 0;
    int exceedances = 0;
    while (done < draws.permutations || done < draws.most() && exceedances < ENOUGH_EXCEEDANCES) {
      if (draw(urn, size, places, random) >= observed - tolerance) {
        exceedances++;
      }
      done++;
    }
    swap(urn, own, last);
    boolean stoppedByExceedances = done > draws.permutations && exceedances == ENOUGH_EXCEEDANCES;
    return stoppedByExceedances ? (double) exceedances / done : (exceedances + 1.0) / (done + 1.0);
  }

  /** Sum of values drawn without replacement; leaves the urn as it was. */
  private static double draw(double[] urn, int size, int[] places, SplittableRandom random) {
    double sum = 0;
    for (int k = 0; k < places.length; k++) {
      places[k] = k + random.nextInt(size - k);
      swap(urn, k, places[k]);
      sum += urn[k];
    }
    for (int k = places.length - 1; k >= 0; k--) {
      swap(urn, k, places[k]);
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
