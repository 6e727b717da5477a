package org.meadowmark.core.measure.connectivity;

import java.util.Arrays;

/**
 * Shortest-path trees from the patches of a join, laid out so that a branch can be stepped over.
 *
 * @param nodes nodes of the trees, each before the branches under it
 * @param probabilities best probability from the join to each
 * @param ends place behind each node's last branch
 */
record JoinTrees(int[] nodes, double[] probabilities, int[] ends) {
  /**
   * Trees that the last search of {@code paths} found.
   *
   * @param withoutLargest leave out the tree with most nodes; of equal ones the first
   */
  static JoinTrees of(ShortestPaths paths, Decay decay, boolean withoutLargest) {
    int[] order = paths.order;
    int count = paths.count;
    int[] sizes = new int[paths.lengths.length];
    for (int i = count - 1; i >= 0; i--) {
      int v = order[i];
      sizes[v]++;
      if (paths.parents[v] >= 0) {
        sizes[paths.parents[v]] += sizes[v];
      }
    }
    int omitted = -1;
    if (withoutLargest) {
      for (int i = 0; i < count; i++) {
        int v = order[i];
        if (paths.parents[v] < 0 && (omitted < 0 || sizes[v] > sizes[omitted])) {
          omitted = v;
        }
      }
    }
    int total = omitted < 0 ? count : count - sizes[omitted];
    JoinTrees trees = new JoinTrees(new int[total], new double[total], new int[total]);
    int[] next = new int[paths.lengths.length];
    Arrays.fill(next, -1);
    int nextRoot = 0;
    for (int i = 0; i < count; i++) {
      int v = order[i];
      int parent = paths.parents[v];
      if (v == omitted || (parent >= 0 && next[parent] < 0)) {
        continue;
      }
      int place;
      if (parent < 0) {
        place = nextRoot;
        nextRoot += sizes[v];
      } else {
        place = next[parent];
        next[parent] += sizes[v];
      }
      next[v] = place + 1;
      trees.nodes[place] = v;
      trees.probabilities[place] = decay.of(paths.lengths[v]);
      trees.ends[place] = place + sizes[v];
    }
    return trees;
  }
}
