package org.meadowmark.core.measure.connectivity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Identities of the formulas, changes that must not matter, and graphs with next to nothing. */
class PropertiesTest {
  private static final CrossingModel MODEL = CrossingModel.ofMedianMetres(4);

  private static ProbabilisticConnectivity connectivity(HabitatGraph graph, double landscape) {
    return ProbabilisticConnectivity.of(graph, MODEL, landscape);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void equivalentAreaSquaredIsTheNumerator(long seed) {
    ProbabilisticIndex index = connectivity(ReferenceGraph.random(seed).distances(), 9).index();
    assertThat(index.equivalentAreaHectares() * index.equivalentAreaHectares())
        .isCloseTo(
            index.numeratorSquareHectares(), within(1e-14 * index.numeratorSquareHectares()));
    assertThat(index.probabilityOfConnectivity() * 81)
        .isCloseTo(
            index.numeratorSquareHectares(), within(1e-14 * index.numeratorSquareHectares()));
  }

  @Test
  void certainCrossingsMakeOnePatch() {
    ReferenceGraph graph = new ReferenceGraph(1, 2.5, 0, 4);
    graph.link(0, 1, 1).link(1, 2, 1).link(2, 3, 1);
    ProbabilisticConnectivity certain =
        ProbabilisticConnectivity.of(graph.probabilities(), CrossingModel.asGiven(), 10);
    assertThat(certain.index().probabilityOfConnectivity())
        .isCloseTo(7.5 * 7.5 / 100, within(1e-15));
    assertThat(certain.gains(List.of(Filling.ofGap(0, 3))).get(0)).isEqualTo(new FillingGain(0, 0));
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13, 14, 15})
  void numberingDoesNotMatter(long seed) {
    ReferenceGraph graph = ReferenceGraph.random(seed);
    List<Integer> numbers = new ArrayList<>(IntStream.range(0, graph.size()).boxed().toList());
    Collections.shuffle(numbers, new Random(seed));
    double[] areas = new double[graph.size()];
    IntStream.range(0, areas.length).forEach(i -> areas[numbers.get(i)] = graph.areas[i]);
    ReferenceGraph renumbered = new ReferenceGraph(areas);
    for (double[] link : graph.links) {
      renumbered.link(numbers.get((int) link[1]), numbers.get((int) link[0]), link[2]);
    }
    Collections.reverse(renumbered.links);
    ProbabilisticConnectivity one = connectivity(graph.distances(), 9);
    ProbabilisticConnectivity other = connectivity(renumbered.distances(), 9);
    assertThat(other.index().numeratorSquareHectares())
        .isCloseTo(
            one.index().numeratorSquareHectares(),
            within(1e-13 * one.index().numeratorSquareHectares()));
    for (int k = 0; k < areas.length; k++) {
      assertThat(other.importances().get(numbers.get(k)).totalPercent())
          .isCloseTo(one.importances().get(k).totalPercent(), within(1e-10));
    }
    Filling gap = Filling.ofGap(0, areas.length - 1);
    Filling renumberedGap = Filling.ofGap(numbers.get(0), numbers.get(areas.length - 1));
    assertThat(other.gains(List.of(renumberedGap)).get(0).numeratorGainSquareHectares())
        .isCloseTo(one.gains(List.of(gap)).get(0).numeratorGainSquareHectares(), within(1e-10));
  }

  @ParameterizedTest
  @ValueSource(longs = {21, 22, 23, 24, 25})
  void unitsDoNotMatter(long seed) {
    ReferenceGraph graph = ReferenceGraph.random(seed);
    ProbabilisticIndex index = connectivity(graph.distances(), 9).index();

    double[] larger = Arrays.stream(graph.areas).map(area -> 3 * area).toArray();
    HabitatGraph largerAreas =
        HabitatGraph.ofDistances(larger, graph.firsts(), graph.seconds(), graph.lengths());
    ProbabilisticIndex scaledAreas = connectivity(largerAreas, 27).index();
    assertThat(scaledAreas.probabilityOfConnectivity())
        .isCloseTo(index.probabilityOfConnectivity(), within(1e-14));
    assertThat(scaledAreas.equivalentAreaHectares())
        .isCloseTo(3 * index.equivalentAreaHectares(), within(1e-12));

    double[] longer = Arrays.stream(graph.lengths()).map(metres -> 7 * metres).toArray();
    HabitatGraph longerGaps =
        HabitatGraph.ofDistances(graph.areas, graph.firsts(), graph.seconds(), longer);
    assertThat(
            ProbabilisticConnectivity.of(longerGaps, CrossingModel.ofMedianMetres(28), 9)
                .index()
                .numeratorSquareHectares())
        .isCloseTo(
            index.numeratorSquareHectares(), within(1e-12 * index.numeratorSquareHectares()));
    assertThat(BinaryConnectivity.of(longerGaps, 14).index(9).numeratorSquareHectares())
        .isEqualTo(BinaryConnectivity.of(graph.distances(), 2).index(9).numeratorSquareHectares());
  }

