package org.meadowmark.core.rank.zone.choice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.rank.network.SegmentNetwork;
import org.meadowmark.core.rank.zone.choice.ZoneChoice.Proof;

class ZoneChooserTest {
  private static final int NETWORKS = 500;

  @Test
  void coversAsMuchAsTheBestOfAllSubsetsOn500RandomNetworks() {
    Map<Proof, Integer> proofs = new EnumMap<>(Proof.class);
    for (long seed = 0; seed < NETWORKS; seed++) {
      ZoneProblem problem = RandomNetworks.small(seed);
      ZoneChoice choice = ZoneChooser.choose(problem);
      checkAllowed(problem, choice);
      assertThat(choice.coveredMetres())
          .as("seed %d", seed)
          .isCloseTo(bestOfAllSubsets(problem), within(1e-9));
      assertThat(choice.proof()).as("seed %d", seed).isNotEqualTo(Proof.NONE);
      assertThat(choice.upperBoundMetres()).isEqualTo(choice.coveredMetres());
      proofs.merge(choice.proof(), 1, Integer::sum);
    }
    // Every way to an answer is taken, so the comparison checks each.
    assertThat(proofs)
        .containsKeys(
            Proof.NOTHING_TO_COVER, Proof.BOUND, Proof.DYNAMIC_PROGRAMME, Proof.BRANCH_AND_BOUND);
  }

  /** Without bounds that narrow the search, and with credits where there are loops. */
  @Test
  void programmeAloneLeavesNothingOut() throws ParetoProgramme.TooMuch {
    int withLoops = 0;
    for (long seed = 1000; seed < 1200; seed++) {
      ZoneProblem problem = RandomNetworks.small(seed);
      Core core = Core.of(problem);
      Forest forest = new Forest(core, Forest.firstAttraction(core));
      double best = bestOfAllSubsets(problem);
      boolean[] chosen =
          ParetoProgramme.best(
                  forest, List.of(), problem, 0, new ParetoProgramme.Work(Long.MAX_VALUE))
              .orElse(new boolean[core.size()]);
      double found = 0;
      for (int i = 0; i < chosen.length; i++) {
        found += chosen[i] ? core.values[i] : 0;
      }
      assertThat(found).as("seed %d", seed).isGreaterThanOrEqualTo(best - 1e-9);
      if (forest.cuts.isEmpty()) {
        assertThat(found).as("seed %d", seed).isCloseTo(best, within(1e-9));
      }
      withLoops += forest.cuts.isEmpty() ? 0 : 1;
    }
    assertThat(withLoops).isBetween(20, 180);
  }

  @Test
  void pricedBoundIsNeverBelowTheBest() {
    for (long seed = 2000; seed < 2200; seed++) {
      ZoneProblem problem = RandomNetworks.small(seed);
      Random random = new Random(seed);
      Forest forest = new Forest(Core.of(problem), problem.valuesMetres());
      Prices prices = new Prices(random.nextDouble() / 2, 40 * random.nextDouble());
      PricedForest priced = new PricedForest(forest, prices);
      double best = bestOfAllSubsets(problem);
      assertThat(priced.upperBound(problem.limitMetres(), problem.mostZones()))
          .as("seed %d", seed)
          .isGreaterThanOrEqualTo(best - 1e-9);
      boolean[] chosen = priced.chosen();
      double highest = 0;
      for (int i = 0; i < chosen.length; i++) {
        double with = priced.upperBoundWith(i, problem.limitMetres(), problem.mostZones());
        assertThat(with)
            .isLessThanOrEqualTo(
                priced.upperBound(problem.limitMetres(), problem.mostZones()) + 1e-9);
        highest = chosen[i] ? Math.max(highest, with) : highest;
        assertThat(with)
            .as("seed %d segment %d", seed, i)
            .isGreaterThanOrEqualTo(bestOfSubsetsWith(problem, i) - 1e-9);
      }
    }
  }

  @Test
  void moreLengthOrMoreZonesNeverCoverLess() {
    for (long seed = 3000; seed < 3100; seed++) {
      ZoneProblem problem = RandomNetworks.small(seed);
      double covered = ZoneChooser.choose(problem).coveredMetres();
      ZoneProblem longer = problem.within(problem.totalLengthMetres() * 1.3 + 10);
      ZoneProblem more =
          new ZoneProblem(
              problem.network(),
              problem.valuesMetres(),
              problem.mostZones() + 1,
              problem.totalLengthMetres());
      assertThat(ZoneChooser.choose(longer).coveredMetres()).isGreaterThanOrEqualTo(covered - 1e-9);
      assertThat(ZoneChooser.choose(more).coveredMetres()).isGreaterThanOrEqualTo(covered - 1e-9);
    }
  }

