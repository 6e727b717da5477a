package org.meadowmark.core.measure.connectivity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Small graphs worked by hand from the published formulas: Pascual-Hortal and Saura (2006) for the
 * integral index, Saura and Pascual-Hortal (2007) for the probability of connectivity, Saura and
 * Rubio (2010) for the parts of importance.
 */
class CheckValuesTest {
  private static final int A = 0;
  private static final int B = 1;
  private static final int C = 2;

  private static ProbabilisticConnectivity given(ReferenceGraph graph, double landscapeHectares) {
    return ProbabilisticConnectivity.of(
        graph.probabilities(), CrossingModel.asGiven(), landscapeHectares);
  }

  /** Patches of 10, 5 and 20 ha; A–B and B–C crossed by half, A–C as given. */
  private static ReferenceGraph chain(double probabilityAc) {
    return new ReferenceGraph(10, 5, 20).link(A, B, 0.5).link(B, C, 0.5).link(A, C, probabilityAc);
  }

  private static void checkImportance(
      PatchImportance importance, double total, double within, double flux, double connector) {
    assertThat(importance.totalPercent()).isCloseTo(total, within(5e-7));
    assertThat(importance.withinPercent()).isCloseTo(within, within(5e-7));
    assertThat(importance.fluxPercent()).isCloseTo(flux, within(5e-7));
    assertThat(importance.connectorPercent()).isCloseTo(connector, within(5e-7));
  }

  @Test
  void twoPatchesCrossedByHalf() {
    // (1 + 1 + 2 · 0.5) / 2²
    ProbabilisticIndex index = given(new ReferenceGraph(1, 1).link(A, B, 0.5), 2).index();
    assertThat(index.probabilityOfConnectivity()).isCloseTo(0.75, within(1e-15));
  }

  @Test
  void twoPatchesAtTheMedianCrossingDistance() {
    HabitatGraph graph = new ReferenceGraph(1, 1).link(A, B, 7).distances();
    ProbabilisticIndex index =
        ProbabilisticConnectivity.of(graph, CrossingModel.ofMedianMetres(7), 2).index();
    assertThat(index.probabilityOfConnectivity()).isCloseTo(0.75, within(1e-15));
  }

  @Test
  void twoPatchesLinked() {
    // (1 + 1 + 2 · 1/2) / 2²
    HabitatGraph graph = new ReferenceGraph(1, 1).link(A, B, 3).distances();
    assertThat(BinaryConnectivity.of(graph, 3).index(2).integralIndexOfConnectivity())
        .isCloseTo(0.75, within(1e-15));
    assertThat(BinaryConnectivity.of(graph, 2.9).index(2).integralIndexOfConnectivity())
        .isCloseTo(0.5, within(1e-15));
  }

  @Test
  void threeInARow() {
    HabitatGraph graph = new ReferenceGraph(1, 1, 1).link(A, B, 1).link(B, C, 1).distances();
    BinaryConnectivity binary = BinaryConnectivity.of(graph, 1);
    // (3 + 4 · 1/2 + 2 · 1/3) / 3²; without B 2 / 9
    assertThat(binary.index(3).integralIndexOfConnectivity()).isCloseTo(0.62963, within(5e-6));
    assertThat(binary.importances().get(B).totalPercent()).isCloseTo(64.706, within(5e-4));
  }

  @Test
  void bestPathIsNotTheDirectOne() {
    // Patches at the ends alone have area: numerator 1 + 1 + 2 · p*, p* = max(0.1, 0.5 · 0.5)
    ReferenceGraph graph =
        new ReferenceGraph(1, 0, 1).link(A, C, 0.1).link(A, B, 0.5).link(B, C, 0.5);
    assertThat(given(graph, 1).index().numeratorSquareHectares())
        .isCloseTo(2 + 2 * 0.25, within(1e-15));
  }

  @Test
  void chainOfTenFiveTwenty() {
    ProbabilisticConnectivity connectivity = given(chain(0), 100);
    assertThat(connectivity.index().probabilityOfConnectivity()).isCloseTo(0.0775, within(1e-15));
    assertThat(connectivity.index().equivalentAreaHectares()).isCloseTo(27.838822, within(5e-7));
    assertThat(connectivity.index().numeratorShortfallSquareHectares()).isZero();
    List<PatchImportance> importances = connectivity.importances();
    checkImportance(importances.get(A), 32.258065, 12.903226, 19.354839, 0);
    checkImportance(importances.get(B), 35.483871, 3.225806, 19.354839, 12.903226);
    checkImportance(importances.get(C), 77.419355, 51.612903, 25.806452, 0);
  }

  @Test
  void poorWayRoundReplacesPartOfTheConnector() {
    ProbabilisticConnectivity connectivity = given(chain(0.1), 100);
    assertThat(connectivity.index().probabilityOfConnectivity()).isCloseTo(0.0775, within(1e-15));
    assertThat(connectivity.importances().get(B).totalPercent()).isCloseTo(30.322581, within(5e-7));
  }

  @Test
  void betterWayRoundLeavesNoConnector() {
    ProbabilisticConnectivity connectivity = given(chain(0.4), 100);
    assertThat(connectivity.index().numeratorSquareHectares()).isCloseTo(835, within(1e-12));
    assertThat(connectivity.importances().get(B).connectorPercent()).isZero();
  }

  @Test
  void chainOfTenFiveTwentyLinked() {
    HabitatGraph graph = new ReferenceGraph(10, 5, 20).link(A, B, 1).link(B, C, 1).distances();
    BinaryIndex index = BinaryConnectivity.of(graph, 1).index(100);
    assertThat(index.numeratorSquareHectares()).isCloseTo(808.333333, within(5e-7));
    assertThat(index.equivalentAreaHectares()).isCloseTo(28.431203, within(1e-6));
  }

  @Test
  void fillingTheGapOfTwoPatches() {
    // ECA of two patches of 3 and 4 ha crossed by half: √(9 + 16 + 12); as one patch 7 ha.
    ProbabilisticConnectivity connectivity = given(new ReferenceGraph(3, 4).link(A, B, 0.5), 10);
    List<FillingGain> gains =
        connectivity.gains(
            List.of(Filling.ofGap(A, B), new Filling(List.of(Filling.Join.of(0.5, A, B)))));
    assertThat(gains.get(0).numeratorGainSquareHectares()).isCloseTo(12, within(1e-12));
    assertThat(gains.get(0).equivalentAreaGainHectares())
        .isCloseTo(7 - Math.sqrt(37), within(1e-12));
    // With the gap's own half hectare as grass the one patch has 7.5 ha.
    assertThat(gains.get(1).equivalentAreaGainHectares())
        .isCloseTo(7.5 - Math.sqrt(37), within(1e-12));
  }
}
