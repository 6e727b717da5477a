package org.meadowmark.core.rank.zone.choice;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPSolver.ResultStatus;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import org.meadowmark.core.rank.zone.choice.ZoneRows.Row;

/**
 * Branch and bound over linear programmes, in which columns may be parts of 1. Rows for loops are
 * added while the solution breaks them (branch and cut: Padberg, M. & Rinaldi, G. (1991), SIAM
 * Review 33:60–100, from memory).
 *
 * <p>The solver works with rounded numbers, so neither its optimum nor its word that there is no
 * solution is taken for a proof. What it gives as prices of the rows is: whatever the prices are,
 * if none is below 0, the sum of what the rows cost and what columns gain at them is at least the
 * worth of each choice. The gains also settle columns: one that would cost more than is left above
 * the best choice found. A limit may be broken at a price no less than all that there is to cover,
 * so each programme has a solution.
 */
final class LinearSearch {
  private static final int MOST_ROUNDS = 40;
  private static final int MOST_ROUNDS_BELOW = 5;
  private static final int MOST_ROWS_A_ROUND = 500;
  private static final int ROUNDS_WITHOUT_GAIN = 3;
  private static final double GAIN = 1e-3;

  /** Steps of the simplex method, and columns of all programmes solved. */
  private static final long MOST_STEPS = 50_000;

  private static final long MOST_COLUMNS = 1_000_000;
  private static final int LIMIT_ROWS = 2;
  private static final double WHOLE = 1e-6;

  /** Share of what is covered. */
  static final double CLOSE_ENOUGH = 1e-9;

  private final ZoneRows programme;
  private final Incumbent incumbent;
  private final Consumer<double[]> hears;
  private final MPSolver solver;
  private final MPVariable[] variables;
  private final MPVariable[] excesses = new MPVariable[LIMIT_ROWS];
  private final double[] highestPrice = new double[LIMIT_ROWS];
  private final List<MPConstraint> constraints = new ArrayList<>();
  private final boolean[] isOut;
  private final boolean[] isIn;
  private final double[] solution;
  private final double[] gains;
  private double lastSum;
  private long steps;
  private long columns;

  private LinearSearch(ZoneRows programme, Incumbent incumbent, Consumer<double[]> hears) {
    this.programme = programme;
    this.incumbent = incumbent;
    this.hears = hears;
    solver = MPSolver.createSolver("GLOP");
    variables = solver.makeNumVarArray(programme.columns, 0, 1);
    isOut = new boolean[programme.columns];
    isIn = new boolean[programme.columns];
    solution = new double[programme.columns];
    gains = new double[programme.columns];
    MPObjective objective = solver.objective();
    double total = Arrays.stream(programme.core.values).sum();
    for (int i = 0; i < programme.core.size(); i++) {
      objective.setCoefficient(variables[i], programme.core.values[i]);
    }
    highestPrice[0] = 10 * total / Arrays.stream(programme.core.lengths).min().orElse(1);
    highestPrice[1] = 10 * total;
    for (int r = 0; r < LIMIT_ROWS; r++) {
      excesses[r] = solver.makeNumVar(0, Double.POSITIVE_INFINITY, "");
      objective.setCoefficient(excesses[r], -highestPrice[r]);
    }
    objective.setMaximization();
  }

  /**
   * Offers better choices to the incumbent.
   *
   * @param hears of solutions of the first programmes, and may offer choices too
   * @return no choice is worth more, but for those that the incumbent is as good as
   */
  static double run(ZoneRows programme, Incumbent incumbent, Consumer<double[]> hears) {
    LinearSearch search = new LinearSearch(programme, incumbent, hears);
    try {
      double bound = search.explored(Double.POSITIVE_INFINITY, true);
      return Math.max(search.enough(), bound);
    } finally {
      search.solver.delete();
    }
  }

  /**
   * Bound of what is left with the columns that are settled now; they are settled no further on
   * return.
   */
  private double explored(double boundAbove, boolean isRoot) {
    List<Integer> settled = new ArrayList<>();
    double bound = boundAbove;
    double gained = Double.POSITIVE_INFINITY;
    int idle = 0;
    boolean isWhole = false;
    int rounds = isRoot ? MOST_ROUNDS : MOST_ROUNDS_BELOW;
    for (int round = 0; round < rounds && bound > enough() && !isWhole; round++) {
      if (steps >= MOST_STEPS || columns >= MOST_COLUMNS) {
        return unsettled(settled, bound);
      }
      if (!solve()) {
        break;
      }
      if (isRoot) {
        hears.accept(solution);
      }
      bound = Math.min(bound, boundByPrices());
      int before = settled.size() + programme.rows.size();
      settle(settled);
      int loops = programme.addBrokenLoops(solution, MOST_ROWS_A_ROUND);
      isWhole = loops == 0 && isWhole() && isChoice();
      idle = bound < gained * (1 - GAIN) ? 0 : idle + 1;
      gained = Math.min(gained, bound);
      boolean isSame = settled.size() + programme.rows.size() == before;
      if (isSame || idle == ROUNDS_WITHOUT_GAIN) {
        break;
      }
    }
    int branch = branch();
    if (bound <= enough()) {
      return unsettled(settled, bound);
    }
    if (branch < 0) {
      // One choice is left, if it is one.
      incumbent.offer(programme.core, Arrays.copyOf(isIn, programme.core.size()));
      return unsettled(settled, enough());
    }
    isIn[branch] = true;
    double with = explored(bound, false);
    isIn[branch] = false;
    isOut[branch] = true;
    double without = explored(bound, false);
    isOut[branch] = false;
    return unsettled(settled, Math.min(bound, Math.max(with, without)));
  }

