package org.meadowmark.core.measure.connectivity;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What each node's removal takes from Σᵢ Σⱼ aᵢ·aⱼ·decay(shortest path), without a new run a node.
 *
 * <p>For each source the arcs on shortest paths form an acyclic graph. Removing k changes the paths
 * of those nodes alone whose every shortest path leads over k; they are found by taking away
 * supporting arcs, and repaired by a search among them that starts from the arcs entering from
 * unchanged nodes: Ramalingam and Reps (1996), <i>An incremental algorithm for a generalization of
 * the shortest-path problem</i>, Journal of Algorithms 21:267–305. A node with an equal way round
 * is not touched, and a node that no path leads over costs nothing.
 *
 * <p>Time: with n nodes, m links and h the mean number of nodes that lie on every shortest path of
 * a pair, n runs of shortest paths and O(n²·h) repairs of a node, each with a few looks at its
 * arcs, or a heap operation where these do not settle it; removing each node in turn and starting
 * again would take n² runs. Memory O(n + m) a thread, and 64 rows of n.
 */
final class NodeLosses {
  /**
   * Losses by node.
   *
   * @param flux pairs that the node is one of, but not both of
   * @param connector pairs of other nodes
   */
  record Losses(double[] flux, double[] connector) {}

  private static final int MOST_TURNS = 6;

  private final Component component;
  private final Decay decay;
  private final ShortestPaths paths;
  private final NodeHeap heap;
  private final double[] values;
  private final int[] ranks;
  private final int[] supports;
  private final int[] firstOut;
  private final int[] outs;
  private final int[] tightFrom;
  private final int[] tightTo;
  private final int[] left;
  private final int[] touchedFor;
  private final int[] affectedFor;
  private final int[] affected;
  private final double[] before;
  private final int[] firstDetours;
  private int removal;

  private NodeLosses(Component component, Decay decay) {
    this.component = component;
    this.decay = decay;
    int n = component.size();
    paths = new ShortestPaths(component);
    heap = new NodeHeap(n);
    values = new double[n];
    ranks = new int[n];
    Arrays.fill(ranks, -1);
    supports = new int[n];
    firstOut = new int[n + 1];
    outs = new int[component.targets.length];
    tightFrom = new int[component.targets.length];
    tightTo = new int[component.targets.length];
    left = new int[n];
    touchedFor = new int[n];
    affectedFor = new int[n];
    affected = new int[n];
    before = new double[n];
    firstDetours = new int[n];
  }

  static Losses of(List<Component> components, int nodeCount, Decay decay) {
    double[] flux = new double[nodeCount];
    double[] connector = new double[nodeCount];
    List<Component.Block> blocks = Component.Block.of(components);
    int from = 0;
    while (from < blocks.size()) {
      // A component at a time, so that no more than one component's rows are kept.
      Component component = blocks.get(from).component();
      int to = from;
      while (to < blocks.size() && blocks.get(to).component() == component) {
        to++;
      }
      List<double[]> parts =
          blocks.subList(from, to).parallelStream()
              .map(block -> losses(block, decay, flux))
              .toList();
      IntStream.range(0, component.size())
          .forEach(
              i -> {
                double sum = 0;
                for (double[] part : parts) {
                  sum += part[i];
                }
                connector[component.nodes[i]] = sum;
              });
      from = to;
    }
    return new Losses(flux, connector);
  }

  private static double[] losses(Component.Block block, Decay decay, double[] flux) {
    NodeLosses work = new NodeLosses(block.component(), decay);
    double[] connector = new double[block.component().size()];
    for (int source = block.from(); source < block.to(); source++) {
      flux[block.component().nodes[source]] = work.addFrom(source, connector);
    }
    return connector;
  }

  /** Adds this source's part of the connector losses; returns its own flux. */
  private double addFrom(int source, double[] connector) {
    double area = component.areas[source];
    paths.from(source, decay.limit());
    double row = 0;
    for (int i = 1; i < paths.count; i++) {
      int node = paths.order[i];
      values[node] = component.areas[node] * decay.of(paths.lengths[node]);
      row += values[node];
    }
    if (area > 0 && paths.count > 2) {
      findTightArcs();
      for (int i = 1; i < paths.count; i++) {
        int removed = paths.order[i];
        if (firstOut[i] < firstOut[i + 1]) {
          connector[removed] += area * lossWithout(removed);
        }
      }
      for (int i = 0; i < paths.count; i++) {
        ranks[paths.order[i]] = -1;
      }
    }
    return 2 * area * row;
  }

  /** Arcs on shortest paths, from nearer to farther; of nodes equally near, in search order. */
  private void findTightArcs() {
    for (int i = 0; i < paths.count; i++) {
      ranks[paths.order[i]] = i;
      firstOut[i] = 0;
    }
    int tight = 0;
    for (int i = 1; i < paths.count; i++) {
      int v = paths.order[i];
      double length = paths.lengths[v];
      int before = tight;
      for (int a = component.offsets[v]; a < component.offsets[v + 1]; a++) {
        int u = component.targets[a];
        if (paths.lengths[u] + component.lengths[a] == length && ranks[u] >= 0 && ranks[u] < i) {
          firstOut[ranks[u]]++;
          tightFrom[tight] = ranks[u];
          tightTo[tight++] = v;
        }
      }
      supports[v] = tight - before;
    }
    int end = 0;
    for (int i = 0; i < paths.count; i++) {
      end += firstOut[i];
      firstOut[i] = end;
    }
    firstOut[paths.count] = end;
    for (int t = tight - 1; t >= 0; t--) {
      outs[--firstOut[tightFrom[t]]] = tightTo[t];
    }
  }