  @Test
  void neverCoversLessThanWorstFirst() {
    int better = 0;
    for (long seed = 4000; seed < 4200; seed++) {
      ZoneProblem problem = RandomNetworks.small(seed);
      int[] worst = WorstFirst.choose(problem);
      double plain = Arrays.stream(worst).mapToDouble(i -> problem.valuesMetres()[i]).sum();
      double best = ZoneChooser.choose(problem).coveredMetres();
      assertThat(best).isGreaterThanOrEqualTo(plain - 1e-9);
      better += best > plain + 1e-9 ? 1 : 0;
      checkAllowed(problem, zonesOf(problem, worst));
    }
    assertThat(better).isPositive();
  }

  @Test
  void anotherOrderOfSegmentsCoversTheSame() {
    for (long seed = 5000; seed < 5100; seed++) {
      ZoneProblem problem = RandomNetworks.small(seed);
      int count = problem.network().size();
      List<Integer> order = new ArrayList<>(IntStream.range(0, count).boxed().toList());
      Collections.shuffle(order, new Random(seed));
      int[] place = new int[count];
      for (int i = 0; i < count; i++) {
        place[order.get(i)] = i;
      }
      List<int[]> pairs = new ArrayList<>();
      double[] lengths = new double[count];
      double[] values = new double[count];
      for (int i = 0; i < count; i++) {
        lengths[place[i]] = problem.network().lengthMetres(i);
        values[place[i]] = problem.valuesMetres()[i];
        for (int j : problem.network().neighbours(i)) {
          if (j > i) {
            pairs.add(new int[] {place[j], place[i]});
          }
        }
      }
      ZoneProblem shuffled =
          new ZoneProblem(
              SegmentNetwork.ofPairs(pairs, lengths),
              values,
              problem.mostZones(),
              problem.totalLengthMetres());
      assertThat(ZoneChooser.choose(shuffled).coveredMetres())
          .as("seed %d", seed)
          .isCloseTo(ZoneChooser.choose(problem).coveredMetres(), within(1e-9));
    }
  }

  @Test
  void sameInputGivesTheSameZones() {
    for (long seed = 6000; seed < 6040; seed++) {
      List<int[]> once = ZoneChooser.choose(RandomNetworks.small(seed)).zones();
      List<int[]> again = ZoneChooser.choose(RandomNetworks.small(seed)).zones();
      assertThat(again.stream().map(Arrays::toString))
          .isEqualTo(once.stream().map(Arrays::toString).toList());
    }
  }

  @Test
  void noValueNoZones() {
    ZoneProblem problem =
        new ZoneProblem(
            SegmentNetwork.ofPairs(List.of(new int[] {0, 1}), new double[] {100, 100}),
            new double[2],
            3,
            1000);
    ZoneChoice choice = ZoneChooser.choose(problem);
    assertThat(choice.zones()).isEmpty();
    assertThat(choice.coveredMetres()).isZero();
    assertThat(choice.upperBoundMetres()).isZero();
  }

  @Test
  void noSegmentsNoZones() {
    ZoneProblem problem =
        new ZoneProblem(SegmentNetwork.ofPairs(List.of(), new double[0]), new double[0], 3, 1000);
    assertThat(ZoneChooser.choose(problem).zones()).isEmpty();
  }

  /** Worked by hand: five in a row, 100 m each, values 5 9 1 8 7; two zones in 300 m. */
  @Test
  void twoZonesOnAPath() {
    ZoneChoice choice = ZoneChooser.choose(path(2, 300, 5, 9, 1, 8, 7));
    assertThat(choice.zones()).hasSize(2);
    assertThat(choice.zones().get(0)).containsExactly(3, 4);
    assertThat(choice.zones().get(1)).containsExactly(1);
    assertThat(choice.coveredMetres()).isEqualTo(24);
    assertThat(choice.usedMetres()).isEqualTo(300);
  }

  /** Worked by hand: worst first takes 10 and is stuck with one zone; 6 + 6 is better. */
  @Test
  void worstFirstIsMisledByALonelyPeak() {
    ZoneProblem problem = path(1, 200, 10, 0, 0, 6, 6);
    assertThat(WorstFirst.choose(problem)).containsExactly(0);
    assertThat(ZoneChooser.choose(problem).zones().get(0)).containsExactly(3, 4);
  }

