package org.meadowmark.core.measure.connectivity;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Links that no shortest path uses while some third patch is there: crossing to it and on from it
 * is shorter than the link.
 *
 * <p>Patches have extent, so most pairs within a reach much longer than the gaps are of this kind:
 * a 50 m link over a 40 m patch with a narrow gap on either side. They are left out of the search,
 * and kept by the patch that makes them useless, since they count again when that patch is removed.
 * By induction over lengths, without patch k the remaining links and those kept for k give the same
 * distances as all links do. Only the {@value #NEAREST} nearest patches of either end are tried as
 * the third, so some useless links stay; they cost time only.
 *
 * @param starts first arc kept for each node, and the number of arcs
 * @param froms start of each arc, ascending among those of one node
 * @param tos end of each arc
 * @param lengths length of each arc
 */
record Detours(int[] starts, int[] froms, int[] tos, double[] lengths) {
  private static final int NEAREST = 8;

  /** Far less than any two ways differ that a survey tells apart, far more than rounding. */
  private static final double SHORTER = 1 - 1e-9;

  static Detours none(int nodeCount) {
    return new Detours(new int[nodeCount + 1], new int[0], new int[0], new double[0]);
  }

  /** First arc from a node among those kept for another, or where it would be. */
  int find(int keptFor, int from) {
    int low = starts[keptFor];
    int high = starts[keptFor + 1];
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (froms[middle] < from) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /**
   * For each arc the patch that makes it useless, or -1; the same for both arcs of a link. Arcs of
   * a node must ascend by target.
   */
  static int[] thirdPatches(int[] offsets, int[] targets, double[] lengths) {
    int n = offsets.length - 1;
    int[][] nearest = new int[n][];
    IntStream.range(0, n)
        .parallel()
        .forEach(u -> nearest[u] = nearest(offsets[u], offsets[u + 1], lengths));
    int[] thirds = new int[targets.length];
    IntStream.range(0, n)
        .parallel()
        .forEach(
            u -> {
              for (int a = offsets[u]; a < offsets[u + 1]; a++) {
                int v = targets[a];
                if (u < v) {
                  double longest = lengths[a] * SHORTER;
                  int third = third(u, v, longest, nearest, offsets, targets, lengths);
                  thirds[a] =
                      third >= 0 ? third : third(v, u, longest, nearest, offsets, targets, lengths);
                }
              }
            });
    IntStream.range(0, n)
        .parallel()
        .forEach(
            u -> {
              for (int a = offsets[u]; a < offsets[u + 1] && targets[a] < u; a++) {
                int v = targets[a];
                thirds[a] = thirds[Arrays.binarySearch(targets, offsets[v], offsets[v + 1], u)];
              }
            });
    return thirds;
  }

  private static int[] nearest(int from, int to, double[] lengths) {
    int[] arcs = new int[Math.min(NEAREST, to - from)];
    int count = 0;
    for (int a = from; a < to; a++) {
      int place = count;
      while (place > 0 && lengths[arcs[place - 1]] > lengths[a]) {
        place--;
      }
      if (place < arcs.length) {
        count = Math.min(count + 1, arcs.length);
        System.arraycopy(arcs, place, arcs, place + 1, count - place - 1);
        arcs[place] = a;
      }
    }
    return arcs;
  }

  private static int third(
      int from,
      int to,
      double longest,
      int[][] nearest,
      int[] offsets,
      int[] targets,
      double[] lengths) {
    double shortestOnward = lengths[nearest[to][0]];
    for (int a : nearest[from]) {
      if (lengths[a] + shortestOnward >= longest) {
        return -1;
      }
      int third = targets[a];
      boolean fewer = offsets[third + 1] - offsets[third] < offsets[to + 1] - offsets[to];
      int node = fewer ? third : to;
      int onward =
          Arrays.binarySearch(targets, offsets[node], offsets[node + 1], fewer ? to : third);
      if (onward >= 0 && lengths[a] + lengths[onward] < longest) {
        return third;
      }
    }
    return -1;
  }

  /** Arcs that have a third patch, kept for it. */
  static Detours of(int[] offsets, int[] targets, double[] lengths, int[] thirds) {
    int n = offsets.length - 1;
    int[] starts = new int[n + 1];
    for (int third : thirds) {
      if (third >= 0) {
        starts[third + 1]++;
      }
    }
    for (int i = 0; i < n; i++) {
      starts[i + 1] += starts[i];
    }
    int[] next = Arrays.copyOf(starts, n);
    Detours detours =
        new Detours(starts, new int[starts[n]], new int[starts[n]], new double[starts[n]]);
    for (int u = 0; u < n; u++) {
      for (int a = offsets[u]; a < offsets[u + 1]; a++) {
        if (thirds[a] >= 0) {
          int place = next[thirds[a]]++;
          detours.froms[place] = u;
          detours.tos[place] = targets[a];
          detours.lengths[place] = lengths[a];
        }
      }
    }
    return detours;
  }
}
