package org.meadowmark.core.measure.connectivity;

import java.util.Arrays;

/**
 * Shortest paths from one node or several, up to a limit; reused from source to source.
 *
 * <p>Dijkstra (1959), <i>A note on two problems in connexion with graphs</i>, Numerische Mathematik
 * 1:269–271. Only nodes within the limit are touched. Not for several threads.
 */
final class ShortestPaths {
  private final Component component;
  private final NodeHeap heap;
  private final JoinedNodes joined;

  /** Length of the shortest path, infinite beyond the limit. */
  final double[] lengths;

  /** Node before on the path, -1 at a source; undefined beyond the limit. */
  final int[] parents;

  /** Nodes within the limit, nearest first. */
  final int[] order;

  /** Number of nodes within the limit. */
  int count;

  ShortestPaths(Component component) {
    this(component, JoinedNodes.NONE);
  }

  /** Paths where some nodes are joined to others, now or later. */
  ShortestPaths(Component component, JoinedNodes joined) {
    this.component = component;
    this.joined = joined;
    heap = new NodeHeap(component.size());
    lengths = new double[component.size()];
    Arrays.fill(lengths, Double.POSITIVE_INFINITY);
    parents = new int[component.size()];
    order = new int[component.size()];
  }

  void from(int source, double limit) {
    clear();
    start(source);
    run(limit);
  }

  void from(int[] sources, double limit) {
    clear();
    for (int source : sources) {
      start(source);
    }
    run(limit);
  }

  private void clear() {
    for (int i = 0; i < count; i++) {
      lengths[order[i]] = Double.POSITIVE_INFINITY;
    }
    count = 0;
  }

  private void start(int source) {
    lengths[source] = 0;
    parents[source] = -1;
    heap.offer(source, 0);
  }

  private void run(double limit) {
    int[] offsets = component.offsets;
    int[] targets = component.targets;
    double[] arcLengths = component.lengths;
    while (!heap.isEmpty()) {
      int u = heap.poll();
      order[count++] = u;
      double length = lengths[u];
      for (int a = offsets[u]; a < offsets[u + 1]; a++) {
        int v = targets[a];
        double through = length + arcLengths[a];
        if (through < lengths[v] && through <= limit) {
          lengths[v] = through;
          parents[v] = u;
          heap.offer(v, through);
        }
      }
      for (int v : joined.of(u)) {
        if (length < lengths[v]) {
          lengths[v] = length;
          parents[v] = u;
          heap.offer(v, length);
        }
      }
    }
  }
}