  @Test
  void ofTwoThatAreAsGoodTheLowerPositionIsTaken() {
    ZoneChoice choice = ZoneChooser.choose(path(1, 100, 3, 7, 1, 7, 2));
    assertThat(choice.zones()).hasSize(1);
    assertThat(choice.zones().get(0)).containsExactly(1);
  }

  @Test
  void worthlessSegmentsAreTakenOnlyToJoin() {
    ZoneChoice choice = ZoneChooser.choose(path(1, 500, 0, 4, 0, 5, 0));
    assertThat(choice.zones().get(0)).containsExactly(1, 2, 3);
    assertThat(choice.usedMetres()).isEqualTo(300);
  }

  @Test
  void refusesValuesThatAreNone() {
    assertThatThrownBy(() -> path(1, 100, 1, -1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> path(1, 100, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> path(-1, 100, 1)).isInstanceOf(IllegalArgumentException.class);
  }

  private static ZoneProblem path(int zones, double limit, double... values) {
    List<int[]> pairs = new ArrayList<>();
    for (int i = 1; i < values.length; i++) {
      pairs.add(new int[] {i - 1, i});
    }
    double[] lengths = new double[values.length];
    Arrays.fill(lengths, 100);
    return new ZoneProblem(SegmentNetwork.ofPairs(pairs, lengths), values, zones, limit);
  }

  private static ZoneChoice zonesOf(ZoneProblem problem, int[] taken) {
    boolean[] chosen = new boolean[problem.network().size()];
    Arrays.stream(taken).forEach(i -> chosen[i] = true);
    List<int[]> zones = Core.of(problem).zones(chosen);
    double covered = Arrays.stream(taken).mapToDouble(i -> problem.valuesMetres()[i]).sum();
    double used = Arrays.stream(taken).mapToDouble(i -> problem.network().lengthMetres(i)).sum();
    return new ZoneChoice(zones, used, covered, covered, Proof.NONE);
  }

  static void checkAllowed(ZoneProblem problem, ZoneChoice choice) {
    assertThat(choice.zones().size()).isLessThanOrEqualTo(problem.mostZones());
    assertThat(choice.usedMetres()).isLessThanOrEqualTo(problem.limitMetres());
    double covered = 0;
    double used = 0;
    BitSet seen = new BitSet();
    for (int[] zone : choice.zones()) {
      BitSet members = new BitSet();
      Arrays.stream(zone).forEach(members::set);
      assertThat(parts(problem.network(), members)).isEqualTo(1);
      assertThat(seen.intersects(members)).isFalse();
      seen.or(members);
      for (int i : zone) {
        covered += problem.valuesMetres()[i];
        used += problem.network().lengthMetres(i);
      }
    }
    assertThat(choice.coveredMetres()).isCloseTo(covered, within(1e-9));
    assertThat(choice.usedMetres()).isCloseTo(used, within(1e-9));
  }

  static double bestOfAllSubsets(ZoneProblem problem) {
    return bestOfSubsets(problem, 0);
  }

  /** -infinity where no allowed subset has the segment. */
  static double bestOfSubsetsWith(ZoneProblem problem, int segment) {
    return bestOfSubsets(problem, 1L << segment);
  }

  private static double bestOfSubsets(ZoneProblem problem, long required) {
    int count = problem.network().size();
    double best = Double.NEGATIVE_INFINITY;
    double[] values = problem.valuesMetres();
    for (long subset = 0; subset < 1L << count; subset++) {
      if ((subset & required) != required) {
        continue;
      }
      double length = 0;
      double value = 0;
      for (int i = 0; i < count; i++) {
        if ((subset >> i & 1) == 1) {
          length += problem.network().lengthMetres(i);
          value += values[i];
        }
      }
      if (length <= problem.limitMetres()
          && value > best
          && parts(problem.network(), BitSet.valueOf(new long[] {subset})) <= problem.mostZones()) {
        best = value;
      }
    }
    return best;
  }

  private static int parts(SegmentNetwork network, BitSet members) {
    BitSet left = (BitSet) members.clone();
    int parts = 0;
    while (!left.isEmpty()) {
      parts++;
      List<Integer> open = new ArrayList<>(List.of(left.nextSetBit(0)));
      left.clear(open.get(0));
      while (!open.isEmpty()) {
        for (int next : network.neighbours(open.remove(open.size() - 1))) {
          if (left.get(next)) {
            left.clear(next);
            open.add(next);
          }
        }
      }
    }
    return parts;
  }
}
