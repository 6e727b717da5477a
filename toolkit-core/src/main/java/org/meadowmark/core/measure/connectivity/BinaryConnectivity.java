package org.meadowmark.core.measure.connectivity;

import java.util.List;

/**
 * Connectivity where gaps up to a width are crossed and wider ones never.
 *
 * <p>Integral index of connectivity IIC = Σᵢ Σⱼ aᵢ·aⱼ / (1 + nlᵢⱼ) / A_L², with nlᵢⱼ the number of
 * links on the shortest path; pairs without a path add nothing. Pascual-Hortal and Saura (2006),
 * <i>Comparison and development of new graph-based landscape connectivity indices: towards the
 * priorization of habitat patches and corridors for conservation</i>, Landscape Ecology 21:959–967.
 */
public final class BinaryConnectivity {
  /** A gap mapped at exactly the crossing distance can be crossed whatever its rounding. */
  private static final double EQUAL_METRES = 1e-6;

  private final HabitatGraph graph;
  private final double crossingMetres;
  private final double largestLength;

  private BinaryConnectivity(HabitatGraph graph, double crossingMetres, double largestLength) {
    this.graph = graph;
    this.crossingMetres = crossingMetres;
    this.largestLength = largestLength;
  }

  /**
   * {@return connectivity at a crossing distance}
   *
   * @param graph patches and the distances between them
   * @param crossingMetres widest gap that is crossed, 0 or more; the graph must reach as far
   * @throws IllegalArgumentException for a negative or undefined distance, or a graph of
   *     probabilities
   */
  public static BinaryConnectivity of(HabitatGraph graph, double crossingMetres) {
    if (graph.kind() != HabitatGraph.Lengths.METRES) {
      throw new IllegalArgumentException("a graph of probabilities has no distances to cross");
    }
    if (!(crossingMetres >= 0)) {
      throw new IllegalArgumentException("crossing distance is " + crossingMetres + " m");
    }
    return new BinaryConnectivity(graph, crossingMetres, crossingMetres + EQUAL_METRES);
  }

  /**
   * {@return groups of patches that hang together through gaps that are crossed; time and memory
   * O(n + m)}
   */
  public PatchGroups groups() {
    return PatchGroups.of(graph, largestLength);
  }

  /**
   * {@return the index for the whole graph; for time see {@link LinkCountSums}}
   *
   * @param landscapeHectares area A_L that the index is related to, above 0
   * @throws IllegalArgumentException for an area of 0
   */
  public BinaryIndex index(double landscapeHectares) {
    Landscape.check(landscapeHectares);
    double numerator = numerator();
    return new BinaryIndex(
        crossingMetres,
        landscapeHectares,
        numerator,
        numerator / landscapeHectares / landscapeHectares,
        Math.sqrt(numerator));
  }

  /** {@return importance of every patch for this index, by its removal; in order of the nodes} */
  public List<PatchImportance> importances() {
    List<Component> components =
        Component.withAllLinks(graph, largestLength).stream()
            .map(Component::countingLinks)
            .toList();
    return Landscape.importances(
        graph, NodeLosses.of(components, graph.nodeCount(), new Decay.ByLinks()), numerator());
  }

  private double numerator() {
    return LinkCountSums.of(Component.withAllLinks(graph, largestLength));
  }
}
