package org.meadowmark.core.measure.connectivity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Random graphs of 2 to 40 nodes against all-pairs shortest paths of JGraphT (Floyd and Warshall),
 * computed anew for every removed patch and every filled gap.
 */
class RandomGraphsTest {
  private static final double MEDIAN_METRES = 4;
  private static final double CROSSING_METRES = 3;

  static LongStream seeds() {
    return LongStream.range(0, 200);
  }

  private static double halving(double metres) {
    return Math.pow(0.5, metres / MEDIAN_METRES);
  }

  private static ProbabilisticConnectivity connectivity(ReferenceGraph graph) {
    return ProbabilisticConnectivity.of(
        graph.distances(), CrossingModel.ofMedianMetres(MEDIAN_METRES).withCutoff(1e-30), 50);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void indices(long seed) {
    ReferenceGraph graph = ReferenceGraph.random(seed);
    double expected = graph.numerator(RandomGraphsTest::halving);
    ProbabilisticIndex index = connectivity(graph).index();
    assertThat(index.numeratorSquareHectares()).isCloseTo(expected, within(1e-12 * expected));
    assertThat(index.numeratorShortfallSquareHectares()).isZero();

    double linked = graph.countingLinks(CROSSING_METRES).numerator(links -> 1 / (1 + links));
    assertThat(
            BinaryConnectivity.of(graph.distances(), CROSSING_METRES)
                .index(50)
                .numeratorSquareHectares())
        .isCloseTo(linked, within(1e-12 * linked));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void cutoffStaysWithinItsBound(long seed) {
    ReferenceGraph graph = ReferenceGraph.random(seed);
    double exact = graph.numerator(RandomGraphsTest::halving);
    for (double cutoff : new double[] {0.5, 0.1, 0.01}) {
      double counted = graph.numerator(metres -> halving(metres) >= cutoff ? halving(metres) : 0);
      ProbabilisticIndex index =
          ProbabilisticConnectivity.of(
                  graph.distances(),
                  CrossingModel.ofMedianMetres(MEDIAN_METRES).withCutoff(cutoff),
                  50)
              .index();
      assertThat(index.numeratorSquareHectares()).isCloseTo(counted, within(1e-12 * exact));
      assertThat(exact - index.numeratorSquareHectares())
          .isLessThanOrEqualTo(index.numeratorShortfallSquareHectares() + 1e-12 * exact);
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void importanceEqualsRemovalOfEachPatch(long seed) {
    ReferenceGraph graph = ReferenceGraph.random(seed);
    checkImportances(graph, RandomGraphsTest::halving, connectivity(graph).importances());
    checkImportances(
        graph.countingLinks(CROSSING_METRES),
        links -> 1 / (1 + links),
        BinaryConnectivity.of(graph.distances(), CROSSING_METRES).importances());
  }

  private static void checkImportances(
      ReferenceGraph graph, DoubleUnaryOperator decay, List<PatchImportance> importances) {
    double whole = graph.numerator(decay);
    for (int k = 0; k < graph.size(); k++) {
      PatchImportance importance = importances.get(k);
      if (whole == 0) {
        assertThat(importance.totalPercent()).isNaN();
        continue;
      }
      double without = graph.without(k).numerator(decay);
      assertThat(importance.node()).isEqualTo(k);
      assertThat(importance.totalPercent())
          .isCloseTo(100 * (whole - without) / whole, within(1e-10));
      assertThat(
              importance.withinPercent() + importance.fluxPercent() + importance.connectorPercent())
          .isCloseTo(importance.totalPercent(), within(1e-10));
      // The patch kept as a way through but without its area loses all but the connector part.
      double[] areas = graph.areas.clone();
      areas[k] = 0;
      ReferenceGraph stepping = new ReferenceGraph(areas);
      stepping.links.addAll(graph.links);
      assertThat(importance.connectorPercent())
          .isCloseTo(100 * (stepping.numerator(decay) - without) / whole, within(1e-10));
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void gainEqualsFillingOfEachGap(long seed) {
    ReferenceGraph graph = ReferenceGraph.random(seed);
    Random random = new Random(seed);
    List<Filling> fillings = new ArrayList<>();
    for (int f = 0; f < 12; f++) {
      fillings.add(fill(random, graph.size(), f));
    }
    double before = graph.numerator(RandomGraphsTest::halving);
    List<FillingGain> gains = connectivity(graph).gains(fillings);
    for (int f = 0; f < fillings.size(); f++) {
      double after = graph.filled(fillings.get(f)).numerator(RandomGraphsTest::halving);
      assertThat(gains.get(f).numeratorGainSquareHectares())
          .as(fillings.get(f).toString())
          .isCloseTo(after - before, within(1e-10 * after));
      assertThat(gains.get(f).equivalentAreaGainHectares())
          .isCloseTo(Math.sqrt(after) - Math.sqrt(before), within(1e-10 * Math.sqrt(after)));
    }
  }

  /** One gap, several patches joined, several joins, with and without area. */
  private static Filling fill(Random random, int size, int kind) {
    int joins = kind < 6 ? 1 : 1 + random.nextInt(4);
    return new Filling(
        IntStream.range(0, joins)
            .mapToObj(
                join ->
                    Filling.Join.of(
                        kind % 2 == 0 ? 0 : 2 * random.nextDouble(),
                        random
                            .ints(kind < 4 ? 2 : 1 + random.nextInt(4), 0, size)
                            .distinct()
                            .toArray()))
            .toList());
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void sweepEqualsEachModelAlone(long seed) {
    ReferenceGraph graph = ReferenceGraph.random(seed);
    List<CrossingModel> models =
        List.of(
            CrossingModel.ofMedianMetres(1),
            CrossingModel.ofMedianMetres(5).withCutoff(1e-3),
            CrossingModel.ofMedianMetres(20));
    List<ProbabilisticConnectivity> sweep =
        ProbabilisticConnectivity.sweep(graph.distances(), models, 50);
    for (int m = 0; m < models.size(); m++) {
      ProbabilisticIndex alone =
          ProbabilisticConnectivity.of(graph.distances(), models.get(m), 50).index();
      assertThat(sweep.get(m).index().model()).isEqualTo(models.get(m));
      assertThat(sweep.get(m).index().numeratorSquareHectares())
          .isCloseTo(
              alone.numeratorSquareHectares(), within(1e-13 * alone.numeratorSquareHectares()));
      assertThat(sweep.get(m).index().numeratorShortfallSquareHectares())
          .isCloseTo(alone.numeratorShortfallSquareHectares(), within(1e-15));
    }
  }
}