  @Test
  void threadsDoNotMatter() throws Exception {
    ReferenceGraph graph = scarredBed(700, 5);
    List<Filling> fillings =
        IntStream.range(0, 300)
            .mapToObj(
                f ->
                    f % 3 == 0
                        ? new Filling(
                            List.of(
                                Filling.Join.of(0.01, f, f + 5), Filling.Join.of(0, f + 200, 3)))
                        : Filling.ofGap(f, f + 7))
            .toList();
    List<List<Object>> results = new ArrayList<>();
    for (int threads : new int[] {1, 2, 7}) {
      ForkJoinPool pool = new ForkJoinPool(threads);
      try {
        results.add(
            pool.submit(
                    () -> {
                      HabitatGraph habitat = graph.distances();
                      ProbabilisticConnectivity connectivity = connectivity(habitat, 9);
                      BinaryConnectivity binary = BinaryConnectivity.of(habitat, 2);
                      return List.<Object>of(
                          connectivity.index(),
                          connectivity.importances(),
                          connectivity.gains(fillings),
                          binary.index(9),
                          binary.importances());
                    })
                .get());
      } finally {
        pool.shutdown();
      }
    }
    assertThat(results.get(1)).isEqualTo(results.get(0));
    assertThat(results.get(2)).isEqualTo(results.get(0));
  }

  /** A large patch with many small ones around it, chains of others, and a few apart. */
  private static ReferenceGraph scarredBed(int size, long seed) {
    Random random = new Random(seed);
    double[] areas = random.doubles(size, 0.001, 0.2).toArray();
    areas[0] = 30;
    ReferenceGraph graph = new ReferenceGraph(areas);
    for (int i = 1; i < size - 10; i++) {
      graph.link(i % 3 == 0 ? 0 : i - 1, i, 0.2 + random.nextDouble());
      graph.link(i, random.nextInt(i), 1 + 9 * random.nextDouble());
    }
    return graph;
  }

  @Test
  void largerGraphAgainstTheLibrary() {
    ReferenceGraph graph = scarredBed(300, 6);
    double expected = graph.numerator(metres -> Math.pow(0.5, metres / 4));
    ProbabilisticConnectivity connectivity = connectivity(graph.distances(), 9);
    assertThat(connectivity.index().numeratorSquareHectares())
        .isCloseTo(expected, within(1e-12 * expected));
    for (int k : new int[] {0, 1, 2, 150}) {
      double without = graph.without(k).numerator(metres -> Math.pow(0.5, metres / 4));
      assertThat(connectivity.importances().get(k).totalPercent())
          .isCloseTo(100 * (expected - without) / expected, within(1e-9));
    }
    double linked = graph.countingLinks(5).numerator(links -> 1 / (1 + links));
    assertThat(BinaryConnectivity.of(graph.distances(), 5).index(9).numeratorSquareHectares())
        .isCloseTo(linked, within(1e-12 * linked));
  }

  @Test
  void everyWayToComputeIsTested() {
    Component bed = Component.of(scarredBed(300, 6).distances(), 100).get(0);
    assertThat(RowSums.elimination(bed, 100)).isPresent();
    assertThat(RowSums.elimination(bed, 0.3)).isEmpty();
    long detours =
        IntStream.range(0, 200)
            .mapToObj(seed -> Component.of(ReferenceGraph.random(seed).distances(), 100))
            .flatMap(List::stream)
            .mapToInt(component -> component.detours.froms().length)
            .filter(arcs -> arcs > 0)
            .count();
    assertThat(detours).isGreaterThan(50);
  }

  @Test
  void groupsAreNumberedByFirstPatch() {
    HabitatGraph graph =
        new ReferenceGraph(1, 2, 3, 4).link(3, 1, 5).link(0, 2, 6).link(2, 3, 7).distances();
    PatchGroups near = BinaryConnectivity.of(graph, 6).groups();
    assertThat(near.count()).isEqualTo(2);
    assertThat(IntStream.range(0, 4).map(near::groupOf)).containsExactly(0, 1, 0, 1);
    assertThat(near.largestShare()).hasValue(0.6);
    assertThat(near.areaHectares(0)).isEqualTo(4);
    assertThat(near.patchCount(1)).isEqualTo(2);
    assertThat(BinaryConnectivity.of(graph, 5).groups().count()).isEqualTo(3);
    assertThat(BinaryConnectivity.of(graph, 7).groups().count()).isEqualTo(1);
    assertThat(BinaryConnectivity.of(graph, 0).groups().count()).isEqualTo(4);
  }

