package org.meadowmark.core.plan.choice;

import com.google.ortools.Loader;
import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPSolver.ResultStatus;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The choice as an integer programme for a general solver: SCIP, of OR-Tools.
 *
 * <p>Columns are candidates and sites, each taken or not. Rows: a candidate only with its site; the
 * costs of candidates and the mobilisation of sites within the budget. The benefits of the
 * candidates taken are made most. Candidates that are in no choice better than a known one, by
 * {@link PricedBound}, are left out first.
 *
 * <p>The solver works with rounded numbers and within tolerances, so nothing that it says is taken
 * as it is: its choice must be within the budget in our own sum of costs, is worth what our own sum
 * of benefits says, and its word that none is better counts only if its choice is at least as good
 * as the known one and no better than the bound. One thread and counted work, so the same input
 * gives the same choice.
 */
final class IntegerSolver {
  /** Columns and nodes of the search beyond which it is not tried, or given up. */
  private static final int MOST_CANDIDATES = 5_000;

  private static final int MOST_NODES = 5_000;
  private static final double LARGEST_BENEFIT = 1_000;
  private static final double LARGEST_COST = 1_000;
  private static final double EQUAL = 1e-9;

  private static final boolean IS_AVAILABLE = load();

  private IntegerSolver() {}

  /**
   * An answer that held when it was worked out again.
   *
   * @param chosen positions of candidates, ascending
   * @param saysBest whether the solver says that none is better
   */
  record Answer(List<Integer> chosen, boolean saysBest) {}

  /** Whether the solver's native library runs on this machine. */
  static boolean isAvailable() {
    return IS_AVAILABLE;
  }

  /**
   * Solves.
   *
   * @param known a choice within the budget
   * @return nothing where the solver does not run, was given up without an answer, or gave one that
   *     does not hold
   */
  static Optional<Answer> solve(BudgetProblem problem, PricedBound bound, List<Integer> known) {
    if (!IS_AVAILABLE) {
      return Optional.empty();
    }
    double toBeat = problem.benefit(known);
    List<Integer> open = new ArrayList<>();
    for (int i = 0; i < problem.candidates().size(); i++) {
      if (problem.candidates().get(i).benefit() > 0 && bound.valueWith(i) > toBeat * (1 - EQUAL)) {
        open.add(i);
      }
    }
    if (open.isEmpty() || open.size() > MOST_CANDIDATES) {
      return Optional.empty();
    }
    MPSolver solver = MPSolver.createSolver("SCIP");
    if (solver == null) {
      return Optional.empty();
    }
    try {
      return answer(solver, problem, open)
          .filter(answer -> problem.cost(answer.chosen()) <= problem.limit())
          .map(
              answer -> {
                double benefit = problem.benefit(answer.chosen());
                boolean isPossible =
                    benefit >= toBeat * (1 - EQUAL) && benefit <= bound.value() * (1 + EQUAL);
                return new Answer(answer.chosen(), answer.saysBest() && isPossible);
              });
    } finally {
      solver.delete();
    }
  }

  private static Optional<Answer> answer(
      MPSolver solver, BudgetProblem problem, List<Integer> open) {
    double benefitUnit = 0;
    double costUnit = Math.max(problem.limit(), Double.MIN_NORMAL);
    for (int i : open) {
      benefitUnit = Math.max(benefitUnit, problem.candidates().get(i).benefit());
    }
    solver.setSolverSpecificParametersAsString(
        "limits/nodes = " + MOST_NODES + "\nlimits/gap = 0\n");
    MPVariable[] taken = solver.makeBoolVarArray(open.size());
    MPVariable[] sites = new MPVariable[problem.mobilisation().size()];
    MPObjective objective = solver.objective();
    MPConstraint money = solver.makeConstraint(Double.NEGATIVE_INFINITY, LARGEST_COST);
    for (int k = 0; k < taken.length; k++) {
      Candidate c = problem.candidates().get(open.get(k));
      objective.setCoefficient(taken[k], LARGEST_BENEFIT * c.benefit() / benefitUnit);
      money.setCoefficient(taken[k], LARGEST_COST * c.cost() / costUnit);
      if (sites[c.site()] == null) {
        sites[c.site()] = solver.makeBoolVar("");
        money.setCoefficient(
            sites[c.site()], LARGEST_COST * problem.mobilisation().get(c.site()) / costUnit);
      }
      MPConstraint onlyWithSite = solver.makeConstraint(Double.NEGATIVE_INFINITY, 0);
      onlyWithSite.setCoefficient(taken[k], 1);
      onlyWithSite.setCoefficient(sites[c.site()], -1);
    }
    objective.setMaximization();
    ResultStatus status = solver.solve();
    if (status != ResultStatus.OPTIMAL && status != ResultStatus.FEASIBLE) {
      return Optional.empty();
    }
    List<Integer> chosen = new ArrayList<>();
    for (int k = 0; k < taken.length; k++) {
      if (taken[k].solutionValue() > 0.5) {
        chosen.add(open.get(k));
      }
    }
    return Optional.of(new Answer(chosen, status == ResultStatus.OPTIMAL));
  }

  private static boolean load() {
    try {
      Loader.loadNativeLibraries();
      return true;
    } catch (RuntimeException | LinkageError e) {
      return false;
    }
  }
}