  private double lossWithout(int removed) {
    if (removal == Integer.MAX_VALUE) {
      Arrays.fill(touchedFor, 0);
      Arrays.fill(affectedFor, 0);
      removal = 0;
    }
    removal++;
    int count = findAffected(removed);
    if (count == 0) {
      return 0;
    }
    double ofRemoved = paths.lengths[removed];
    paths.lengths[removed] = Double.POSITIVE_INFINITY;
    for (int i = 0; i < count; i++) {
      before[i] = paths.lengths[affected[i]];
      paths.lengths[affected[i]] = Double.POSITIVE_INFINITY;
    }
    repair(removed, count);
    double limit = decay.limit();
    double loss = 0;
    for (int i = 0; i < count; i++) {
      int v = affected[i];
      double after = paths.lengths[v];
      if (after > limit) {
        loss += values[v];
      } else if (after > before[i]) {
        loss += values[v] - component.areas[v] * decay.of(after);
      }
      paths.lengths[v] = before[i];
    }
    paths.lengths[removed] = ofRemoved;
    return loss;
  }

  /** Nodes whose every shortest path leads over the removed one. */
  private int findAffected(int removed) {
    int count = dropSupports(removed, 0);
    for (int head = 0; head < count; head++) {
      count = dropSupports(affected[head], count);
    }
    return count;
  }

  private int dropSupports(int node, int count) {
    int rank = ranks[node];
    for (int t = firstOut[rank]; t < firstOut[rank + 1]; t++) {
      int v = outs[t];
      if (touchedFor[v] != removal) {
        touchedFor[v] = removal;
        left[v] = supports[v];
      }
      if (--left[v] == 0) {
        affectedFor[v] = removal;
        affected[count++] = v;
      }
    }
    return count;
  }

  /**
   * Shortest lengths of the affected nodes, from infinity down. Few turns to and fro settle nearly
   * all of them for a fraction of what a heap takes; where they do not, a search goes on from
   * there.
   */
  private void repair(int removed, int count) {
    Detours detours = component.detours;
    boolean detoured = detours.starts()[removed] < detours.starts()[removed + 1];
    for (int i = 0; detoured && i < count; i++) {
      firstDetours[i] = detours.find(removed, affected[i]);
    }
    boolean changed = true;
    for (int turn = 0; changed && turn < MOST_TURNS; turn++) {
      changed = false;
      for (int i = 0; i < count; i++) {
        int place = turn % 2 == 0 ? i : count - 1 - i;
        changed |= shorten(affected[place]);
        if (detoured) {
          changed |= shortenByDetours(removed, affected[place], firstDetours[place]);
        }
      }
    }
    if (changed) {
      search(removed, count);
    }
  }

  private boolean shorten(int node) {
    double[] lengths = paths.lengths;
    int[] targets = component.targets;
    double[] arcLengths = component.lengths;
    int to = component.offsets[node + 1];
    double old = lengths[node];
    double best = old;
    for (int a = component.offsets[node]; a < to; a++) {
      double through = lengths[targets[a]] + arcLengths[a];
      best = through < best ? through : best;
    }
    lengths[node] = best;
    return best < old;
  }

  private boolean shortenByDetours(int removed, int node, int first) {
    Detours detours = component.detours;
    int end = detours.starts()[removed + 1];
    double old = paths.lengths[node];
    double best = old;
    for (int a = first; a < end && detours.froms()[a] == node; a++) {
      best = Math.min(best, paths.lengths[detours.tos()[a]] + detours.lengths()[a]);
    }
    paths.lengths[node] = best;
    return best < old;
  }

  private void search(int removed, int count) {
    for (int i = 0; i < count; i++) {
      if (paths.lengths[affected[i]] < Double.POSITIVE_INFINITY) {
        heap.offer(affected[i], paths.lengths[affected[i]]);
      }
    }
    Detours detours = component.detours;
    int end = detours.starts()[removed + 1];
    while (!heap.isEmpty()) {
      int u = heap.poll();
      for (int a = component.offsets[u]; a < component.offsets[u + 1]; a++) {
        offer(component.targets[a], paths.lengths[u] + component.lengths[a]);
      }
      for (int a = detours.find(removed, u); a < end && detours.froms()[a] == u; a++) {
        offer(detours.tos()[a], paths.lengths[u] + detours.lengths()[a]);
      }
    }
  }

  private void offer(int node, double through) {
    if (affectedFor[node] == removal && through < paths.lengths[node]) {
      paths.lengths[node] = through;
      heap.offer(node, through);
    }
  }
}
