package org.meadowmark.core.rank.zone.choice;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.Literal;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.meadowmark.core.rank.zone.choice.ZoneRows.Row;

/**
 * Looks for a choice that beats the best one found, by a solver that is exact on whole numbers.
 *
 * <p>Values are rounded up to a unit and lengths down, so no choice is lost and the bound holds.
 * The unit of value is so small that all of them together err by less than a share of 1e-9. A
 * choice that is too long by what was rounded off is forbidden and the search goes on, as it is for
 * one whose loops made it count too few zones.
 */
final class IntegerSearch {
  private static final double VALUE_ROUNDING = 1e-9;
  private static final double LENGTH_UNITS = 1e9;

  /** In the solver's own count of work; on common machines about a second each. */
  private static final double MOST_WORK = 4;

  private static final int MOST_ROUNDS = 50;

  private final ZoneRows programme;
  private final LinearBound linear;
  private final Incumbent incumbent;
  private final int[] open;
  private final double unit;
  private double bound;
  private double workLeft = MOST_WORK;

  private IntegerSearch(ZoneRows programme, LinearBound linear, Incumbent incumbent) {
    this.programme = programme;
    this.linear = linear;
    this.incumbent = incumbent;
    this.bound = linear.bound();
    this.open = IntStream.range(0, programme.core.size()).filter(i -> !linear.isOut(i)).toArray();
    this.unit = incumbent.covered() * VALUE_ROUNDING / Math.max(1, open.length);
  }

  /**
   * Offers better choices to the incumbent.
   *
   * @return no choice is worth more, but for those that the incumbent is as good as
   */
  static double run(ZoneRows programme, LinearBound linear, Incumbent incumbent) {
    IntegerSearch search = new IntegerSearch(programme, linear, incumbent);
    for (int round = 0; round < MOST_ROUNDS && search.workLeft > 0; round++) {
      if (search.isDone()) {
        break;
      }
    }
    return search.bound;
  }

  private boolean isDone() {
    CpModel model = new CpModel();
    BoolVar[] variables = new BoolVar[programme.columns];
    for (int c = 0; c < variables.length; c++) {
      if (!linear.isOut(c)) {
        variables[c] = model.newBoolVar("");
        if (linear.isIn(c)) {
          model.addEquality(variables[c], 1);
        }
      }
    }
    for (Row row : programme.rows) {
      add(model, variables, row);
    }
    LinearExpr worth = worth(variables);
    model.addGreaterOrEqual(worth, (long) Math.floor(incumbent.toBeat() / unit) + 1);
    model.maximize(worth);
    CpSolver solver = new CpSolver();
    solver
        .getParameters()
        .setNumWorkers(1)
        .setRandomSeed(1)
        .setLinearizationLevel(2)
        .setMaxDeterministicTime(workLeft);
    CpSolverStatus status = solver.solve(model);
    workLeft -= solver.response().getDeterministicTime();
    return switch (status) {
      case INFEASIBLE -> {
        bound = incumbent.toBeat();
        yield true;
      }
      case OPTIMAL -> {
        bound = Math.min(bound, (solver.bestObjectiveBound() + 1) * unit);
        yield take(solution(solver, variables));
      }
      case FEASIBLE -> {
        bound = Math.min(bound, (solver.bestObjectiveBound() + 1) * unit);
        take(solution(solver, variables));
        yield true;
      }
      default -> {
        bound = Math.min(bound, (solver.bestObjectiveBound() + 1) * unit);
        yield true;
      }
    };
  }

  private LinearExpr worth(BoolVar[] variables) {
    Literal[] literals = new Literal[open.length];
    long[] values = new long[open.length];
    for (int i = 0; i < open.length; i++) {
      literals[i] = variables[open[i]];
      values[i] = (long) Math.ceil(programme.core.values[open[i]] / unit);
    }
    return LinearExpr.weightedSum(literals, values);
  }

  private void add(CpModel model, BoolVar[] variables, Row row) {
    double unitOfRow = row.isOfLengths() ? row.most() / LENGTH_UNITS : 1;
    int[] kept =
        IntStream.range(0, row.columns().length)
            .filter(c -> variables[row.columns()[c]] != null && row.factors()[c] != 0)
            .toArray();
    Literal[] literals = new Literal[kept.length];
    long[] factors = new long[kept.length];
    for (int k = 0; k < kept.length; k++) {
      literals[k] = variables[row.columns()[kept[k]]];
      factors[k] = (long) Math.floor(row.factors()[kept[k]] / unitOfRow);
    }
    if (Arrays.stream(factors).anyMatch(factor -> factor > 0)) {
      long most = (long) Math.floor(row.most() / unitOfRow);
      model.addLessOrEqual(LinearExpr.weightedSum(literals, factors), most);
    }
  }

  private double[] solution(CpSolver solver, BoolVar[] variables) {
    double[] solution = new double[variables.length];
    for (int c = 0; c < solution.length; c++) {
      solution[c] = variables[c] == null ? 0 : solver.value(variables[c]);
    }
    return solution;
  }

  /** Whether it is a choice; if not, rows that forbid it are added. */
  private boolean take(double[] solution) {
    boolean[] chosen = new boolean[programme.core.size()];
    double length = 0;
    for (int i : open) {
      chosen[i] = solution[i] > 0.5;
      length += chosen[i] ? programme.core.lengths[i] : 0;
    }
    if (length > programme.limitMetres) {
      programme.forbid(chosen);
      return false;
    }
    if (programme.core.zones(chosen).size() > programme.mostZones) {
      programme.addBrokenLoops(solution, Integer.MAX_VALUE);
      programme.addZones(chosen);
      return false;
    }
    incumbent.offer(programme.core, chosen);
    return true;
  }
}
