package org.meadowmark.core.plan.choice;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Chooses within a budget: greedy at any size, the proven best where that can be found, and a bound
 * in any case.
 *
 * <p>Benefits that add up: a general integer solver ({@link IntegerSolver}) and our own programme
 * ({@link ParetoProgramme}) each look for the best, and the programme proves it where it ends.
 *
 * <p>Benefits that act on each other: the greedy way with each gain worked out anew, beside the
 * best choice by the sum of what each is worth alone; of the two the one that is worth more
 * together is taken. With at most {@value #MOST_FOR_ALL_SETS} candidates all sets are looked at.
 */
public final class BudgetChooser {
  /** Steps of the programme before it is given up: a second or two, a hundred megabytes. */
  private static final int MOST_STEPS = 15_000_000;

  private static final int MOST_FOR_ALL_SETS = 12;

  /** Sums in another order differ in their last digits. */
  private static final double EQUAL = 1e-9;

  private final int mostSteps;
  private final boolean asksSolver;

  /** With the usual patience. */
  public BudgetChooser() {
    this(MOST_STEPS, true);
  }

  /**
   * A chooser that lacks something.
   *
   * @param mostSteps steps after which the programme is given up
   * @param asksSolver whether the general solver is asked, where it runs
   */
  BudgetChooser(int mostSteps, boolean asksSolver) {
    this.mostSteps = mostSteps;
    this.asksSolver = asksSolver;
  }

  /**
   * {@return the choice of the greedy way alone, by the sum of benefits}
   *
   * @param problem candidates, sites and budget
   */
  public BudgetChoice greedy(BudgetProblem problem) {
    return greedy(problem, JointBenefit.sum(problem));
  }

  /**
   * {@return the same, with what it is worth together}
   *
   * @param problem candidates, sites and budget
   * @param joint what candidates of the problem are worth together
   */
  public BudgetChoice greedy(BudgetProblem problem, JointBenefit joint) {
    List<List<Integer>> members = problem.members();
    List<Integer> chosen = new LazyGreedy(problem, members, JointBenefit.sum(problem)).choose();
    return choice(problem, chosen, joint.of(chosen), bound(problem, joint), Proof.NONE);
  }

  /**
   * {@return positions that the greedy way chooses with each gain worked out anew, given those
   * chosen}
   *
   * @param problem candidates, sites and budget
   * @param joint what candidates of the problem are worth together
   */
  public static List<Integer> greedyTogether(BudgetProblem problem, JointBenefit joint) {
    return new LazyGreedy(problem, problem.members(), joint).choose();
  }

  /**
   * {@return the best choice by the sum of benefits, or the greedy one where it is not found}
   *
   * @param problem candidates, sites and budget
   */
  public BudgetChoice choose(BudgetProblem problem) {
    List<List<Integer>> members = problem.members();
    PricedBound bound = new PricedBound(problem, members);
    List<Integer> best = new LazyGreedy(problem, members, JointBenefit.sum(problem)).choose();
    Optional<IntegerSolver.Answer> answer =
        asksSolver ? IntegerSolver.solve(problem, bound, best) : Optional.empty();
    if (answer.isPresent() && problem.benefit(answer.get().chosen()) > problem.benefit(best)) {
      best = answer.get().chosen();
    }
    ParetoProgramme.Result result =
        new ParetoProgramme(problem, members, bound, problem.benefit(best), mostSteps).run();
    double found = problem.benefit(result.better().orElse(best));
    boolean solverHolds =
        answer
            .filter(IntegerSolver.Answer::saysBest)
            .filter(held -> problem.benefit(held.chosen()) >= found * (1 - EQUAL))
            .isPresent();
    Proof proof = result.isComplete() ? Proof.PROGRAMME : Proof.NONE;
    if (solverHolds) {
      proof = result.isComplete() ? Proof.PROGRAMME_AND_SOLVER : Proof.SOLVER;
    }
    best = result.better().orElse(best);
    return choice(problem, best, problem.benefit(best), bound.value(), proof);
  }

  /**
   * {@return the best choice that is found where benefits act on each other}
   *
   * @param problem candidates, sites and budget
   * @param joint what candidates of the problem are worth together
   */
  public BudgetChoice choose(BudgetProblem problem, JointBenefit joint) {
    return choose(problem, joint, choose(problem));
  }

  /**
   * {@return the same where the best choice by the sum is known}
   *
   * @param problem candidates, sites and budget
   * @param joint what candidates of the problem are worth together
   * @param bySum what {@link #choose(BudgetProblem)} gave
   */
  public BudgetChoice choose(BudgetProblem problem, JointBenefit joint, BudgetChoice bySum) {
    if (joint instanceof SummedBenefit) {
      return bySum;
    }
    List<Integer> best = bySum.chosen();
    double benefit = joint.of(best);
    List<Integer> greedy = greedyTogether(problem, joint);
    double ofGreedy = joint.of(greedy);
    if (ofGreedy > benefit) {
      best = greedy;
      benefit = ofGreedy;
    }
    if (problem.candidates().size() > MOST_FOR_ALL_SETS) {
      return choice(problem, best, benefit, bound(problem, joint), Proof.NONE);
    }
    Optional<List<Integer>> better = AllSets.better(problem, joint, benefit);
    best = better.orElse(best);
    return choice(problem, best, joint.of(best), Double.POSITIVE_INFINITY, Proof.ALL_SETS);
  }

  /**
   * {@return every candidate with a benefit where the budget holds them, else the best choice that
   * is found}
   *
   * @param problem candidates, sites and budget
   * @param joint what candidates of the problem are worth together
   */
  public BudgetChoice all(BudgetProblem problem, JointBenefit joint) {
    List<Integer> all =
        IntStream.range(0, problem.candidates().size())
            .filter(i -> problem.candidates().get(i).benefit() > 0)
            .boxed()
            .toList();
    return problem.cost(all) <= problem.limit()
        ? choice(problem, all, joint.of(all), bound(problem, joint), Proof.NONE)
        : choose(problem, joint);
  }

  /** The lower of two bounds: each candidate adds its most, or all of them their most together. */
  private static double bound(BudgetProblem problem, JointBenefit joint) {
    BudgetProblem most = problem.withBenefits(joint::most);
    double oneByOne = new PricedBound(most, most.members()).value();
    if (joint instanceof SummedBenefit) {
      return oneByOne;
    }
    BudgetProblem apart = problem.withBenefits(joint::apart);
    return Math.min(
        oneByOne, new PricedBound(apart, apart.members()).value() + joint.mostTogether());
  }

  private static BudgetChoice choice(
      BudgetProblem problem, List<Integer> chosen, double benefit, double bound, Proof proof) {
    double upper = proof.isCertain() ? benefit : Math.max(benefit, bound);
    Proof known = !proof.isCertain() && benefit == upper ? Proof.BOUND : proof;
    return new BudgetChoice(chosen, problem.cost(chosen), benefit, upper, known);
  }
}
