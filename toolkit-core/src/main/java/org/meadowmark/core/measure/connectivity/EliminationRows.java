package org.meadowmark.core.measure.connectivity;

import java.util.Arrays;

/**
 * Shortest paths from several nodes at once to all others: up the order of removal from the
 * sources, then down over all nodes, without a queue.
 *
 * <p>The sweep down in a fixed order, for several sources side by side: Delling, Goldberg, Nowatzyk
 * and Werneck (2013), <i>PHAST: hardware-accelerated shortest path trees</i>, Journal of Parallel
 * and Distributed Computing 73:940–952. Not for several threads.
 */
final class EliminationRows {
  /** Sources at once. */
  static final int LANES = 16;

  private final Elimination elimination;
  private final boolean[] touched;
  private final double[] lane = new double[LANES];

  /** Length of the shortest path by rank and source; beyond the limit too large or infinite. */
  final double[] lengths;

  EliminationRows(Elimination elimination) {
    this.elimination = elimination;
    lengths = new double[elimination.ranks.length * LANES];
    touched = new boolean[elimination.ranks.length];
  }

  /** Rows of nodes {@code from} to before {@code to}, at most as many as there are lanes. */
  void solve(int from, int to) {
    Arrays.fill(lengths, Double.POSITIVE_INFINITY);
    Arrays.fill(touched, false);
    int lowest = Integer.MAX_VALUE;
    for (int source = from; source < to; source++) {
      int rank = elimination.ranks[source];
      lengths[rank * LANES + source - from] = 0;
      touched[rank] = true;
      lowest = Math.min(lowest, rank);
    }
    for (int rank = lowest; rank < touched.length; rank++) {
      if (touched[rank]) {
        System.arraycopy(lengths, rank * LANES, lane, 0, LANES);
        for (int a = elimination.starts[rank]; a < elimination.starts[rank + 1]; a++) {
          touched[elimination.uppers[a]] = true;
          improve(lengths, elimination.uppers[a] * LANES, lane, 0, elimination.lengths[a]);
        }
      }
    }
    for (int rank = touched.length - 1; rank >= 0; rank--) {
      System.arraycopy(lengths, rank * LANES, lane, 0, LANES);
      for (int a = elimination.starts[rank]; a < elimination.starts[rank + 1]; a++) {
        improve(lane, 0, lengths, elimination.uppers[a] * LANES, elimination.lengths[a]);
      }
      System.arraycopy(lane, 0, lengths, rank * LANES, LANES);
    }
  }

  private static void improve(double[] to, int at, double[] from, int start, double length) {
    for (int l = 0; l < LANES; l++) {
      to[at + l] = Math.min(to[at + l], from[start + l] + length);
    }
  }
}
