package org.meadowmark.core.measure.connectivity;

import java.util.List;

/**
 * Sums over all ordered pairs of nodes of area · area · decay, for several decays at once.
 *
 * <p>One bounded run of shortest paths a source serves every decay, to the longest limit.
 */
final class RowSums {
  private RowSums() {}

  /**
   * One decay's sums.
   *
   * @param numerator pairs that count, each node with itself included
   * @param missed area · area of the connected pairs beyond the limit
   */
  record Sum(double numerator, double missed) {}

  static Sum[] of(HabitatGraph graph, List<? extends Decay> decays) {
    double limit = decays.stream().mapToDouble(Decay::limit).max().orElse(0);
    PatchGroups groups = PatchGroups.of(graph, Double.MAX_VALUE);
    List<double[]> parts =
        Component.Block.of(Component.of(graph, limit)).parallelStream()
            .map(block -> sum(block, decays, limit, groups))
            .toList();
    Sum[] sums = new Sum[decays.size()];
    for (int d = 0; d < sums.length; d++) {
      double numerator = 0;
      double missed = 0;
      for (double[] part : parts) {
        numerator += part[2 * d];
        missed += part[2 * d + 1];
      }
      sums[d] = new Sum(numerator, missed);
    }
    return sums;
  }

  private static double[] sum(
      Component.Block block, List<? extends Decay> decays, double limit, PatchGroups groups) {
    Component component = block.component();
    ShortestPaths paths = new ShortestPaths(component);
    double[] sums = new double[2 * decays.size()];
    int group = groups.groupOf(component.nodes[0]);
    for (int source = block.from(); source < block.to(); source++) {
      double area = component.areas[source];
      if (area == 0) {
        continue;
      }
      paths.from(source, limit);
      for (int d = 0; d < decays.size(); d++) {
        Decay decay = decays.get(d);
        double longest = decay.limit();
        double row = 0;
        double reached = 0;
        int i = 0;
        for (; i < paths.count; i++) {
          int node = paths.order[i];
          double length = paths.lengths[node];
          if (length > longest) {
            break;
          }
          reached += component.areas[node];
          row += component.areas[node] * decay.of(length);
        }
        sums[2 * d] += area * row;
        if (i < groups.patchCount(group)) {
          sums[2 * d + 1] += area * Math.max(0, groups.areaHectares(group) - reached);
        }
      }
    }
    return sums;
  }
}
