package org.meadowmark.core.measure.connectivity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against all-pairs shortest paths of JGraphT with every filling made, worked out anew. */
class JointFillingsTest {
  private static final double MEDIAN_METRES = 4;

  static LongStream seeds() {
    return LongStream.range(0, 300);
  }

  private static double halving(double metres) {
    return Math.pow(0.5, metres / MEDIAN_METRES);
  }

  private static ProbabilisticConnectivity connectivity(ReferenceGraph graph) {
    return ProbabilisticConnectivity.of(
        graph.distances(), CrossingModel.ofMedianMetres(MEDIAN_METRES).withCutoff(1e-30), 50);
  }

  private static JointFillings joint(
      ProbabilisticConnectivity connectivity, List<Filling> fillings) {
    return connectivity.joint(fillings, connectivity.gains(fillings));
  }

  private static List<Filling> fillings(int patches, Random random) {
    List<Filling> fillings = new ArrayList<>();
    for (int f = 0; f < 2 + random.nextInt(7); f++) {
      List<Filling.Join> joins = new ArrayList<>();
      for (int j = 0; j < 1 + random.nextInt(3); j++) {
        int first = random.nextInt(patches);
        joins.add(Filling.Join.of(0, first, (first + 1 + random.nextInt(patches - 1)) % patches));
      }
      fillings.add(new Filling(joins));
    }
    return fillings;
  }

  private static double bruteForce(ReferenceGraph graph, List<Filling> made) {
    ReferenceGraph filled = graph;
    for (Filling filling : made) {
      filled = filled.filled(filling);
    }
    return filled.numerator(JointFillingsTest::halving);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void gainsOfFillingsMadeOneAfterAnother(long seed) {
    ReferenceGraph graph = ReferenceGraph.random(seed);
    Random random = new Random(seed + 1_000);
    List<Filling> fillings = fillings(graph.size(), random);
    ProbabilisticConnectivity connectivity = connectivity(graph);
    JointFillings joint = joint(connectivity, fillings);
    JointFillings.Work work = joint.begin();
    List<FillingGain> alone = connectivity.gains(fillings);
    double[] most = joint.mostGains(IntStream.range(0, fillings.size()).boxed().toList());
    List<Filling> made = new ArrayList<>();
    List<Integer> numbers = new ArrayList<>();
    double before = bruteForce(graph, made);
    double tolerance = 1e-11 * (1 + bruteForce(graph, fillings));
    List<Integer> order = new ArrayList<>(IntStream.range(0, fillings.size()).boxed().toList());
    java.util.Collections.shuffle(order, random);
    for (int f : order) {
      assertThat(joint.begin().gain(f))
          .isCloseTo(alone.get(f).numeratorGainSquareHectares(), within(tolerance));
      made.add(fillings.get(f));
      numbers.add(f);
      double after = bruteForce(graph, made);
      double gain = work.gain(f);
      assertThat(gain).isCloseTo(after - before, within(tolerance));
      assertThat(most[f]).isGreaterThanOrEqualTo(gain - tolerance);
      work.add(f);
      assertThat(work.numeratorSquareHectares()).isCloseTo(after, within(tolerance));
      assertThat(joint.numeratorSquareHectares(numbers)).isCloseTo(after, within(tolerance));
      before = after;
    }
    work.removeLast();
    numbers.remove(numbers.size() - 1);
    assertThat(work.numeratorSquareHectares())
        .isCloseTo(joint.numeratorSquareHectares(numbers), within(tolerance));
    int last = order.get(order.size() - 1);
    assertThat(work.gain(last))
        .isCloseTo(before - work.numeratorSquareHectares(), within(tolerance));
  }

  /** Three patches of 1 ha in a row, 4 m apart: p is ½ and ½, and ¼ over both. */
  @Test
  void twoInARowRestoreMoreTogetherAndTwoSideBySideLess() {
    ReferenceGraph row = new ReferenceGraph(1, 1, 1).link(0, 1, 4).link(1, 2, 4);
    JointFillings joint =
        joint(connectivity(row), List.of(Filling.ofGap(0, 1), Filling.ofGap(1, 2)));
    JointFillings.Work work = joint.begin();
    // Before 3 + 2·(½ + ½ + ¼) = 5.5; one filled 3 + 2·(1 + ½ + ½) = 7; both 9.
    assertThat(work.numeratorSquareHectares()).isCloseTo(5.5, within(1e-12));
    assertThat(work.gain(1)).isCloseTo(1.5, within(1e-12));
    work.add(0);
    assertThat(work.gain(1)).isCloseTo(2, within(1e-12));
    work.add(1);
    assertThat(work.numeratorSquareHectares()).isCloseTo(9, within(1e-12));
    assertThat(work.steps()).isPositive();

    ReferenceGraph ring = new ReferenceGraph(1, 1).link(0, 1, 4);
    JointFillings same =
        joint(connectivity(ring), List.of(Filling.ofGap(0, 1), Filling.ofGap(1, 0)));
    JointFillings.Work again = same.begin();
    assertThat(again.gain(0)).isCloseTo(1, within(1e-12));
    again.add(0);
    assertThat(again.gain(1)).isZero();
    assertThat(same.partOf(0)).isEqualTo(same.partOf(1));
  }

  @Test
  void fillingsThatReachNothingInCommonAreInPartsOfTheirOwn() {
    ReferenceGraph graph = new ReferenceGraph(1, 1, 1, 1, 1).link(0, 1, 4).link(2, 3, 4);
    JointFillings joint =
        joint(
            connectivity(graph),
            List.of(Filling.ofGap(0, 1), Filling.ofGap(2, 3), new Filling(List.of())));
    assertThat(joint.partOf(0)).isNotEqualTo(joint.partOf(1));
    assertThat(joint.partOf(2)).isEqualTo(-1);
    assertThat(joint.patchesOf(1)).containsExactly(2, 3);
    assertThat(joint.begin().gain(2)).isZero();
    assertThat(joint.mostGains(List.of(0, 1, 2))).containsExactly(1, 1, 0);
  }

  @Test
  void areasOfGapsAreRefused() {
    ProbabilisticConnectivity connectivity = connectivity(new ReferenceGraph(1, 1).link(0, 1, 4));
    List<Filling> withArea = List.of(new Filling(List.of(Filling.Join.of(1, 0, 1))));
    assertThatThrownBy(() -> joint(connectivity, withArea))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
