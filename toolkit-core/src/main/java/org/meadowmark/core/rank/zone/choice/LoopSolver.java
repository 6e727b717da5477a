package org.meadowmark.core.rank.zone.choice;

import com.google.ortools.Loader;

/**
 * Solves the choice on a network with loops as an integer programme ({@link ZoneRows}), by branch
 * and bound over linear programmes ({@link LinearSearch}) that a general solver solves: GLOP, of
 * OR-Tools.
 *
 * <p>Each linear solution also says where loops matter least, for a {@link LooplessChoice}.
 *
 * <p>One thread and counted work, so the same input gives the same choice.
 */
final class LoopSolver {
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
    return LinearSearch.run(
        programme,
        incumbent,
        solution ->
            LooplessChoice.offer(
                core, problem, (i, q) -> solution[programme.hang(i, q)], incumbent));
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
