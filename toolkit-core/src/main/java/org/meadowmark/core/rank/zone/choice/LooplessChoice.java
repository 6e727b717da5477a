package org.meadowmark.core.rank.zone.choice;

import java.util.List;

/**
 * A choice on a network with loops, mostly a good one: the best of the network that is left when
 * meetings that matter least are taken away until it has no loops.
 */
final class LooplessChoice {
  private static final long MOST_STATES = 1_000_000;

  private LooplessChoice() {}

  /**
   * Offers one.
   *
   * @param attraction how much each meeting matters
   */
  static void offer(
      Core core, ZoneProblem problem, Forest.Attraction attraction, Incumbent incumbent) {
    Forest forest = Forest.withoutLoops(core, attraction);
    Repair repair = new Repair(core, problem);
    List<PricedForest> priced =
        PriceSearch.run(forest, problem, each -> incumbent.offer(core, repair.mended(each)));
    ParetoProgramme.Work work = new ParetoProgramme.Work(MOST_STATES);
    try {
      ParetoProgramme.best(forest, priced, problem, incumbent.toBeat(), work)
          .ifPresent(chosen -> incumbent.offer(core, chosen));
    } catch (ParetoProgramme.TooMuch e) {
      // Nothing to offer then; no bound depends on it.
      return;
    }
  }
}
