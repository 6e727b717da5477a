package org.meadowmark.core.rank.zone.choice;

import com.google.ortools.Loader;

/**
 * Solves the choice on a network with loops as an integer programme ({@link ZoneRows}) by general
 * solvers, OR-Tools: linear programmes for the bound ({@link LinearBound}), then an exact search
 * over what the bound left ({@link IntegerSearch}).
 *
 * <p>Each linear solution also says where loops matter least, for a {@link LooplessChoice}.
 *
 * <p>One thread and counted work, so the same input gives the same choice.
 */
final class LoopSolver {
  /** More than the exact search gets through. */
  private static final int MOST_OPEN = 6_000;

  private static final boolean IS_AVAILABLE = load();

  private LoopSolver() {}

  /** Whether the solvers' native library runs on this machine. */
  static boolean isAvailable() {
    return IS_AVAILABLE;
  }

  /**
   * Offers better choices to an incumbent that has one.
   *
   * @return no choice is worth more, but for those that the incumbent is as good as
   */
  static double run(Core core, ZoneProblem problem, Incumbent incumbent) {
    ZoneRows programme = new ZoneRows(core, problem);
    LinearBound linear =
        LinearBound.of(
            programme,
            incumbent,
            solution ->
                LooplessChoice.offer(
                    core, problem, (i, q) -> solution[programme.hang(i, q)], incumbent));
    int open = 0;
    for (int i = 0; i < core.size(); i++) {
      open += linear.isOut(i) ? 0 : 1;
    }
    boolean isSettled = linear.bound() <= incumbent.toBeat();
    return isSettled || open > MOST_OPEN
        ? linear.bound()
        : IntegerSearch.run(programme, linear, incumbent);
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
