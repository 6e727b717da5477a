package org.meadowmark.core.measure.connectivity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Nodes that can reach each other, with the links between them.
 *
 * <p>Nodes are numbered anew in breadth-first order, which keeps neighbours close in memory.
 */
final class Component {
  private static final int FEW_ARCS_A_NODE = 2;

  /** Number in the whole graph of each node. */
  final int[] nodes;

  final double[] areas;

  /** First arc of each node, and the number of arcs. */
  final int[] offsets;

  final int[] targets;
  final double[] lengths;

  /** Links that matter only when a node is removed. */
  final Detours detours;

  private Component(
      int[] nodes,
      double[] areas,
      int[] offsets,
      int[] targets,
      double[] lengths,
      Detours detours) {
    this.nodes = nodes;
    this.areas = areas;
    this.offsets = offsets;
    this.targets = targets;
    this.lengths = lengths;
    this.detours = detours;
  }

  int size() {
    return nodes.length;
  }

  double area() {
    double total = 0;
    for (double area : areas) {
      total += area;
    }
    return total;
  }

  /** Components under the links up to a length, in order of their first node, with every link. */
  static List<Component> withAllLinks(HabitatGraph graph, double largestLength) {
    return find(graph, largestLength, List.of());
  }

  /** Components under the links up to a length, in order of their first node. */
  static List<Component> of(HabitatGraph graph, double largestLength) {
    return of(graph, largestLength, List.of());
  }

  /**
   * Components under the links up to a length, in order of their first node, where nodes to be
   * joined also end in one component, though without a link.
   */
  static List<Component> of(HabitatGraph graph, double largestLength, List<int[]> together) {
    return find(graph, largestLength, together).stream()
        .map(Component::withoutUselessLinks)
        .toList();
  }

  private static List<Component> find(
      HabitatGraph graph, double largestLength, List<int[]> together) {
    int n = graph.nodeCount();
    int[][] partners = partners(n, together);
    int[] local = new int[n];
    Arrays.fill(local, -1);
    int[] queue = new int[n];
    List<Component> components = new ArrayList<>();
    for (int root = 0; root < n; root++) {
      if (local[root] >= 0) {
        continue;
      }
      int size = 0;
      queue[size++] = root;
      local[root] = 0;
      int arcCount = 0;
      for (int head = 0; head < size; head++) {
        int u = queue[head];
        for (int a = graph.firstArc(u); a < graph.firstArc(u + 1); a++) {
          if (graph.arcLength(a) <= largestLength) {
            arcCount++;
            int v = graph.arcTarget(a);
            if (local[v] < 0) {
              local[v] = size;
              queue[size++] = v;
            }
          }
        }
        for (int v : partners[u]) {
          if (local[v] < 0) {
            local[v] = size;
            queue[size++] = v;
          }
        }
      }
      components.add(extract(graph, largestLength, Arrays.copyOf(queue, size), local, arcCount));
    }
    return components;
  }

  private static int[][] partners(int n, List<int[]> together) {
    int[][] partners = new int[n][];
    Arrays.fill(partners, new int[0]);
    for (int[] joined : together) {
      for (int i = 1; i < joined.length; i++) {
        partners[joined[i - 1]] = append(partners[joined[i - 1]], joined[i]);
        partners[joined[i]] = append(partners[joined[i]], joined[i - 1]);
      }
    }
    return partners;
  }

  private static int[] append(int[] values, int value) {
    int[] longer = Arrays.copyOf(values, values.length + 1);
    longer[values.length] = value;
    return longer;
  }

  private static Component extract(
      HabitatGraph graph, double largestLength, int[] nodes, int[] local, int arcCount) {
    double[] areas = new double[nodes.length];
    int[] offsets = new int[nodes.length + 1];
    for (int i = 0; i < nodes.length; i++) {
      areas[i] = graph.areaHectares(nodes[i]);
      offsets[i + 1] = offsets[i];
      for (int a = graph.firstArc(nodes[i]); a < graph.firstArc(nodes[i] + 1); a++) {
        if (graph.arcLength(a) <= largestLength) {
          offsets[i + 1]++;
        }
      }
    }
    int[] targets = new int[arcCount];
    double[] lengths = new double[arcCount];
    int[] next = offsets.clone();
    // Each link is entered at its other end, so that the arcs of a node ascend by target.
    for (int i = 0; i < nodes.length; i++) {
      for (int a = graph.firstArc(nodes[i]); a < graph.firstArc(nodes[i] + 1); a++) {
        if (graph.arcLength(a) <= largestLength) {
          int place = next[local[graph.arcTarget(a)]]++;
          targets[place] = i;
          lengths[place] = graph.arcLength(a);
        }
      }
    }
    return new Component(nodes, areas, offsets, targets, lengths, Detours.none(nodes.length));
  }

  /**
   * The same distances with fewer links, see {@link Detours}; the component itself where it has few
   * links already.
   */
  Component withoutUselessLinks() {
    if (targets.length <= FEW_ARCS_A_NODE * (long) size()) {
      return this;
    }
    int[] thirds = Detours.thirdPatches(offsets, targets, lengths);
    int[] keptOffsets = new int[offsets.length];
    int[] keptTargets = new int[targets.length];
    double[] keptLengths = new double[targets.length];
    int kept = 0;
    for (int u = 0; u < size(); u++) {
      for (int a = offsets[u]; a < offsets[u + 1]; a++) {
        if (thirds[a] < 0) {
          keptTargets[kept] = targets[a];
          keptLengths[kept++] = lengths[a];
        }
      }
      keptOffsets[u + 1] = kept;
    }
    return new Component(
        nodes,
        areas,
        keptOffsets,
        Arrays.copyOf(keptTargets, kept),
        Arrays.copyOf(keptLengths, kept),
        Detours.of(offsets, targets, lengths, thirds));
  }

  /** The same component with every link of length 1, so that lengths count links. */
  Component countingLinks() {
    double[] ones = new double[lengths.length];
    Arrays.fill(ones, 1);
    return new Component(nodes, areas, offsets, targets, ones, Detours.none(size()));
  }

  /**
   * Consecutive sources of a component. Blocks depend on the graph alone, and their results are
   * added in order, so that sums do not depend on the number of threads.
   */
  record Block(Component component, int from, int to) {
    private static final int MOST_BLOCKS = 64;
    private static final int SMALLEST_BLOCK = 32;

    static List<Block> of(List<Component> components) {
      List<Block> blocks = new ArrayList<>();
      for (Component component : components) {
        int size = component.size();
        int step = Math.max(SMALLEST_BLOCK, (size + MOST_BLOCKS - 1) / MOST_BLOCKS);
        for (int from = 0; from < size; from += step) {
          blocks.add(new Block(component, from, Math.min(size, from + step)));
        }
      }
      return blocks;
    }
  }
}