  private double unsettled(List<Integer> settled, double bound) {
    for (int column : settled) {
      isIn[column] = false;
      isOut[column] = false;
    }
    return bound;
  }

  private boolean solve() {
    solver.setSolverSpecificParametersAsString("max_number_of_iterations: " + (MOST_STEPS - steps));
    for (Row row : programme.rows.subList(constraints.size(), programme.rows.size())) {
      MPConstraint constraint = solver.makeConstraint(Double.NEGATIVE_INFINITY, row.most());
      for (int c = 0; c < row.columns().length; c++) {
        constraint.setCoefficient(variables[row.columns()[c]], row.factors()[c]);
      }
      if (constraints.size() < LIMIT_ROWS) {
        constraint.setCoefficient(excesses[constraints.size()], -1);
      }
      constraints.add(constraint);
    }
    for (int c = 0; c < variables.length; c++) {
      variables[c].setBounds(isIn[c] ? 1 : 0, isOut[c] ? 0 : 1);
    }
    ResultStatus status = solver.solve();
    columns += variables.length;
    steps += solver.iterations();
    if (status != ResultStatus.OPTIMAL) {
      return false;
    }
    for (int c = 0; c < solution.length; c++) {
      solution[c] = variables[c].solutionValue();
    }
    return true;
  }

  private double boundByPrices() {
    Arrays.fill(gains, 0);
    System.arraycopy(programme.core.values, 0, gains, 0, programme.core.size());
    double sum = 0;
    for (int r = 0; r < constraints.size(); r++) {
      double price = constraints.get(r).dualValue();
      if (price > 0) {
        Row row = programme.rows.get(r);
        sum += price * row.most();
        for (int c = 0; c < row.columns().length; c++) {
          gains[row.columns()[c]] -= price * row.factors()[c];
        }
      }
    }
    for (int c = 0; c < gains.length; c++) {
      sum += isOut[c] ? 0 : isIn[c] ? gains[c] : Math.max(0, gains[c]);
    }
    lastSum = sum;
    return sum;
  }

  private void settle(List<Integer> settled) {
    for (int c = 0; c < gains.length; c++) {
      boolean isOpen = !isOut[c] && !isIn[c];
      if (isOpen && lastSum - Math.abs(gains[c]) <= enough()) {
        isOut[c] = gains[c] < 0;
        isIn[c] = gains[c] > 0;
        settled.add(c);
      }
    }
  }

  /** Prices are rounded, so no smaller difference is looked into. */
  private double enough() {
    return incumbent.covered() * (1 + CLOSE_ENOUGH);
  }

  private boolean isWhole() {
    for (int i = 0; i < programme.core.size(); i++) {
      if (Math.min(solution[i], 1 - solution[i]) > WHOLE) {
        return false;
      }
    }
    return true;
  }

  /** Offers a whole solution; false if it is no choice, and rows that forbid it are added. */
  private boolean isChoice() {
    boolean[] chosen = new boolean[programme.core.size()];
    double length = 0;
    for (int i = 0; i < chosen.length; i++) {
      chosen[i] = solution[i] > 0.5;
      length += chosen[i] ? programme.core.lengths[i] : 0;
    }
    incumbent.offer(programme.core, chosen);
    boolean isChoice = programme.core.zones(chosen).size() <= programme.mostZones;
    if (!isChoice) {
      programme.addZones(chosen);
    }
    return isChoice && length <= programme.limitMetres;
  }

  /** An open segment: the one that is least whole, by value; -1 where none is open. */
  private int branch() {
    int most = -1;
    double by = -1;
    for (int i = 0; i < programme.core.size(); i++) {
      double off = Math.max(0, Math.min(solution[i], 1 - solution[i]));
      double weight = off * (1 + programme.core.values[i]);
      if (!isIn[i] && !isOut[i] && weight > by) {
        by = weight;
        most = i;
      }
    }
    return most;
  }
}
