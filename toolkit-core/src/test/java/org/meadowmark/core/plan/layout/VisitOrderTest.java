package org.meadowmark.core.plan.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import org.jgrapht.alg.spanning.KruskalMinimumSpanningTree;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;

class VisitOrderTest {
  @Test
  void placesInARowAreVisitedAlongIt() {
    VisitOrder order =
        VisitOrder.of(List.of(new Coordinate(5, 0), new Coordinate(0, 0), new Coordinate(9, 0)));
    assertThat(order.order()).containsExactly(1, 0, 2);
    assertThat(order.lengthMetres()).isEqualTo(9);
    assertThat(order.ratioToBound()).isEqualTo(1);
  }

  @Test
  void nowhereAndOnePlaceNeedNoWay() {
    assertThat(VisitOrder.of(List.of()).order()).isEmpty();
    assertThat(VisitOrder.of(List.of(new Coordinate(1, 2))).order()).containsExactly(0);
    assertThat(VisitOrder.of(List.of(new Coordinate(1, 2))).ratioToBound()).isEqualTo(1);
  }

  /** The tree is that of JGraphT; the shortest way is found by trying every order. */
  @Test
  void wayIsNearTheShortestAndNeverBelowTheTree() {
    Random random = new Random(11);
    double worst = 1;
    for (int k = 0; k < 60; k++) {
      List<Coordinate> places = new ArrayList<>();
      for (int i = 0; i < 7; i++) {
        places.add(new Coordinate(random.nextDouble(), random.nextDouble()));
      }
      VisitOrder order = VisitOrder.of(places);
      assertThat(new HashSet<>(order.order())).hasSize(7);
      assertThat(order.lengthMetres()).isCloseTo(length(order.order(), places), within(1e-12));
      double shortest = shortest(new ArrayList<>(), places);
      assertThat(order.lowerBoundMetres()).isCloseTo(tree(places), within(1e-9));
      assertThat(order.lowerBoundMetres()).isLessThanOrEqualTo(shortest + 1e-12);
      assertThat(order.lengthMetres()).isGreaterThanOrEqualTo(shortest - 1e-12);
      worst = Math.max(worst, order.lengthMetres() / shortest);
    }
    assertThat(worst).isLessThan(1.25);
  }

  private static double tree(List<Coordinate> places) {
    SimpleWeightedGraph<Integer, DefaultWeightedEdge> graph =
        new SimpleWeightedGraph<>(DefaultWeightedEdge.class);
    for (int i = 0; i < places.size(); i++) {
      graph.addVertex(i);
      for (int j = 0; j < i; j++) {
        graph.setEdgeWeight(graph.addEdge(i, j), places.get(i).distance(places.get(j)));
      }
    }
    return new KruskalMinimumSpanningTree<>(graph).getSpanningTree().getWeight();
  }

  private static double shortest(List<Integer> way, List<Coordinate> places) {
    if (way.size() == places.size()) {
      return length(way, places);
    }
    double best = Double.POSITIVE_INFINITY;
    for (int i = 0; i < places.size(); i++) {
      if (!way.contains(i)) {
        way.add(i);
        best = Math.min(best, shortest(way, places));
        way.remove(way.size() - 1);
      }
    }
    return best;
  }

  private static double length(List<Integer> way, List<Coordinate> places) {
    double sum = 0;
    for (int i = 1; i < way.size(); i++) {
      sum += places.get(way.get(i - 1)).distance(places.get(way.get(i)));
    }
    return sum;
  }
}
