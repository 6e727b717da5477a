package org.meadowmark.core.measure.connectivity;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Growth of Σᵢ Σⱼ aᵢ·aⱼ·p*ᵢⱼ under each of many fillings, each taken alone.
 *
 * <p>With C the patches that a filling joins, a path after filling is the old one or leads over C,
 * so p*'ᵢⱼ = max(p*ᵢⱼ, p*ᵢC · p*Cⱼ): the update of all shortest paths for one inserted node,
 * Ausiello, Italiano, Marchetti-Spaccamela and Nanni (1991), <i>Incremental algorithms for minimal
 * length paths</i>, Journal of Algorithms 12:615–638. Their key is used too: if the way over C to j
 * is no better than before, neither is that to any node behind j on the best path from C. So each
 * source walks the tree of best paths from C, laid out in memory in walking order, and steps over
 * every branch that does not improve; no heap and no link is touched. With two patches A and B,
 * only sources nearer to A gain, and only for targets nearer to B, and pairs are symmetric: only
 * the smaller of the two trees is kept.
 *
 * <p>Time: one run of shortest paths a join and one a source that has a filling in reach, plus one
 * step a source and filling, plus one or two steps a pair that improves. Memory: trees are kept in
 * batches of at most {@value #LARGEST_BATCH} nodes (16 bytes each); sources are run once a batch.
 */
final class FillingGains {
  /** Improvements smaller than this share are rounding. */
  private static final double EQUAL = 1 + 1e-12;

  private static final long LARGEST_BATCH = 16_000_000;
  private static final int PREPARED_AT_ONCE = 256;
  private static final int PREPARED_BY_ONE_THREAD = 16;

  private final Component component;
  private final Decay.Exponential decay;

  private FillingGains(Component component, Decay.Exponential decay) {
    this.component = component;
    this.decay = decay;
  }

  /** Gain of each filling's numerator. */
  static double[] of(HabitatGraph graph, Decay.Exponential decay, List<Filling> fillings) {
    List<int[]> together = fillings.stream().map(Filling::nodes).toList();
    List<Component> components = Component.of(graph, decay.limit(), together);
    int[] componentOf = new int[graph.nodeCount()];
    int[] local = new int[graph.nodeCount()];
    for (int c = 0; c < components.size(); c++) {
      int[] nodes = components.get(c).nodes;
      for (int i = 0; i < nodes.length; i++) {
        componentOf[nodes[i]] = c;
        local[nodes[i]] = i;
      }
    }
    List<List<Numbered>> byComponent = new ArrayList<>();
    components.forEach(component -> byComponent.add(new ArrayList<>()));
    for (int f = 0; f < fillings.size(); f++) {
      int[] nodes = together.get(f);
      if (nodes.length > 0) {
        byComponent.get(componentOf[nodes[0]]).add(Numbered.of(f, fillings.get(f), local));
      }
    }
    double[] gains = new double[fillings.size()];
    IntStream.range(0, components.size())
        .parallel()
        .filter(c -> !byComponent.get(c).isEmpty())
        .forEach(c -> new FillingGains(components.get(c), decay).run(byComponent.get(c), gains));
    return gains;
  }

  /** A filling with its place in the list and its patches' numbers within the component. */
  private record Numbered(int number, int[][] roots, double[] addedHectares) {
    static Numbered of(int number, Filling filling, int[] local) {
      List<Filling.Join> joins = filling.separateJoins();
      return new Numbered(
          number,
          joins.stream()
              .map(join -> join.nodes().stream().mapToInt(node -> local[node]).toArray())
              .toArray(int[][]::new),
          joins.stream().mapToDouble(Filling.Join::addedHectares).toArray());
    }
  }

  private void run(List<Numbered> fillings, double[] gains) {
    List<Numbered> sorted = new ArrayList<>(fillings);
    // Neighbours in one batch, so that a batch concerns few sources.
    sorted.sort(Comparator.comparingInt(filling -> filling.roots[0][0]));
    List<PreparedFilling> batch = new ArrayList<>();
    List<PreparedFilling.Reached> reached = new ArrayList<>();
    long size = 0;
    int first = 0;
    for (int from = 0; from < sorted.size(); from += PREPARED_AT_ONCE) {
      int to = Math.min(sorted.size(), from + PREPARED_AT_ONCE);
      for (Part part : prepare(sorted.subList(from, to))) {
        batch.addAll(part.fillings);
        reached.add(part.reached);
        size += part.fillings.stream().mapToLong(PreparedFilling::size).sum();
      }
      if (size > LARGEST_BATCH || to == sorted.size()) {
        double[] batchGains =
            gains(batch, PreparedFilling.Reached.union(component, reached).nodes());
        for (int i = 0; i < batch.size(); i++) {
          gains[sorted.get(first + i).number] = batchGains[i];
        }
        first = to;
        batch.clear();
        reached.clear();
        size = 0;
      }
    }
  }

  private record Part(List<PreparedFilling> fillings, PreparedFilling.Reached reached) {}

  private List<Part> prepare(List<Numbered> fillings) {
    int parts = (fillings.size() + PREPARED_BY_ONE_THREAD - 1) / PREPARED_BY_ONE_THREAD;
    return IntStream.range(0, parts)
        .parallel()
        .mapToObj(
            part -> {
              ShortestPaths paths = new ShortestPaths(component);
              PreparedFilling.Reached reached = PreparedFilling.Reached.none(component);
              int from = part * PREPARED_BY_ONE_THREAD;
              return new Part(
                  fillings
                      .subList(from, Math.min(fillings.size(), from + PREPARED_BY_ONE_THREAD))
                      .stream()
                      .map(
                          filling ->
                              PreparedFilling.of(
                                  filling.roots, filling.addedHectares, paths, decay, reached))
                      .toList(),
                  reached);
            })
        .toList();
  }

  private double[] gains(List<PreparedFilling> batch, boolean[] reached) {
    int[][] fillingsAt = fillingsAt(batch);
    List<double[]> parts =
        Component.Block.of(List.of(component)).parallelStream()
            .map(block -> new Walk(batch, fillingsAt).gains(block, reached))
            .toList();
    double[] gains = new double[batch.size()];
    for (int f = 0; f < gains.length; f++) {
      gains[f] = batch.get(f).areaGain();
      for (double[] part : parts) {
        gains[f] += part[f];
      }
    }
    return gains;
  }

  /** Fillings by the patches from whose side something is gained. */
  private int[][] fillingsAt(List<PreparedFilling> batch) {
    List<List<Integer>> fillingsAt = new ArrayList<>();
    for (int v = 0; v < component.size(); v++) {
      fillingsAt.add(List.of());
    }
    for (int f = 0; f < batch.size(); f++) {
      PreparedFilling filling = batch.get(f);
      int[][] roots = filling.isOneSided() ? new int[][] {{filling.otherRoot()}} : filling.roots();
      for (int[] ofJoin : roots) {
        for (int root : ofJoin) {
          if (fillingsAt.get(root).isEmpty()) {
            fillingsAt.set(root, new ArrayList<>());
          }
          fillingsAt.get(root).add(f);
        }
      }
    }
    return fillingsAt.stream()
        .map(ofNode -> ofNode.stream().mapToInt(Integer::intValue).toArray())
        .toArray(int[][]::new);
  }

  /** One thread's walks. */
  private final class Walk {
    private final List<PreparedFilling> batch;
    private final int[][] fillingsAt;

    /** Patch whose side is in the trees, or -1 for fillings of more than a gap. */
    private final int[] treeRoots;

    private final double[] row = new double[component.size()];
    private final double[] improved = new double[component.size()];
    private final int[] improvedNodes = new int[component.size()];
    private final double smallest = decay.cutoff() * (1 - 1e-9);
    private int improvedCount;

    Walk(List<PreparedFilling> batch, int[][] fillingsAt) {
      this.batch = batch;
      this.fillingsAt = fillingsAt;
      treeRoots = batch.stream().mapToInt(f -> f.isOneSided() ? f.treeRoot() : -1).toArray();
    }

    double[] gains(Component.Block block, boolean[] reached) {
      double[] gains = new double[batch.size()];
      int[] metBy = new int[batch.size()];
      ShortestPaths paths = new ShortestPaths(component);
      for (int source = block.from(); source < block.to(); source++) {
        double area = component.areas[source];
        if (area == 0 || !reached[source]) {
          continue;
        }
        paths.from(source, decay.limit());
        for (int i = 0; i < paths.count; i++) {
          row[paths.order[i]] = decay.of(paths.lengths[paths.order[i]]);
        }
        for (int i = 0; i < paths.count; i++) {
          int node = paths.order[i];
          for (int f : fillingsAt[node]) {
            if (treeRoots[f] >= 0) {
              if (row[node] > row[treeRoots[f]] * EQUAL) {
                gains[f] += 2 * area * overOne(batch.get(f), row[node]);
              }
            } else if (metBy[f] != source + 1) {
              metBy[f] = source + 1;
              PreparedFilling filling = batch.get(f);
              gains[f] +=
                  area
                      * (filling.trees().length > 1
                          ? overSeveral(filling)
                          : filling.trees().length == 1
                              ? overOne(filling, toJoin(filling.roots()[0]))
                              : 0);
            }
          }
        }
        for (int i = 0; i < paths.count; i++) {
          row[paths.order[i]] = 0;
        }
      }
      return gains;
    }

    private double overOne(PreparedFilling filling, double toJoin) {
      int[] nodes = filling.trees()[0].nodes();
      double[] probabilities = filling.trees()[0].probabilities();
      int[] ends = filling.trees()[0].ends();
      double gain = 0;
      int i = 0;
      while (i < nodes.length) {
        double over = toJoin * probabilities[i];
        double before = row[nodes[i]];
        if (over > before * EQUAL && over >= smallest) {
          gain += component.areas[nodes[i]] * (over - before);
          i++;
        } else {
          i = ends[i];
        }
      }
      return gain;
    }

    /** Over each join in turn, against the best so far; the gains add up to that of the best. */
    private double overSeveral(PreparedFilling filling) {
      int joins = filling.trees().length;
      double gain = 0;
      for (int last = 0; last < joins; last++) {
        double toLast = 0;
        for (int first = 0; first < joins; first++) {
          toLast =
              Math.max(toLast, toJoin(filling.roots()[first]) * filling.between()[first][last]);
        }
        JoinTrees tree = filling.trees()[last];
        int i = 0;
        while (i < tree.nodes().length) {
          int node = tree.nodes()[i];
          double over = toLast * tree.probabilities()[i];
          double before = Math.max(row[node], improved[node]);
          if (over > before * EQUAL && over >= smallest) {
            gain += component.areas[node] * (over - before);
            if (improved[node] == 0) {
              improvedNodes[improvedCount++] = node;
            }
            improved[node] = over;
            i++;
          } else {
            i = tree.ends()[i];
          }
        }
      }
      while (improvedCount > 0) {
        improved[improvedNodes[--improvedCount]] = 0;
      }
      return gain;
    }

    private double toJoin(int[] roots) {
      double best = 0;
      for (int root : roots) {
        best = Math.max(best, row[root]);
      }
      return best;
    }
  }
}
