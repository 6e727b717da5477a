package org.meadowmark.core.measure.connectivity;

import java.util.List;
import java.util.stream.IntStream;

/** What both kinds of index share. */
final class Landscape {
  private Landscape() {}

  static void check(double landscapeHectares) {
    if (!(landscapeHectares > 0) || Double.isInfinite(landscapeHectares)) {
      throw new IllegalArgumentException("landscape area is " + landscapeHectares + " ha");
    }
  }

  static List<PatchImportance> importances(
      HabitatGraph graph, NodeLosses.Losses losses, double numerator) {
    double percent = 100 / numerator;
    return IntStream.range(0, graph.nodeCount())
        .mapToObj(
            node -> {
              if (numerator == 0) {
                return new PatchImportance(node, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
              }
              double within = graph.areaHectares(node) * graph.areaHectares(node);
              double flux = losses.flux()[node];
              double connector = losses.connector()[node];
              return new PatchImportance(
                  node,
                  percent * (within + flux + connector),
                  percent * within,
                  percent * flux,
                  percent * connector);
            })
        .toList();
  }
}
