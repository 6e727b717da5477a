package org.meadowmark.core.measure.connectivity;

import java.util.Arrays;
import java.util.Optional;

/**
 * A component with its nodes removed one by one, so that shortest paths can be read off without a
 * search.
 *
 * <p>When a node goes, each pair of its remaining neighbours gets a link as long as the way over
 * it, if that is shorter than theirs: Gaussian elimination with (min, +) for (+, ×), Carré (1971),
 * <i>An algebra for network routing problems</i>, IMA Journal of Applied Mathematics 7:273–294. The
 * node with fewest neighbours goes first: Tinney and Walker (1967), <i>Direct solutions of sparse
 * network equations by optimally ordered triangular factorization</i>, Proceedings of the IEEE
 * 55:1801–1809. Links beyond the limit are dropped, for every path over them is longer.
 *
 * <p>Small pieces round a large one, chains and rings leave hardly any new links; a grid of n
 * pieces leaves about n·log n.
 */
final class Elimination {
  private static final int SHORT_LIST = 64;

  /** Position of each node in the order of removal. */
  final int[] ranks;

  /** First arc of each rank, and the number of arcs; all lead to higher ranks. */
  final int[] starts;

  final int[] uppers;
  final double[] lengths;

  private Elimination(int[] ranks, int[] starts, int[] uppers, double[] lengths) {
    this.ranks = ranks;
    this.starts = starts;
    this.uppers = uppers;
    this.lengths = lengths;
  }

  int arcCount() {
    return uppers.length;
  }

  /**
   * Removes all nodes, unless that takes too much.
   *
   * @param mostArcs give up beyond this number of links in the end
   * @param mostWork give up beyond this number of pairs of neighbours looked at
   */
  static Optional<Elimination> of(Component component, double limit, long mostArcs, long mostWork) {
    return new Work(component, limit).run(Math.min(mostArcs, Integer.MAX_VALUE / 2), mostWork);
  }

  private static final class Work {
    private final int n;
    private final double limit;
    private final int[][] neighbours;
    private final double[][] links;
    private final int[] sizes;
    private final int[] tidySizes;
    private final int[] degrees;
    private final boolean[] gone;
    private final int[] places;
    private final NodeHeap heap;

    Work(Component component, double limit) {
      n = component.size();
      this.limit = limit;
      neighbours = new int[n][];
      links = new double[n][];
      sizes = new int[n];
      tidySizes = new int[n];
      degrees = new int[n];
      gone = new boolean[n];
      places = new int[n];
      Arrays.fill(places, -1);
      heap = new NodeHeap(n);
      for (int v = 0; v < n; v++) {
        int from = component.offsets[v];
        int to = component.offsets[v + 1];
        neighbours[v] = new int[to - from];
        links[v] = new double[to - from];
        for (int a = from; a < to; a++) {
          double length = component.lengths[a];
          if (length <= limit) {
            append(v, component.targets[a], length);
          }
        }
        tidySizes[v] = sizes[v];
        degrees[v] = sizes[v];
        heap.offer(v, degrees[v]);
      }
    }

    Optional<Elimination> run(long mostArcs, long mostWork) {
      int[] order = new int[n];
      int[] ranks = new int[n];
      long arcs = 0;
      long work = 0;
      int rank = 0;
      while (!heap.isEmpty()) {
        double key = heap.smallestKey();
        int v = heap.poll();
        tidy(v);
        if (degrees[v] > key && !heap.isEmpty() && degrees[v] > heap.smallestKey()) {
          heap.offer(v, degrees[v]);
          continue;
        }
        arcs += sizes[v];
        work += (long) sizes[v] * sizes[v];
        if (arcs > mostArcs || work > mostWork) {
          return Optional.empty();
        }
        gone[v] = true;
        order[rank] = v;
        ranks[v] = rank++;
        linkNeighbours(v);
        neighbours[v] = Arrays.copyOf(neighbours[v], sizes[v]);
        links[v] = Arrays.copyOf(links[v], sizes[v]);
      }
      return Optional.of(collect(order, ranks, (int) arcs));
    }

    private void linkNeighbours(int v) {
      int degree = sizes[v];
      for (int i = 0; i < degree; i++) {
        int u = neighbours[v][i];
        for (int j = 0; j < degree; j++) {
          double length = links[v][i] + links[v][j];
          if (j != i && length <= limit) {
            append(u, neighbours[v][j], length);
          }
        }
        degrees[u] = Math.min(sizes[u], degrees[u] + degree - 2);
        if (sizes[u] <= SHORT_LIST || sizes[u] > 2 * tidySizes[u]) {
          tidy(u);
        }
        // A key that grew is put right when its turn comes.
        heap.offer(u, degrees[u]);
      }
    }

    private void append(int v, int neighbour, double length) {
      if (sizes[v] == neighbours[v].length) {
        int longer = 2 * sizes[v] + 4;
        neighbours[v] = Arrays.copyOf(neighbours[v], longer);
        links[v] = Arrays.copyOf(links[v], longer);
      }
      neighbours[v][sizes[v]] = neighbour;
      links[v][sizes[v]++] = length;
    }

    /** Drops neighbours that are gone, and all but the shortest of several links to one. */
    private void tidy(int v) {
      int[] ends = neighbours[v];
      double[] values = links[v];
      int kept = 0;
      for (int i = 0; i < sizes[v]; i++) {
        int u = ends[i];
        if (gone[u]) {
          continue;
        }
        if (places[u] >= 0) {
          values[places[u]] = Math.min(values[places[u]], values[i]);
        } else {
          places[u] = kept;
          ends[kept] = u;
          values[kept++] = values[i];
        }
      }
      for (int i = 0; i < kept; i++) {
        places[ends[i]] = -1;
      }
      sizes[v] = kept;
      tidySizes[v] = kept;
      degrees[v] = kept;
    }

    private Elimination collect(int[] order, int[] ranks, int arcs) {
      int[] starts = new int[n + 1];
      int[] uppers = new int[arcs];
      double[] lengths = new double[arcs];
      int next = 0;
      for (int r = 0; r < n; r++) {
        int v = order[r];
        for (int i = 0; i < sizes[v]; i++) {
          uppers[next] = ranks[neighbours[v][i]];
          lengths[next++] = links[v][i];
        }
        starts[r + 1] = next;
      }
      return new Elimination(ranks, starts, uppers, lengths);
    }
  }
}
