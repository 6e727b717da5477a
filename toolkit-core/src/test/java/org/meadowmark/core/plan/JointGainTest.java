package org.meadowmark.core.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.measure.connectivity.CrossingModel;
import org.meadowmark.core.measure.connectivity.Filling;
import org.meadowmark.core.measure.connectivity.HabitatGraph;
import org.meadowmark.core.measure.connectivity.JointFillings;
import org.meadowmark.core.measure.connectivity.ProbabilisticConnectivity;
import org.meadowmark.core.plan.choice.BudgetChoice;
import org.meadowmark.core.plan.choice.BudgetChooser;
import org.meadowmark.core.plan.choice.BudgetProblem;
import org.meadowmark.core.plan.choice.Candidate;
import org.meadowmark.core.plan.choice.JointBenefit;
import org.meadowmark.core.plan.choice.Proof;

class JointGainTest {
  private static final int CASES = 200;
  private static final double MEDIAN_METRES = 5;

  /** A random landscape with scars to fill, some of them in a row. */
  private static final class Landscape {
    final double[] areas;
    final List<int[]> links = new ArrayList<>();
    final List<Double> metres = new ArrayList<>();
    final List<List<int[]>> scars = new ArrayList<>();

    Landscape(Random random, int scarCount) {
      areas = new double[6 + random.nextInt(8)];
      for (int i = 0; i < areas.length; i++) {
        areas[i] = 0.05 + 3 * random.nextDouble() * random.nextDouble();
      }
      for (int i = 1; i < areas.length; i++) {
        if (random.nextInt(5) > 0) {
          link(i - 1, i, 0.2 + 12 * random.nextDouble());
        }
        if (i > 2 && random.nextInt(3) == 0) {
          link(random.nextInt(i - 1), i, 0.2 + 12 * random.nextDouble());
        }
      }
      link(0, areas.length - 1, 30);
      for (int s = 0; s < scarCount; s++) {
        List<int[]> pairs = new ArrayList<>();
        for (int g = 0; g <= random.nextInt(2); g++) {
          pairs.add(links.get(random.nextInt(links.size())));
        }
        scars.add(pairs);
      }
    }

    private void link(int first, int second, double length) {
      links.add(new int[] {first, second});
      metres.add(length);
    }

    /** The graph with some scars filled, each gap of length 0. */
    ProbabilisticConnectivity filled(List<Integer> chosen) {
      List<int[]> all = new ArrayList<>(links);
      List<Double> lengths = new ArrayList<>(metres);
      for (int s : chosen) {
        for (int[] pair : scars.get(s)) {
          all.add(pair);
          lengths.add(0.0);
        }
      }
      HabitatGraph graph =
          HabitatGraph.ofDistances(
              areas,
              all.stream().mapToInt(pair -> pair[0]).toArray(),
              all.stream().mapToInt(pair -> pair[1]).toArray(),
              lengths.stream().mapToDouble(Double::doubleValue).toArray());
      return ProbabilisticConnectivity.of(
          graph, CrossingModel.ofMedianMetres(MEDIAN_METRES).withCutoff(1e-30), 50);
    }

    double equivalentHectares(List<Integer> chosen) {
      return filled(chosen).index().equivalentAreaHectares();
    }

    JointFillings fillings() {
      ProbabilisticConnectivity now = filled(List.of());
      List<Filling> fillings =
          scars.stream()
              .map(
                  pairs ->
                      new Filling(pairs.stream().map(p -> Filling.Join.of(0, p[0], p[1])).toList()))
              .toList();
      return now.joint(fillings, now.gains(fillings));
    }
  }

