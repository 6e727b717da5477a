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
    for (double cutoff : new double[] {1e-30, 0.01, 0.3}) {
      checkRows(graph, new Decay.Exponential(Math.log(2) / 4, cutoff));
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
    checkRows(graph.distances(), new Decay.Exponential(0.5, 1e-6));
    checkRows(graph.distances(), new Decay.Exponential(0.5, 0.2));
  }

  @Test
  void rowsOfAStar() {
    ReferenceGraph graph = new ReferenceGraph(new Random(8).doubles(400).toArray());
    IntStream.range(1, 400).forEach(i -> graph.link(i, 0, 0.01 * i));
    IntStream.range(2, 300).forEach(i -> graph.link(i, i - 1, 0.01 * (i % 7)));
    checkRows(graph.distances(), new Decay.Exponential(0.5, 1e-6));
    Component star = Component.of(graph.distances(), 100).get(0);
    assertThat(
            Elimination.of(star, new Decay.Exponential(0.5, 1e-6), 2_000, 10_000)
                .orElseThrow()
                .arcCount())
        .isLessThan(1_000);
  }

  @Test
  void givesUpWhereThereIsTooMuchToDo() {
    ReferenceGraph graph = new ReferenceGraph(new double[30]);
    IntStream.range(0, 30 * 30)
        .filter(e -> e / 30 < e % 30)
        .forEach(e -> graph.link(e / 30, e % 30, 10));
    Component complete = Component.of(graph.distances(), 100).get(0);
    Decay.Exponential decay = new Decay.Exponential(0.01, 1e-6);
    assertThat(Elimination.of(complete, decay, 434, 100_000)).isEmpty();
    assertThat(Elimination.of(complete, decay, 435, 100)).isEmpty();
    assertThat(Elimination.of(complete, decay, 435, 100_000)).isPresent();
  }

  private static void checkRows(HabitatGraph graph, Decay.Exponential decay) {
    for (Component component : Component.of(graph, decay.limit())) {
      Elimination elimination =
          Elimination.of(component, decay, Long.MAX_VALUE, Long.MAX_VALUE).orElseThrow();
      EliminationRows rows = new EliminationRows(component, elimination, decay);
      ShortestPaths paths = new ShortestPaths(component);
      for (int from = 0; from < component.size(); from += EliminationRows.LANES) {
        int to = Math.min(component.size(), from + EliminationRows.LANES);
        rows.solve(from, to);
        for (int source = from; source < to; source++) {
          paths.from(source, decay.limit());
          double sum = 0;
          double missed = 0;
          for (int v = 0; v < component.size(); v++) {
            boolean reached = paths.lengths[v] < Double.POSITIVE_INFINITY;
            double expected = reached ? decay.of(paths.lengths[v]) : 0;
            sum += component.areas[v] * expected;
            missed += reached ? 0 : component.areas[v];
            assertThat(rows.values[elimination.ranks[v] * EliminationRows.LANES + source - from])
                .isCloseTo(expected, within(1e-13 * expected));
          }
          assertThat(rows.sums[source - from]).isCloseTo(sum, within(1e-12 * sum));
          assertThat(rows.missed[source - from]).isCloseTo(missed, within(1e-12));
        }
      }
    }
  }
}
