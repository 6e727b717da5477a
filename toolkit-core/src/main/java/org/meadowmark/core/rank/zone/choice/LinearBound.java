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
 * Bound by linear programmes: columns may be parts of 1, and rows for loops are added while the
 * solution breaks them.
 *
 * <p>The solver works with rounded numbers, so its optimum is not taken for a bound. What it finds
 * as prices of the rows is: whatever the prices are, if none is below 0, the sum of what the rows
 * cost and what columns gain at them is at least the worth of each choice. The gains also settle
 * columns: one that would cost more than is left above the best choice found.
 */
final class LinearBound {
  private static final int MOST_ROUNDS = 40;
  private static final int MOST_ROWS_A_ROUND = 500;
  private static final int ROUNDS_WITHOUT_GAIN = 3;
  private static final double GAIN = 1e-3;
  private static final long MOST_STEPS = 100_000;

  private final ZoneRows programme;
  private final Incumbent incumbent;
  private final MPSolver solver;
  private final MPVariable[] variables;
  private final List<MPConstraint> constraints = new ArrayList<>();
  private final boolean[] isOut;
  private final boolean[] isIn;
  private final double[] solution;
  private double bound = Double.POSITIVE_INFINITY;

  private LinearBound(ZoneRows programme, Incumbent incumbent) {
    this.programme = programme;
    this.incumbent = incumbent;
    solver = MPSolver.createSolver("GLOP");
    variables = solver.makeNumVarArray(programme.columns, 0, 1);
    isOut = new boolean[programme.columns];
    isIn = new boolean[programme.columns];
    solution = new double[programme.columns];
    MPObjective objective = solver.objective();
    for (int i = 0; i < programme.core.size(); i++) {
      objective.setCoefficient(variables[i], programme.core.values[i]);
    }
    objective.setMaximization();
  }

  /**
   * Finds the bound of a programme and adds rows to it.
   *
   * @param each hears of every solution, and may offer better choices
   */
  static LinearBound of(ZoneRows programme, Incumbent incumbent, Consumer<double[]> each) {
    LinearBound bound = new LinearBound(programme, incumbent);
    try {
      bound.run(each);
    } finally {
      bound.solver.delete();
    }
    return bound;
  }

  /** No choice is worth more, but for those that the incumbent is as good as. */
  double bound() {
    return Math.max(bound, incumbent.toBeat());
  }

  /** Whether a column is 0 in every choice that beats the incumbent. */
  boolean isOut(int column) {
    return isOut[column];
  }

  /** Whether a column is 1 in every choice that beats the incumbent. */
  boolean isIn(int column) {
    return isIn[column];
  }

  private void run(Consumer<double[]> each) {
    double gained = Double.POSITIVE_INFINITY;
    int idle = 0;
    long steps = 0;
    for (int round = 0; round < MOST_ROUNDS && bound > incumbent.toBeat(); round++) {
      prepare(MOST_STEPS - steps);
      if (solver.solve() != ResultStatus.OPTIMAL) {
        return;
      }
      steps += solver.iterations();
      for (int c = 0; c < solution.length; c++) {
        solution[c] = variables[c].solutionValue();
      }
      each.accept(solution);
      takePrices();
      idle = bound < gained * (1 - GAIN) ? 0 : idle + 1;
      gained = Math.min(gained, bound);
      boolean isWhole = programme.addBrokenLoops(solution, MOST_ROWS_A_ROUND) == 0;
      if (isWhole || idle == ROUNDS_WITHOUT_GAIN || steps >= MOST_STEPS) {
        programme.addLoops(solution, i -> !isOut[i]);
        return;
      }
    }
  }

  private void prepare(long steps) {
    solver.setSolverSpecificParametersAsString("max_number_of_iterations: " + steps);
    for (Row row : programme.rows.subList(constraints.size(), programme.rows.size())) {
      MPConstraint constraint = solver.makeConstraint(Double.NEGATIVE_INFINITY, row.most());
      for (int c = 0; c < row.columns().length; c++) {
        constraint.setCoefficient(variables[row.columns()[c]], row.factors()[c]);
      }
      constraints.add(constraint);
    }
    for (int c = 0; c < variables.length; c++) {
      if (isIn[c] || isOut[c]) {
        variables[c].setBounds(isIn[c] ? 1 : 0, isOut[c] ? 0 : 1);
      }
    }
  }

  private void takePrices() {
    double[] gains = Arrays.copyOf(programme.core.values, programme.columns);
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
    bound = Math.min(bound, sum);
    for (int c = 0; c < gains.length; c++) {
      if (!isOut[c] && !isIn[c] && sum - Math.abs(gains[c]) <= incumbent.toBeat()) {
        isOut[c] = gains[c] < 0;
        isIn[c] = gains[c] > 0;
      }
    }
  }
}