  private static List<JointGain.Repair> repairs(Random random, int count, boolean sameChance) {
    List<JointGain.Repair> repairs = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double chance = sameChance ? 1 : 0.5 + 0.5 * random.nextDouble();
      repairs.add(new JointGain.Repair(0.3 * random.nextDouble(), chance, i));
    }
    return repairs;
  }

  private static BudgetProblem problem(
      Random random, JointGain joint, int count, double mobilisation) {
    List<Candidate> candidates = new ArrayList<>();
    List<Double> sites = new ArrayList<>();
    double all = 0;
    for (int i = 0; i < count; i++) {
      if (sites.isEmpty() || random.nextInt(3) == 0) {
        sites.add(mobilisation * random.nextDouble());
        all += sites.get(sites.size() - 1);
      }
      double cost = 1 + 30 * random.nextDouble();
      all += cost;
      candidates.add(new Candidate(sites.size() - 1, cost, joint.alone(i)));
    }
    return new BudgetProblem(candidates, sites, all * (0.1 + 0.7 * random.nextDouble()));
  }

  private static List<Integer> subset(int bits, int count) {
    return IntStream.range(0, count).filter(i -> (bits >> i & 1) == 1).boxed().toList();
  }

  /** What the class says that a set is worth, with the equivalent area worked out anew. */
  private static double bruteForce(
      Landscape land, List<JointGain.Repair> repairs, JointGain joint, List<Integer> chosen) {
    double grass = 0;
    double weights = 0;
    double weighted = 0;
    double before = land.equivalentHectares(List.of());
    for (int i : chosen) {
      grass += repairs.get(i).grass() * repairs.get(i).staysWhole();
      double after = land.equivalentHectares(List.of(i));
      double weight = after * after - before * before;
      weights += weight;
      weighted += weight * repairs.get(i).staysWhole();
    }
    double connected = land.equivalentHectares(chosen) - before;
    return grass + (weights > 0 ? connected * weighted / weights : 0);
  }

  /**
   * Every set of every case, the equivalent connected area worked out anew with all of it filled.
   */
  @Test
  void choiceIsBestOfAllSetsIn200RandomCases() {
    Random random = new Random(20261125);
    List<Double> greedyRatios = new ArrayList<>();
    List<Double> separateRatios = new ArrayList<>();
    List<Double> betterRatios = new ArrayList<>();
    double least = 1;
    double most = 1;
    for (int k = 0; k < CASES; k++) {
      int count = 4 + random.nextInt(5);
      Landscape land = new Landscape(random, count);
      List<JointGain.Repair> repairs = repairs(random, count, false);
      JointGain joint = new JointGain(repairs, 1, land.fillings(), List.of());
      BudgetProblem problem = problem(random, joint, count, 20);
      double best = 0;
      for (int bits = 0; bits < 1 << count; bits++) {
        List<Integer> set = subset(bits, count);
        double worth = bruteForce(land, repairs, joint, set);
        assertThat(joint.of(set)).isCloseTo(worth, within(1e-9));
        if (problem.cost(set) <= problem.budget()) {
          best = Math.max(best, worth);
        }
        double sum = problem.benefit(set);
        if (sum > 0) {
          least = Math.min(least, worth / sum);
          most = Math.max(most, worth / sum);
        }
      }
      BudgetChoice choice = new BudgetChooser().choose(problem, joint);
      assertThat(choice.proof()).isEqualTo(Proof.ALL_SETS);
      assertThat(choice.benefit()).isCloseTo(best, within(1e-9));
      assertThat(choice.cost()).isLessThanOrEqualTo(problem.budget() + 1e-6);
      BudgetChoice bounded = new BudgetChooser().greedy(problem, joint);
      assertThat(bounded.upperBound()).isGreaterThanOrEqualTo(best - 1e-9);
      if (best > 0) {
        double greedy = joint.of(BudgetChooser.greedyTogether(problem, joint)) / best;
        double separate = joint.of(new BudgetChooser().choose(problem).chosen()) / best;
        greedyRatios.add(greedy);
        separateRatios.add(separate);
        betterRatios.add(Math.max(greedy, separate));
      }
    }
    assertThat(greedyRatios).hasSize(191);
    checkRatios(greedyRatios, 143, 0.559, 0.816, 0.975);
    checkRatios(separateRatios, 121, 0.608, 0.697, 0.944);
    checkRatios(betterRatios, 161, 0.723, 0.897, 0.989);
    assertThat(least).isCloseTo(0.367, within(5e-4));
    assertThat(most).isCloseTo(2.478, within(5e-4));
  }

  /** The figures are those in docs/method.md. */
  private static void checkRatios(
      List<Double> ratios, int best, double least, double twentieth, double mean) {
    Collections.sort(ratios);
    assertThat(ratios.stream().filter(ratio -> ratio > 1 - 1e-9).count()).isEqualTo(best);
    assertThat(ratios.get(0)).isCloseTo(least, within(5e-4));
    assertThat(ratios.get(ratios.size() / 20)).isCloseTo(twentieth, within(5e-4));
    assertThat(ratios.stream().mapToDouble(ratio -> ratio).average().orElseThrow())
        .isCloseTo(mean, within(5e-4));
  }

  /** A look at every offer in every step, without sites. */
  @Test
  void lazyGreedyChoosesWhatALookAtEverythingChooses() {
    Random random = new Random(7);
    for (int k = 0; k < CASES; k++) {
      int count = 4 + random.nextInt(10);
      Landscape land = new Landscape(random, count);
      List<JointGain.Repair> repairs = repairs(random, count, true);
      JointGain joint = new JointGain(repairs, 1, land.fillings(), List.of());
      BudgetProblem problem = withoutSites(problem(random, joint, count, 0));
      List<Integer> plain = plainGreedy(problem, joint);
      List<Integer> lazy = BudgetChooser.greedyTogether(problem, joint);
      assertThat(joint.of(lazy)).isCloseTo(joint.of(plain), within(1e-9));
    }
  }

  private static BudgetProblem withoutSites(BudgetProblem problem) {
    List<Candidate> candidates = new ArrayList<>();
    List<Double> sites = new ArrayList<>();
    for (Candidate c : problem.candidates()) {
      candidates.add(new Candidate(sites.size(), c.cost(), c.benefit()));
      sites.add(0.0);
    }
    return new BudgetProblem(candidates, sites, problem.budget());
  }

  private static List<Integer> plainGreedy(BudgetProblem problem, JointBenefit joint) {
    List<Integer> chosen = new ArrayList<>();
    double left = problem.budget();
    while (true) {
      int best = -1;
      double bestRatio = 0;
      for (int i = 0; i < problem.candidates().size(); i++) {
        double cost = problem.candidates().get(i).cost();
        if (chosen.contains(i) || cost > left) {
          continue;
        }
        List<Integer> with = new ArrayList<>(chosen);
        with.add(i);
        double ratio = (joint.of(with) - joint.of(chosen)) / cost;
        if (ratio > bestRatio * (1 + 1e-9)) {
          best = i;
          bestRatio = ratio;
        }
      }
      if (best < 0) {
        break;
      }
      chosen.add(best);
      left -= problem.candidates().get(best).cost();
    }
    double single = 0;
    List<Integer> bestSingle = List.of();
    for (int i = 0; i < problem.candidates().size(); i++) {
      Candidate c = problem.candidates().get(i);
      if (c.cost() <= problem.budget() && c.benefit() > single) {
        single = c.benefit();
        bestSingle = List.of(i);
      }
    }
    return single > joint.of(chosen) ? bestSingle : chosen;
  }

  /** Three patches of 1 ha in a row, 5 m apart: ECA √5.5, with one gap filled √7, with both 3. */
  @Test
  void twoScarsInARowAreTakenTogetherThoughOneOfAnotherKindIsWorthMoreAlone() {
    HabitatGraph graph =
        HabitatGraph.ofDistances(
            new double[] {1, 1, 1}, new int[] {0, 1}, new int[] {1, 2}, new double[] {5, 5});
    ProbabilisticConnectivity now =
        ProbabilisticConnectivity.of(graph, CrossingModel.ofMedianMetres(MEDIAN_METRES), 3);
    List<Filling> fillings = List.of(Filling.ofGap(0, 1), Filling.ofGap(1, 2));
    JointFillings joint = now.joint(fillings, now.gains(fillings));
    double alone = Math.sqrt(7) - Math.sqrt(5.5);
    double both = 3 - Math.sqrt(5.5);
    List<JointGain.Repair> repairs =
        List.of(
            new JointGain.Repair(0, 1, 0),
            new JointGain.Repair(0, 1, 1),
            new JointGain.Repair(alone * 1.05, 1, -1));
    JointGain gain = new JointGain(repairs, 1, joint, List.of());
    assertThat(gain.alone(0)).isCloseTo(alone, within(1e-9));
    assertThat(gain.connectedHectares(List.of(0, 1))).isCloseTo(both, within(1e-9));
    assertThat(both).isGreaterThan(2 * alone);
    BudgetProblem problem =
        new BudgetProblem(
            List.of(
                new Candidate(0, 1, gain.alone(0)),
                new Candidate(1, 1, gain.alone(1)),
                new Candidate(2, 1, gain.alone(2))),
            List.of(0.0, 0.0, 0.0),
            2);
    assertThat(new BudgetChooser().choose(problem).chosen()).contains(2);
    BudgetChoice choice = new BudgetChooser().choose(problem, gain);
    assertThat(choice.chosen()).containsExactly(0, 1);
    assertThat(choice.benefit()).isCloseTo(both, within(1e-9));
    // What an earlier season filled is given: the second gap is worth what it adds.
    JointGain later = new JointGain(repairs.subList(1, 2), 1, joint, List.of(0));
    assertThat(later.alone(0)).isCloseTo(3 - Math.sqrt(7), within(1e-9));
  }
}
