package org.meadowmark.core.measure.connectivity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Rows by elimination against shortest paths, which other tests check against a library. */
class EliminationTest {
  static LongStream seeds() {
    return LongStream.range(0, 200);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void rowsOfRandomGraphs(long seed) {
    HabitatGraph graph = ReferenceGraph.random(seed).distances();
    for (double limit : new double[] {1e6, 20.1, 7.1}) {
      checkRows(graph, limit);
    }
  }

  @Test
  void rowsOfAGrid() {
    int side = 15;
    Random random = new Random(7);
    ReferenceGraph graph = new ReferenceGraph(random.doubles(side * side).toArray());
    for (int i = 0; i < side * side; i++) {
      if (i % side > 0) {
        graph.link(i - 1, i, random.nextDouble());
      }
      if (i >= side) {
        graph.link(i - side, i, random.nextDouble());
      }
    }
    checkRows(graph.distances(), 100);
    checkRows(graph.distances(), 3);
  }

  @Test
  void rowsOfAStar() {
    ReferenceGraph graph = new ReferenceGraph(new Random(8).doubles(400).toArray());
    IntStream.range(1, 400).forEach(i -> graph.link(i, 0, 0.01 * i));
    IntStream.range(2, 300).forEach(i -> graph.link(i, i - 1, 0.01 * (i % 7)));
    checkRows(graph.distances(), 100);
    Component star = Component.of(graph.distances(), 100).get(0);
    assertThat(Elimination.of(star, 100, 2_000, 10_000).orElseThrow().arcCount()).isLessThan(1_000);
  }

  @Test
  void givesUpWhereThereIsTooMuchToDo() {
    ReferenceGraph graph = new ReferenceGraph(new double[30]);
    IntStream.range(0, 30 * 30)
        .filter(e -> e / 30 < e % 30)
        .forEach(e -> graph.link(e / 30, e % 30, 10));
    Component complete = Component.of(graph.distances(), 100).get(0);
    assertThat(Elimination.of(complete, 100, 434, 100_000)).isEmpty();
    assertThat(Elimination.of(complete, 100, 435, 100)).isEmpty();
    assertThat(Elimination.of(complete, 100, 435, 100_000)).isPresent();
  }

  private static void checkRows(HabitatGraph graph, double limit) {
    for (Component component : Component.of(graph, limit)) {
      Elimination elimination =
          Elimination.of(component, limit, Long.MAX_VALUE, Long.MAX_VALUE).orElseThrow();
      EliminationRows rows = new EliminationRows(elimination);
      ShortestPaths paths = new ShortestPaths(component);
      for (int from = 0; from < component.size(); from += EliminationRows.LANES) {
        int to = Math.min(component.size(), from + EliminationRows.LANES);
        rows.solve(from, to);
        for (int source = from; source < to; source++) {
          paths.from(source, limit);
          for (int v = 0; v < component.size(); v++) {
            double length =
                rows.lengths[elimination.ranks[v] * EliminationRows.LANES + source - from];
            if (paths.lengths[v] == Double.POSITIVE_INFINITY) {
              assertThat(length).isGreaterThan(limit);
            } else {
              assertThat(length).isCloseTo(paths.lengths[v], within(1e-13 * limit));
            }
          }
        }
      }
    }
  }
}