  @Test
  void noPatches() {
    HabitatGraph graph = new ReferenceGraph().distances();
    assertThat(connectivity(graph, 1).index().numeratorSquareHectares()).isZero();
    assertThat(connectivity(graph, 1).importances()).isEmpty();
    assertThat(connectivity(graph, 1).gains(List.of())).isEmpty();
    assertThat(BinaryConnectivity.of(graph, 1).index(1).numeratorSquareHectares()).isZero();
    assertThat(BinaryConnectivity.of(graph, 1).groups().count()).isZero();
    assertThat(BinaryConnectivity.of(graph, 1).groups().largestShare()).isEmpty();
  }

  @Test
  void onePatchIsWorthItsOwnArea() {
    HabitatGraph graph = new ReferenceGraph(3).distances();
    assertThat(connectivity(graph, 4).index().equivalentAreaHectares()).isEqualTo(3);
    assertThat(connectivity(graph, 4).importances())
        .containsExactly(new PatchImportance(0, 100, 100, 0, 0));
    assertThat(connectivity(graph, 4).gains(List.of(new Filling(List.of()))))
        .containsExactly(new FillingGain(0, 0));
    assertThat(
            connectivity(graph, 4)
                .gains(List.of(new Filling(List.of(Filling.Join.of(1, 0)))))
                .get(0)
                .equivalentAreaGainHectares())
        .isCloseTo(1, within(1e-15));
  }

  @Test
  void noAreaMakesImportanceUndefined() {
    ProbabilisticConnectivity connectivity =
        connectivity(new ReferenceGraph(0, 0).link(0, 1, 1).distances(), 1);
    assertThat(connectivity.index().equivalentAreaHectares()).isZero();
    assertThat(connectivity.importances().get(0).totalPercent()).isNaN();
    assertThat(connectivity.gains(List.of(Filling.ofGap(0, 1))))
        .containsExactly(new FillingGain(0, 0));
  }

  @Test
  void patchesThatTouchAreOne() {
    HabitatGraph graph = new ReferenceGraph(3, 4).link(0, 1, 0).distances();
    assertThat(connectivity(graph, 7).index().probabilityOfConnectivity()).isEqualTo(1);
  }

  @Test
  void easiestOfDuplicateLinksCounts() {
    HabitatGraph graph =
        new ReferenceGraph(1, 1).link(0, 1, 8).link(1, 0, 4).link(0, 1, 12).distances();
    assertThat(graph.linkCount()).isEqualTo(1);
    assertThat(connectivity(graph, 2).index().numeratorSquareHectares())
        .isCloseTo(3, within(1e-15));
  }

  @Test
  void wrongInputIsRefused() {
    assertThatThrownBy(() -> new ReferenceGraph(1, 1).link(1, 1, 0).distances())
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("itself");
    assertThatThrownBy(() -> new ReferenceGraph(1, 1).link(0, 2, 0).distances())
        .hasMessageContaining("2 nodes");
    assertThatThrownBy(() -> new ReferenceGraph(1, 1).link(0, 1, -1).distances())
        .hasMessageContaining("-1");
    assertThatThrownBy(() -> new ReferenceGraph(1, Double.NaN).distances())
        .hasMessageContaining("NaN");
    assertThatThrownBy(() -> new ReferenceGraph(1, 1).link(0, 1, 1.1).probabilities())
        .hasMessageContaining("1.1");
    HabitatGraph graph = new ReferenceGraph(1, 1).link(0, 1, 1).distances();
    assertThatThrownBy(() -> connectivity(graph, 0)).hasMessageContaining("landscape");
    assertThatThrownBy(() -> ProbabilisticConnectivity.of(graph, CrossingModel.asGiven(), 1))
        .hasMessageContaining("median");
    assertThatThrownBy(() -> CrossingModel.ofMedianMetres(0)).hasMessageContaining("median");
    assertThatThrownBy(() -> MODEL.withCutoff(0)).hasMessageContaining("cut-off");
    assertThatThrownBy(() -> connectivity(graph, 1).gains(List.of(Filling.ofGap(0, 2))))
        .hasMessageContaining("node 2");
  }
}
