package org.meadowmark.core.rank.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.rank.network.SegmentNetwork;

class HotSpotFinderTest {
  private static final HotSpotSettings SETTINGS = new HotSpotSettings(150, 999, 0.05, 0.1, 1, 1);

  private static SegmentNetwork path(int size) {
    double[] lengths = new double[size];
    Arrays.fill(lengths, 100);
    List<int[]> pairs = new ArrayList<>();
    for (int i = 1; i < size; i++) {
      pairs.add(new int[] {i - 1, i});
    }
    return SegmentNetwork.ofPairs(pairs, lengths);
  }

  /** Scars of 20 units each, the last of a segment shorter. */
  private static ScarParts scars(double[] amounts, double unit) {
    List<Integer> segments = new ArrayList<>();
    List<Double> lengths = new ArrayList<>();
    for (int i = 0; i < amounts.length; i++) {
      for (double left = amounts[i]; left > 0; left -= 20 * unit) {
        segments.add(i);
        lengths.add(Math.min(left, 20 * unit));
      }
    }
    return new ScarParts(
        IntStream.range(0, segments.size()).toArray(),
        segments.stream().mapToInt(i -> i).toArray(),
        lengths.stream().mapToDouble(l -> l).toArray());
  }

  private static double[] hectares(int size, double each) {
    double[] hectares = new double[size];
    Arrays.fill(hectares, each);
    return hectares;
  }

  /** Small random metres on 200 segments and much on five in a row. */
  private static double[] planted(double unit) {
    Random random = new Random(4);
    double[] metres = random.doubles(200, 0, 40).toArray();
    for (int i = 100; i < 105; i++) {
      metres[i] = 2_000 + i;
    }
    return Arrays.stream(metres).map(m -> m * unit).toArray();
  }

  private static int[] hot(List<SegmentStatistics> statistics) {
    return IntStream.range(0, statistics.size()).filter(i -> statistics.get(i).hotSpot()).toArray();
  }

  @Test
  void findsWhatWasPlanted() {
    List<SegmentStatistics> statistics =
        new HotSpotFinder(SETTINGS).find(scars(planted(1), 1), hectares(200, 2), path(200));
    assertThat(hot(statistics)).contains(101, 102, 103);
    assertThat(Arrays.stream(hot(statistics))).allMatch(i -> i >= 99 && i <= 105);
    SegmentStatistics middle = statistics.get(102);
    assertThat(middle.adjustedPValue().orElseThrow())
        .isGreaterThanOrEqualTo(middle.pValue().orElseThrow());
    assertThat(middle.rate().low().orElseThrow()).isLessThan(1_051);
    assertThat(middle.rate().high().orElseThrow()).isGreaterThan(1_000);
    assertThat(middle.rateRemark() + middle.hotSpotRemark()).isEmpty();
    // The same again, to the bit.
    assertThat(new HotSpotFinder(SETTINGS).find(scars(planted(1), 1), hectares(200, 2), path(200)))
        .isEqualTo(statistics);
  }

  @Test
  void kilometresInsteadOfMetresOnlyRescaleTheRates() {
    List<SegmentStatistics> metres =
        new HotSpotFinder(SETTINGS).find(scars(planted(1), 1), hectares(200, 2), path(200));
    List<SegmentStatistics> kilometres =
        new HotSpotFinder(SETTINGS).find(scars(planted(0.001), 0.001), hectares(200, 2), path(200));
    for (int i = 0; i < 200; i++) {
      assertThat(kilometres.get(i).pValue()).isEqualTo(metres.get(i).pValue());
      assertThat(kilometres.get(i).giStar().orElseThrow())
          .isCloseTo(metres.get(i).giStar().orElseThrow(), within(1e-9));
      assertThat(1_000 * kilometres.get(i).rate().high().orElseThrow())
          .isCloseTo(metres.get(i).rate().high().orElseThrow(), within(1e-6));
    }
  }

  @Test
  void segmentsWithTooLittleBedTakeNoPart() {
    double[] hectares = hectares(200, 2);
    hectares[10] = 0.05;
    hectares[11] = 0;
    List<SegmentStatistics> statistics =
        new HotSpotFinder(SETTINGS).find(scars(planted(1), 1), hectares, path(200));
    for (int i : new int[] {10, 11}) {
      assertThat(statistics.get(i).rate().estimate()).isEmpty();
      assertThat(statistics.get(i).giStar()).isEmpty();
      assertThat(statistics.get(i).pValue()).isEmpty();
      assertThat(statistics.get(i).hotSpot()).isFalse();
      assertThat(statistics.get(i).rateRemark()).isEqualTo("too little bed in reach");
    }
    // Their metres, however many, change nothing elsewhere.
    double[] more = planted(1);
    more[10] = 0;
    more[11] = 0;
    double[] changed = planted(1);
    List<SegmentStatistics> without =
        new HotSpotFinder(SETTINGS).find(scars(more, 1), hectares, path(200));
    assertThat(without.get(102).pValue()).isEqualTo(statistics.get(102).pValue());
    assertThat(changed[10]).isPositive();
  }

  @Test
  void withoutScarsNothingIsHotAndThatIsSaid() {
    List<SegmentStatistics> statistics =
        new HotSpotFinder(SETTINGS)
            .find(new ScarParts(new int[0], new int[0], new double[0]), hectares(5, 2), path(5));
    assertThat(statistics).hasSize(5).noneMatch(SegmentStatistics::hotSpot);
    assertThat(statistics)
        .allSatisfy(
            s -> {
              assertThat(s.rate().estimate().orElseThrow()).isZero();
              assertThat(s.rate().collapsed()).isTrue();
              assertThat(s.giStar()).isEmpty();
              assertThat(s.hotSpotRemark()).startsWith("rates differ no more");
            });
  }

  @Test
  void withoutSegmentsThereIsNothing() {
    assertThat(
            new HotSpotFinder(SETTINGS)
                .find(new ScarParts(new int[0], new int[0], new double[0]), new double[0], path(0)))
        .isEmpty();
  }

  @Test
  void neighboursAreCountedInMetresAlongTheChannelAndOverJunctions() {
    // 0 – 1 – 2 in a row of 100, 40 and 100 m; 3 and 4 meet 1's far end too; 5 stands alone.
    SegmentNetwork network =
        SegmentNetwork.ofPairs(
            List.of(
                new int[] {0, 1},
                new int[] {1, 2},
                new int[] {1, 3},
                new int[] {2, 3},
                new int[] {3, 4}),
            new double[] {100, 40, 100, 300, 100, 100});
    int[][] near = NetworkNeighbours.within(network, 140);
    assertThat(near[0]).containsExactly(0, 1, 2);
    assertThat(near[1]).containsExactly(0, 1, 2);
    assertThat(near[3]).containsExactly(3);
    assertThat(near[5]).containsExactly(5);
    assertThat(NetworkNeighbours.within(network, 200)[1]).containsExactly(0, 1, 2, 3);
    assertThat(NetworkNeighbours.within(network, 0)[1]).containsExactly(1);
  }

  @Test
  void refusesWhatDoesNotFit() {
    assertThatThrownBy(
            () ->
                new HotSpotFinder(SETTINGS)
                    .find(scars(new double[] {1, 2}, 1), new double[] {1}, path(2)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new HotSpotSettings(150, 0, 0.05, 0.1, 1, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new HotSpotSettings(150, 99, 0, 0.1, 1, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new ScarParts(new int[1], new int[1], new double[] {Double.NaN}))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
