package org.meadowmark.core.plan.choice;

import java.util.List;

/**
 * Chooses within a budget: greedy at any size, the proven best where the programme finishes, and a
 * bound in either case.
 */
public final class BudgetChooser {
  /** Steps of the programme before it is given up: a second or two, a hundred megabytes. */
  private static final int MOST_STEPS = 15_000_000;

  private final int mostSteps;

  /** With the usual patience. */
  public BudgetChooser() {
    this(MOST_STEPS);
  }

  /** Gives the programme up after so many steps. */
  BudgetChooser(int mostSteps) {
    this.mostSteps = mostSteps;
  }

  /** The choice of the greedy way alone. */
  public BudgetChoice greedy(BudgetProblem problem) {
    List<List<Integer>> members = problem.members();
    double bound = new PricedBound(problem, members).value();
    return choice(problem, new LazyGreedy(problem, members).choose(), bound, false);
  }

  /** The best choice, or the greedy one where the programme does not finish. */
  public BudgetChoice choose(BudgetProblem problem) {
    List<List<Integer>> members = problem.members();
    PricedBound bound = new PricedBound(problem, members);
    List<Integer> greedy = new LazyGreedy(problem, members).choose();
    ParetoProgramme.Result result =
        new ParetoProgramme(problem, members, bound, problem.benefit(greedy), mostSteps).run();
    return choice(problem, result.better().orElse(greedy), bound.value(), result.isComplete());
  }

  private static BudgetChoice choice(
      BudgetProblem problem, List<Integer> chosen, double bound, boolean proven) {
    double benefit = problem.benefit(chosen);
    double upper = proven ? benefit : Math.max(benefit, bound);
    return new BudgetChoice(
        chosen, problem.cost(chosen), benefit, upper, proven || benefit == upper);
  }
}
