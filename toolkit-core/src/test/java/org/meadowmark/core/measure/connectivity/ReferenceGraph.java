package org.meadowmark.core.measure.connectivity;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.jgrapht.Graph;
import org.jgrapht.alg.shortestpath.FloydWarshallShortestPaths;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.WeightedMultigraph;

/** The formulas taken literally, with the shortest paths of a general graph library. */
final class ReferenceGraph {
  final double[] areas;
  final List<double[]> links = new ArrayList<>();

  ReferenceGraph(double... areas) {
    this.areas = areas;
  }

  ReferenceGraph link(int first, int second, double length) {
    links.add(new double[] {first, second, length});
    return this;
  }

  /**
   * Random areas and links with lengths that often tie, some 0; areas of 0, lone nodes and
   * duplicate links occur.
   */
  static ReferenceGraph random(long seed) {
    Random random = new Random(seed);
    int n = 2 + random.nextInt(39);
    double[] areas =
        IntStream.range(0, n)
            .mapToDouble(i -> random.nextInt(10) == 0 ? 0 : 0.01 + 5 * random.nextDouble())
            .toArray();
    ReferenceGraph graph = new ReferenceGraph(areas);
    boolean ties = random.nextBoolean();
    double perNode = 0.5 + (random.nextInt(4) == 0 ? 8 : 2) * random.nextDouble();
    for (int e = 0; e < n * perNode; e++) {
      int i = random.nextInt(n);
      int j = random.nextInt(4) == 0 ? random.nextInt(n) : Math.min(n - 1, i + 1 + e % 4);
      if (i != j) {
        graph.link(i, j, ties ? random.nextInt(4) : 8 * random.nextDouble());
      }
    }
    return graph;
  }

  int size() {
    return areas.length;
  }

  int[] firsts() {
    return links.stream().mapToInt(link -> (int) link[0]).toArray();
  }

  int[] seconds() {
    return links.stream().mapToInt(link -> (int) link[1]).toArray();
  }

  double[] lengths() {
    return links.stream().mapToDouble(link -> link[2]).toArray();
  }

  HabitatGraph distances() {
    return HabitatGraph.ofDistances(areas, firsts(), seconds(), lengths());
  }

  HabitatGraph probabilities() {
    return HabitatGraph.ofProbabilities(areas, firsts(), seconds(), lengths());
  }

  ReferenceGraph without(int node) {
    double[] rest = areas.clone();
    rest[node] = 0;
    ReferenceGraph graph = new ReferenceGraph(rest);
    links.stream().filter(link -> link[0] != node && link[1] != node).forEach(graph.links::add);
    return graph;
  }

  ReferenceGraph countingLinks(double longest) {
    ReferenceGraph graph = new ReferenceGraph(areas);
    links.stream()
        .filter(link -> link[2] <= longest)
        .forEach(link -> graph.link((int) link[0], (int) link[1], 1));
    return graph;
  }

  /** With links of length 0 between the patches of each join, and its area as one more patch. */
  ReferenceGraph filled(Filling filling) {
    List<Filling.Join> joins = filling.joins();
    double[] more = java.util.Arrays.copyOf(areas, areas.length + joins.size());
    ReferenceGraph graph = new ReferenceGraph(more);
    graph.links.addAll(links);
    for (int j = 0; j < joins.size(); j++) {
      more[areas.length + j] = joins.get(j).addedHectares();
      for (int node : joins.get(j).nodes()) {
        graph.link(areas.length + j, node, 0);
      }
    }
    return graph;
  }

  /** Sum over all ordered pairs of area · area · decay of the shortest path. */
  double numerator(DoubleUnaryOperator decay) {
    Graph<Integer, DefaultWeightedEdge> graph = new WeightedMultigraph<>(DefaultWeightedEdge.class);
    IntStream.range(0, areas.length).forEach(graph::addVertex);
    for (double[] link : links) {
      DefaultWeightedEdge edge = graph.addEdge((int) link[0], (int) link[1]);
      graph.setEdgeWeight(edge, link[2]);
    }
    FloydWarshallShortestPaths<Integer, DefaultWeightedEdge> paths =
        new FloydWarshallShortestPaths<>(graph);
    double numerator = 0;
    for (int i = 0; i < areas.length; i++) {
      for (int j = 0; j < areas.length; j++) {
        double length = paths.getPathWeight(i, j);
        if (Double.isFinite(length)) {
          numerator += areas[i] * areas[j] * decay.applyAsDouble(length);
        }
      }
    }
    return numerator;
  }
}
