package org.meadowmark.core.rank.zone.choice;

import java.util.Arrays;
import java.util.List;
import org.meadowmark.core.rank.zone.choice.ZoneChoice.Proof;

/**
 * Chooses at most so many contiguous sets of segments within a total length that cover the most
 * value, and proves that nothing covers more.
 *
 * <ol>
 *   <li>Segments that no best choice needs are left out ({@link Reduction}).
 *   <li>Limits are replaced by prices. That gives an upper bound for every choice, one for every
 *       choice with a given segment in it, and good choices. Segments whose bound does not beat the
 *       best choice found are left out, and this is repeated while it helps.
 *   <li>What is left is solved exactly: by a dynamic programme with real lengths where it has no
 *       loop ({@link ParetoProgramme}), else by an integer programme with a general solver ({@link
 *       IntegerProgramme}), which starts from the best choice that does without the loops.
 * </ol>
 *
 * <p>Components need no combining: every step takes all of them at once. Work is limited by counts
 * of states and of solver iterations, not by a clock, so the same input gives the same choice.
 * Where a limit is reached, the choice is the best one found and the upper bound says how far off
 * it can be. Values closer than 1e-10 of the total are taken for the same. Where choices are as
 * good, the one found first is kept; the search goes by position.
 */
public final class ZoneChooser {
  private static final int MOST_ROUNDS = 8;
  private static final double WORTH_ANOTHER_ROUND = 0.9;
  private static final long MOST_STATES = 20_000_000;
  private static final int MOST_ITERATIONS = 3_000;

  /** With more segments left than this the solver would run out of iterations anyway. */
  private static final int LARGEST_PROGRAMME = 400;

  private final ZoneProblem problem;
  private final Incumbent incumbent;
  private Core core;
  private double upperBound = Double.POSITIVE_INFINITY;

  private ZoneChooser(ZoneProblem problem) {
    this.problem = problem;
    Core whole = Core.of(problem);
    this.incumbent = new Incumbent(problem, whole);
    this.core = whole;
  }

  /** Chooses. */
  public static ZoneChoice choose(ZoneProblem problem) {
    return new ZoneChooser(problem).choose();
  }

  private ZoneChoice choose() {
    offerWorstFirst();
    core = Reduction.reduce(core, problem.limitMetres());
    if (core.size() == 0 || problem.mostZones() == 0) {
      return incumbent.choice(0, Proof.NOTHING_TO_COVER);
    }
    List<PricedForest> priced = narrow();
    if (core.size() == 0) {
      return incumbent.choice(0, Proof.BOUND);
    }
    Forest forest = priced.get(0).forest;
    if (forest.cuts.isEmpty()) {
      boolean done = ParetoProgramme.run(forest, priced, problem, incumbent, MOST_STATES);
      return done
          ? incumbent.choice(0, Proof.DYNAMIC_PROGRAMME)
          : incumbent.choice(upperBound, Proof.NONE);
    }
    return withLoops(forest);
  }

  private ZoneChoice withLoops(Forest loopy) {
    Repair repair = new Repair(core, problem);
    List<PricedForest> withoutCredits =
        PriceSearch.run(
            loopy, problem, false, priced -> incumbent.offer(core, repair.mended(priced)));
    ParetoProgramme.run(loopy, withoutCredits, problem, incumbent, MOST_STATES);
    List<PricedForest> priced = narrow();
    if (core.size() == 0) {
      return incumbent.choice(0, Proof.BOUND);
    }
    Forest forest = priced.get(0).forest;
    if (forest.cuts.isEmpty()
        && ParetoProgramme.run(forest, priced, problem, incumbent, MOST_STATES)) {
      return incumbent.choice(0, Proof.DYNAMIC_PROGRAMME);
    }
    if (core.size() <= LARGEST_PROGRAMME
        && IntegerProgramme.run(forest, problem, incumbent, MOST_ITERATIONS)) {
      return incumbent.choice(0, Proof.INTEGER_PROGRAMME);
    }
    return incumbent.choice(upperBound, Proof.NONE);
  }

  private void offerWorstFirst() {
    boolean[] chosen = new boolean[core.size()];
    Arrays.stream(WorstFirst.choose(problem)).forEach(i -> chosen[i] = true);
    incumbent.offer(core, chosen);
  }

  /** Leaves out what cannot beat the incumbent; the priced forests are those of what is left. */
  private List<PricedForest> narrow() {
    List<PricedForest> priced = List.of();
    for (int round = 0; round < MOST_ROUNDS; round++) {
      Forest forest = new Forest(core);
      Repair repair = new Repair(core, problem);
      Core before = core;
      priced =
          PriceSearch.run(
              forest, problem, true, each -> incumbent.offer(before, repair.mended(each)));
      double limit = problem.limitMetres();
      int zones = problem.mostZones();
      upperBound =
          Math.min(
              upperBound, Math.max(incumbent.toBeat(), priced.get(0).upperBound(limit, zones)));
      boolean[] kept = new boolean[core.size()];
      int count = 0;
      for (int i = 0; i < kept.length; i++) {
        kept[i] = true;
        for (PricedForest each : priced) {
          kept[i] &= each.upperBoundWith(i, limit, zones) > incumbent.toBeat();
        }
        count += kept[i] ? 1 : 0;
      }
      if (count == core.size()) {
        return priced;
      }
      Core narrower = Reduction.reduce(core.only(kept), limit);
      boolean helps = narrower.size() < WORTH_ANOTHER_ROUND * core.size();
      if (!helps && narrower.size() > 0) {
        return priced;
      }
      core = narrower;
      if (core.size() == 0) {
        return List.of();
      }
    }
    Forest forest = new Forest(core);
    return PriceSearch.run(forest, problem, true, each -> {});
  }
}
