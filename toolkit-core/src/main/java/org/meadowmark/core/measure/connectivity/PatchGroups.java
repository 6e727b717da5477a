package org.meadowmark.core.measure.connectivity;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Groups of patches between which every gap on some path can be crossed, numbered from 0 in order
 * of their first node.
 */
public final class PatchGroups {
  private final int[] groupOfNode;
  private final double[] areasHectares;
  private final int[] sizes;

  private PatchGroups(int[] groupOfNode, double[] areasHectares, int[] sizes) {
    this.groupOfNode = groupOfNode;
    this.areasHectares = areasHectares;
    this.sizes = sizes;
  }

  static PatchGroups of(HabitatGraph graph, double largestLength) {
    int n = graph.nodeCount();
    int[] groupOf = new int[n];
    Arrays.fill(groupOf, -1);
    double[] areas = new double[n];
    int[] sizes = new int[n];
    int[] queue = new int[n];
    int groups = 0;
    for (int root = 0; root < n; root++) {
      if (groupOf[root] >= 0) {
        continue;
      }
      int size = 0;
      queue[size++] = root;
      groupOf[root] = groups;
      for (int head = 0; head < size; head++) {
        int u = queue[head];
        areas[groups] += graph.areaHectares(u);
        for (int a = graph.firstArc(u); a < graph.firstArc(u + 1); a++) {
          int v = graph.arcTarget(a);
          if (groupOf[v] < 0 && graph.arcLength(a) <= largestLength) {
            groupOf[v] = groups;
            queue[size++] = v;
          }
        }
      }
      sizes[groups++] = size;
    }
    return new PatchGroups(groupOf, Arrays.copyOf(areas, groups), Arrays.copyOf(sizes, groups));
  }

  /** {@return number of groups; a patch alone is one} */
  public int count() {
    return sizes.length;
  }

  /**
   * {@return number of the group that a patch is in}
   *
   * @param node number of the patch, from 0
   */
  public int groupOf(int node) {
    return groupOfNode[node];
  }

  /**
   * {@return area of a group in hectares}
   *
   * @param group number of the group, from 0
   */
  public double areaHectares(int group) {
    return areasHectares[group];
  }

  /**
   * {@return number of patches in a group}
   *
   * @param group number of the group, from 0
   */
  public int patchCount(int group) {
    return sizes[group];
  }

  /** {@return share of all area that lies in the largest group; none where there is no area} */
  public OptionalDouble largestShare() {
    double total = Arrays.stream(areasHectares).sum();
    return total > 0
        ? OptionalDouble.of(Arrays.stream(areasHectares).max().orElse(0) / total)
        : OptionalDouble.empty();
  }
}
