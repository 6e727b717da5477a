package org.meadowmark.core.measure.connectivity;

import java.util.Arrays;
import java.util.List;

/**
 * A filling with what all sources need of it.
 *
 * @param roots patches of each join
 * @param trees best paths from each join, as the graph is
 * @param between best probability from join to join when all are filled
 * @param weight 2 where the trees hold but one side of each pair, else 1
 * @param areaGain gain from the area of the gaps themselves
 */
record PreparedFilling(
    int[][] roots, JoinTrees[] trees, double[][] between, double weight, double areaGain) {

  /** Prepares a filling of patches of one component; the roots are numbers within it. */
  static PreparedFilling of(
      int[][] roots, double[] addedHectares, ShortestPaths paths, Decay decay, Reached reached) {
    boolean oneGap = roots.length == 1 && roots[0].length == 2;
    boolean grows = Arrays.stream(addedHectares).anyMatch(added -> added > 0);
    int joins = roots.length;
    JoinTrees[] trees = new JoinTrees[joins];
    double[][] between = new double[joins][joins];
    double[][] rows = new double[joins][];
    for (int j = 0; j < joins; j++) {
      if (joins == 1 && roots[0].length == 1 && !grows) {
        return new PreparedFilling(roots, new JoinTrees[0], between, 1, 0);
      }
      paths.from(roots[j], decay.limit());
      reached.add(paths);
      trees[j] = JoinTrees.of(paths, decay, oneGap);
      for (int other = 0; other < joins; other++) {
        for (int node : roots[other]) {
          if (paths.lengths[node] < Double.POSITIVE_INFINITY) {
            between[j][other] = Math.max(between[j][other], decay.of(paths.lengths[node]));
          }
        }
      }
      if (grows) {
        rows[j] = new double[paths.lengths.length];
        for (int i = 0; i < paths.count; i++) {
          rows[j][paths.order[i]] = decay.of(paths.lengths[paths.order[i]]);
        }
      }
    }
    close(between);
    double areaGain = grows ? areaGain(reached.component(), addedHectares, between, rows) : 0;
    if (joins == 1 && roots[0].length == 1) {
      trees = new JoinTrees[0];
    }
    return new PreparedFilling(roots, trees, between, oneGap ? 2 : 1, areaGain);
  }

  /** Best products over any number of joins on the way. */
  private static void close(double[][] between) {
    for (int via = 0; via < between.length; via++) {
      for (double[] row : between) {
        for (int to = 0; to < between.length; to++) {
          row[to] = Math.max(row[to], row[via] * between[via][to]);
        }
      }
    }
  }

  private static double areaGain(
      Component component, double[] added, double[][] between, double[][] rows) {
    double gain = 0;
    for (int j = 0; j < added.length; j++) {
      if (added[j] == 0) {
        continue;
      }
      double reachable = 0;
      for (int v = 0; v < component.size(); v++) {
        double best = 0;
        for (int via = 0; via < rows.length; via++) {
          best = Math.max(best, between[j][via] * rows[via][v]);
        }
        reachable += component.areas[v] * best;
      }
      gain += 2 * added[j] * reachable;
      for (int other = 0; other < added.length; other++) {
        gain += added[j] * added[other] * between[j][other];
      }
    }
    return gain;
  }

  /** One gap between two patches, of which the trees hold the side of one. */
  boolean isOneSided() {
    return weight == 2;
  }

  /** Patch of a single gap whose side is in the trees. */
  int treeRoot() {
    return trees[0].nodes()[0];
  }

  /** The other patch of a single gap: only from its side is anything gained. */
  int otherRoot() {
    return roots[0][0] == treeRoot() ? roots[0][1] : roots[0][0];
  }

  /** Memory that the trees take. */
  long size() {
    return Arrays.stream(trees).mapToLong(tree -> tree.nodes().length).sum();
  }

  /** Nodes from which some filling is in reach; marked by several threads, never unmarked. */
  record Reached(Component component, boolean[] nodes) {
    static Reached none(Component component) {
      return new Reached(component, new boolean[component.size()]);
    }

    void add(ShortestPaths paths) {
      for (int i = 0; i < paths.count; i++) {
        nodes[paths.order[i]] = true;
      }
    }

    static Reached union(Component component, List<Reached> parts) {
      Reached union = none(component);
      for (Reached part : parts) {
        for (int v = 0; v < union.nodes.length; v++) {
          union.nodes[v] |= part.nodes[v];
        }
      }
      return union;
    }
  }
}
