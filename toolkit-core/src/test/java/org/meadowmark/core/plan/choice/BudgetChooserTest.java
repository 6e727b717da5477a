package org.meadowmark.core.plan.choice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BudgetChooserTest {
  private static final int CASES = 200;

  @Test
  void bestRatioFirstMissesTheBestPair() {
    BudgetProblem problem =
        new BudgetProblem(
            List.of(new Candidate(0, 6, 6.6), new Candidate(1, 5, 5), new Candidate(2, 5, 5)),
            List.of(0.0, 0.0, 0.0),
            10);
    BudgetChoice greedy = new BudgetChooser().greedy(problem);
    assertThat(greedy.benefit()).isEqualTo(6.6);
    // 6.6 and four fifths of 5
    assertThat(greedy.upperBound()).isCloseTo(10.6, within(1e-6));
    assertThat(greedy.gapShare()).isCloseTo(4.0 / 10.6, within(1e-6));
    assertThat(greedy.isProvenBest()).isFalse();

    BudgetChoice best = new BudgetChooser().choose(problem);
    assertThat(best.chosen()).containsExactly(1, 2);
    assertThat(best.benefit()).isEqualTo(10);
    assertThat(best.upperBound()).isEqualTo(10);
    assertThat(best.isProvenBest()).isTrue();
  }

  @Test
  void mobilisationIsPaidOnceASite() {
    BudgetProblem problem =
        new BudgetProblem(
            List.of(new Candidate(0, 1, 2), new Candidate(0, 1, 2), new Candidate(1, 1, 3)),
            List.of(4.0, 4.0),
            6);
    BudgetChoice best = new BudgetChooser().choose(problem);
    assertThat(best.chosen()).containsExactly(0, 1);
    assertThat(best.cost()).isEqualTo(6);
    assertThat(new BudgetChooser().greedy(problem).chosen()).containsExactly(0, 1);
  }

  @Test
  void aBudgetOfZeroBuysOnlyWhatCostsNothing() {
    BudgetProblem problem =
        new BudgetProblem(
            List.of(new Candidate(0, 0, 1), new Candidate(1, 1, 100)), List.of(0.0, 0.0), 0);
    BudgetChoice best = new BudgetChooser().choose(problem);
    assertThat(best.chosen()).containsExactly(0);
    assertThat(best.upperBound()).isEqualTo(1);
    assertThat(new BudgetChooser().choose(problem.withBudget(1)).chosen()).containsExactly(0, 1);
  }

  @Test
  void aNegativeBudgetIsRefused() {
    assertThatThrownBy(() -> new BudgetProblem(List.of(), List.of(), -1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void oneLargeRepairIsNotShutOutByASmallOne() {
    BudgetProblem problem =
        new BudgetProblem(
            List.of(new Candidate(0, 1, 1.1), new Candidate(1, 100, 100)), List.of(0.0, 0.0), 100);
    assertThat(new BudgetChooser().greedy(problem).chosen()).containsExactly(1);
  }

  @Test
  void anAbandonedProgrammeLeavesTheGreedyChoiceAndItsBound() {
    BudgetProblem problem = random(new Random(3), 40);
    BudgetChoice given = new BudgetChooser(10, false).choose(problem);
    BudgetChoice best = new BudgetChooser().choose(problem);
    assertThat(best.isProvenBest()).isTrue();
    assertThat(given.isProvenBest()).isFalse();
    assertThat(given.chosen()).isEqualTo(new BudgetChooser().greedy(problem).chosen());
    assertThat(given.upperBound()).isGreaterThanOrEqualTo(best.benefit());
    if (IntegerSolver.isAvailable()) {
      // The solver's word is not taken for a proof: the bound stays.
      BudgetChoice solved = new BudgetChooser(10, true).choose(problem);
      assertThat(solved.benefit()).isCloseTo(best.benefit(), within(1e-9));
      assertThat(solved.proof()).isEqualTo(Proof.SOLVER);
      assertThat(solved.isProvenBest()).isFalse();
      assertThat(solved.upperBound()).isEqualTo(given.upperBound());
      assertThat(best.proof()).isEqualTo(Proof.PROGRAMME_AND_SOLVER);
    }
  }

  /** Against every subset; the ratios are those in docs/method.md. */
  @Test
  void programmeIsBestAndGreedyIsNearIn200RandomCases() {
    Random random = new Random(20261125);
    List<Double> ratios = new ArrayList<>();
    List<Double> gaps = new ArrayList<>();
    for (int k = 0; k < CASES; k++) {
      BudgetProblem problem = random(random, 4 + random.nextInt(9));
      double best = bestOfAll(problem);
      BudgetChoice exact = new BudgetChooser().choose(problem);
      BudgetChoice greedy = new BudgetChooser().greedy(problem);
      assertThat(exact.isProvenBest()).isTrue();
      assertThat(exact.benefit()).isCloseTo(best, within(1e-9));
      assertThat(exact.cost()).isLessThanOrEqualTo(problem.budget() + 1e-6);
      assertThat(greedy.cost()).isLessThanOrEqualTo(problem.budget() + 1e-6);
      assertThat(greedy.upperBound()).isGreaterThanOrEqualTo(best - 1e-9);
      ratios.add(best == 0 ? 1 : greedy.benefit() / best);
      gaps.add(greedy.gapShare());
    }
    Collections.sort(ratios);
    Collections.sort(gaps);
    assertThat(ratios.stream().filter(ratio -> ratio > 1 - 1e-9).count()).isEqualTo(144);
    assertThat(ratios.get(0)).isCloseTo(0.697, within(5e-4));
    assertThat(ratios.get(10)).isCloseTo(0.915, within(5e-4));
    assertThat(ratios.stream().mapToDouble(ratio -> ratio).average().orElseThrow())
        .isCloseTo(0.983, within(5e-4));
    assertThat(gaps.get(100)).isCloseTo(0.101, within(5e-4));
  }

  /** The solver's answers against every subset and against our own programme. */
  @Test
  void integerSolverIsRightIn400RandomCases() {
    assumeTrue(IntegerSolver.isAvailable(), "the solver's native library does not run here");
    Random random = new Random(4);
    int answers = 0;
    int best = 0;
    int says = 0;
    for (int k = 0; k < 2 * CASES; k++) {
      BudgetProblem problem = random(random, 4 + random.nextInt(9));
      double bestOfAll = bestOfAll(problem);
      PricedBound bound = new PricedBound(problem, problem.members());
      Optional<IntegerSolver.Answer> answer = IntegerSolver.solve(problem, bound, List.of());
      BudgetChoice programme = new BudgetChooser(15_000_000, false).choose(problem);
      assertThat(programme.benefit()).isCloseTo(bestOfAll, within(1e-9));
      assertThat(programme.proof()).isEqualTo(Proof.PROGRAMME);
      if (answer.isPresent()) {
        answers++;
        double benefit = problem.benefit(answer.get().chosen());
        assertThat(problem.cost(answer.get().chosen())).isLessThanOrEqualTo(problem.limit());
        best += Math.abs(benefit - bestOfAll) <= 1e-9 * bestOfAll ? 1 : 0;
        says += answer.get().saysBest() ? 1 : 0;
      }
    }
    assertThat(answers).isEqualTo(2 * CASES);
    assertThat(best).isEqualTo(2 * CASES);
    assertThat(says).isEqualTo(2 * CASES);
  }

  /** Site of 1–4 candidates; the budget buys a part of everything. */
  private static BudgetProblem random(Random random, int count) {
    List<Candidate> candidates = new ArrayList<>();
    List<Double> mobilisation = new ArrayList<>();
    double all = 0;
    for (int i = 0; i < count; i++) {
      if (mobilisation.isEmpty() || random.nextInt(3) == 0) {
        mobilisation.add(20 * random.nextDouble());
        all += mobilisation.get(mobilisation.size() - 1);
      }
      double cost = 1 + 30 * random.nextDouble();
      all += cost;
      candidates.add(
          new Candidate(mobilisation.size() - 1, cost, cost * (0.2 + random.nextDouble())));
    }
    return new BudgetProblem(candidates, mobilisation, all * (0.1 + 0.7 * random.nextDouble()));
  }

  private static double bestOfAll(BudgetProblem problem) {
    int count = problem.candidates().size();
    double best = 0;
    for (int subset = 0; subset < 1 << count; subset++) {
      List<Integer> chosen = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        if ((subset >> i & 1) == 1) {
          chosen.add(i);
        }
      }
      if (problem.cost(chosen) <= problem.budget()) {
        best = Math.max(best, problem.benefit(chosen));
      }
    }
    return best;
  }
}
