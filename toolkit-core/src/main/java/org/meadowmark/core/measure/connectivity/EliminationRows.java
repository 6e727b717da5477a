package org.meadowmark.core.measure.connectivity;

import java.util.Arrays;

/**
 * Best products from several nodes at once to all others: up the order of removal from the sources,
 * then down over all nodes, without a queue.
 *
 * <p>The sweep down in a fixed order, for several sources side by side: Delling, Goldberg, Nowatzyk
 * and Werneck (2013), <i>PHAST: hardware-accelerated shortest path trees</i>, Journal of Parallel
 * and Distributed Computing 73:940–952. Not for several threads.
 */
final class EliminationRows {
  /** Sources at once. */
  static final int LANES = 16;

  private final Elimination elimination;
  private final double smallest;
  private final double[] areas;
  private final boolean[] touched;
  private final double[] lane = new double[LANES];

  /** Best product by rank and source, 0 below the cut-off. */
  final double[] values;

  /** Σ area · best product of each source. */
  final double[] sums = new double[LANES];

  /** Area of the nodes below the cut-off from each source. */
  final double[] missed = new double[LANES];

  EliminationRows(Component component, Elimination elimination, Decay.Exponential decay) {
    this.elimination = elimination;
    smallest = decay.cutoff() * (1 - 1e-9);
    int n = component.size();
    values = new double[n * LANES];
    touched = new boolean[n];
    areas = new double[n];
    for (int v = 0; v < n; v++) {
      areas[elimination.ranks[v]] = component.areas[v];
    }
  }

  /** Rows of nodes {@code from} to before {@code to}, at most as many as there are lanes. */
  void solve(int from, int to) {
    Arrays.fill(values, 0);
    Arrays.fill(touched, false);
    Arrays.fill(sums, 0);
    Arrays.fill(missed, 0);
    int lowest = Integer.MAX_VALUE;
    for (int source = from; source < to; source++) {
      int rank = elimination.ranks[source];
      values[rank * LANES + source - from] = 1;
      touched[rank] = true;
      lowest = Math.min(lowest, rank);
    }
    for (int rank = lowest; rank < touched.length; rank++) {
      if (touched[rank]) {
        System.arraycopy(values, rank * LANES, lane, 0, LANES);
        for (int a = elimination.starts[rank]; a < elimination.starts[rank + 1]; a++) {
          touched[elimination.uppers[a]] = true;
          improve(values, elimination.uppers[a] * LANES, lane, 0, elimination.probabilities[a]);
        }
      }
    }
    for (int rank = touched.length - 1; rank >= 0; rank--) {
      System.arraycopy(values, rank * LANES, lane, 0, LANES);
      for (int a = elimination.starts[rank]; a < elimination.starts[rank + 1]; a++) {
        improve(lane, 0, values, elimination.uppers[a] * LANES, elimination.probabilities[a]);
      }
      add(rank);
    }
  }

  private static void improve(double[] to, int at, double[] from, int start, double probability) {
    for (int l = 0; l < LANES; l++) {
      to[at + l] = Math.max(to[at + l], from[start + l] * probability);
    }
  }

  private void add(int rank) {
    double area = areas[rank];
    for (int l = 0; l < LANES; l++) {
      double value = lane[l];
      if (value < smallest) {
        value = 0;
        missed[l] += area;
      }
      sums[l] += area * value;
      values[rank * LANES + l] = value;
    }
  }
}
