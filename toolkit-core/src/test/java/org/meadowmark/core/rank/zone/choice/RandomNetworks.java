package org.meadowmark.core.rank.zone.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.meadowmark.core.rank.network.SegmentNetwork;

/** Invented networks of segments, by seed. */
final class RandomNetworks {
  enum Shape {
    PATHS,
    TREES,
    LOOPS,
    JUNCTIONS
  }

  private RandomNetworks() {}

  static ZoneProblem small(long seed) {
    Random random = new Random(seed);
    Shape shape = Shape.values()[(int) (seed % Shape.values().length)];
    int count = 1 + random.nextInt(12);
    double[] lengths = lengths(count, random);
    double[] values = values(count, random);
    int zones = 1 + random.nextInt(4);
    double total = 0;
    for (double length : lengths) {
      total += length;
    }
    double limit =
        random.nextInt(4) == 0 ? 100 * (1 + random.nextInt(6)) : total * random.nextDouble();
    return new ZoneProblem(
        SegmentNetwork.ofPairs(pairs(shape, count, random), lengths), values, zones, limit);
  }

  private static double[] lengths(int count, Random random) {
    boolean equal = random.nextInt(3) == 0;
    return random.doubles(count, 60, 140).map(length -> equal ? 100 : length).toArray();
  }

  private static double[] values(int count, Random random) {
    int kind = random.nextInt(3);
    return random
        .doubles(count, 0, 50)
        .map(
            value ->
                kind == 0 ? Math.floor(value / 10) : kind == 1 ? Math.max(0, value - 30) : value)
        .toArray();
  }

  private static List<int[]> pairs(Shape shape, int count, Random random) {
    List<int[]> pairs = new ArrayList<>();
    for (int i = 1; i < count; i++) {
      if (random.nextInt(8) > 0) {
        pairs.add(new int[] {i, shape == Shape.PATHS ? i - 1 : random.nextInt(i)});
      }
    }
    if (shape == Shape.LOOPS) {
      for (int extra = random.nextInt(1 + count / 2); extra > 0 && count > 2; extra--) {
        int from = random.nextInt(count);
        int to = random.nextInt(count);
        if (from != to) {
          pairs.add(new int[] {from, to});
        }
      }
    }
    return shape == Shape.JUNCTIONS ? channels(count, random) : pairs;
  }

  /** Segments between places: those that share a place are neighbours. */
  private static List<int[]> channels(int count, Random random) {
    int places = 2 + count * 2 / 3;
    int[][] ends = new int[count][];
    for (int i = 0; i < count; i++) {
      ends[i] = new int[] {random.nextInt(places), random.nextInt(places)};
    }
    List<int[]> pairs = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      for (int j = 0; j < i; j++) {
        if (ends[i][0] == ends[j][0]
            || ends[i][0] == ends[j][1]
            || ends[i][1] == ends[j][0]
            || ends[i][1] == ends[j][1]) {
          pairs.add(new int[] {i, j});
        }
      }
    }
    return pairs;
  }

  /**
   * A grown network of channels: a trunk with branches, and loops of given number, with damage in
   * clusters.
   */
  static SegmentNetwork large(int count, int loops, Random random) {
    List<int[]> pairs = new ArrayList<>();
    double[] lengths = random.doubles(count, 80, 120).toArray();
    for (int i = 1; i < count; i++) {
      boolean branches = random.nextInt(40) == 0;
      pairs.add(new int[] {i, branches ? random.nextInt(i) : i - 1});
    }
    for (int loop = 0; loop < loops; loop++) {
      int from = random.nextInt(count);
      int to = Math.min(count - 1, Math.max(0, from + 3 + random.nextInt(40)));
      if (from != to) {
        pairs.add(new int[] {from, to});
      }
    }
    return SegmentNetwork.ofPairs(pairs, lengths);
  }

  static double[] clusteredValues(int count, double damagedShare, Random random) {
    double[] values = new double[count];
    for (int centre = 0; centre < count * damagedShare / 8; centre++) {
      int middle = random.nextInt(count);
      double strength = Math.exp(2 * random.nextGaussian() / 2) * 100;
      for (int i = Math.max(0, middle - 4); i < Math.min(count, middle + 4); i++) {
        values[i] += strength * random.nextDouble();
      }
    }
    return values;
  }
}
