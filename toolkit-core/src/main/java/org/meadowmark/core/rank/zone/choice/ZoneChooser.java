package org.meadowmark.core.rank.zone.choice;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
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
 *   <li>What is left is solved by a dynamic programme with real lengths ({@link ParetoProgramme}).
 *       Without loops that is exact. Loops are cut first, in a way that leaves out no choice; if
 *       the best has no more zones than allowed it is the best of the network too.
 *   <li>Else one of the loops that misled the programme is branched on: one of its segments is not
 *       chosen, each in turn, or all of them are. Each branch starts again at 2 with the best
 *       choice found so far (branch and bound: Land and Doig 1960, Econometrica 28:497–520, from
 *       memory).
 *   <li>Where that takes too much work, what was left at 3 is given to a general solver with the
 *       best choice found so far ({@link LoopSolver}).
 * </ol>
 *
 * <p>Components need no combining: every step takes all of them at once. Work is limited by counts
 * of states and branches, not by a clock, so the same input gives the same choice. Where a limit is
 * reached, the choice is the best one found and the upper bound says how far off it can be. Values
 * closer than 1e-10 of the total are taken for the same. Of choices that are as good the one found
 * first is kept; the search goes by position.
 */
public final class ZoneChooser {
  private static final int MOST_ROUNDS = 8;
  private static final double WORTH_ANOTHER_ROUND = 0.9;
  private static final long MOST_STATES = 5_000_000;
  private static final int MOST_BRANCHES = 2_000;

  private final ZoneProblem problem;
  private final Incumbent incumbent;
  private final Core whole;
  private final ParetoProgramme.Work work = new ParetoProgramme.Work(MOST_STATES);
  private double upperBound = Double.POSITIVE_INFINITY;
  private int branches;
  private boolean usedProgramme;

  /** What bounds left of the whole network. */
  private Core left;

  private ZoneChooser(ZoneProblem problem) {
    this.problem = problem;
    this.whole = Core.of(problem);
    this.incumbent = new Incumbent(problem, whole);
  }

  /**
   * {@return the best choice that is found, with an upper bound and how it is proven}
   *
   * @param problem segments with their values, and the limits
   */
  public static ZoneChoice choose(ZoneProblem problem) {
    return new ZoneChooser(problem).choose();
  }

  private ZoneChoice choose() {
    boolean[] worstFirst = new boolean[whole.size()];
    Arrays.stream(WorstFirst.choose(problem)).forEach(i -> worstFirst[i] = true);
    incumbent.offer(whole, worstFirst);
    Core core = Reduction.reduce(whole, problem.limitMetres());
    if (core.size() == 0 || problem.mostZones() == 0) {
      return incumbent.choice(0, Proof.NOTHING_TO_COVER);
    }
    try {
      solve(core, new int[0], true);
    } catch (ParetoProgramme.TooMuch e) {
      return byGeneralSolver();
    }
    if (branches > 0) {
      return incumbent.choice(0, Proof.BRANCH_AND_BOUND);
    }
    return incumbent.choice(0, usedProgramme ? Proof.DYNAMIC_PROGRAMME : Proof.BOUND);
  }

  private ZoneChoice byGeneralSolver() {
    if (!LoopSolver.isAvailable()) {
      return incumbent.choice(upperBound, Proof.NONE_WITHOUT_SOLVER);
    }
    double bound = LoopSolver.run(left, problem, incumbent);
    boolean isBest = bound <= incumbent.covered() * (1 + LinearSearch.CLOSE_ENOUGH);
    return isBest
        ? incumbent.choice(0, Proof.INTEGER_PROGRAMME)
        : incumbent.choice(Math.min(upperBound, bound), Proof.NONE);
  }

  /**
   * Makes sure that nothing on a core beats the incumbent.
   *
   * @param required segments of the whole network that a choice must have to be of interest here:
   *     others are looked at elsewhere
   * @param isRoot whether bounds hold for the whole network
   */
  private void solve(Core start, int[] required, boolean isRoot) throws ParetoProgramme.TooMuch {
    Core core = start;
    List<PricedForest> priced = List.of();
    double[] attraction = Forest.firstAttraction(core);
    boolean again = true;
    for (int round = 0; again; round++) {
      Forest forest = new Forest(core, attraction);
      priced = priced(forest);
      if (isRoot && !forest.cuts.isEmpty()) {
        double[] current = attraction;
        LooplessChoice.offer(core, problem, (i, q) -> current[i], incumbent);
      }
      if (isRoot) {
        double bound = priced.get(0).upperBound(problem.limitMetres(), problem.mostZones());
        upperBound = Math.min(upperBound, Math.max(incumbent.toBeat(), bound));
      }
      Core narrower = narrowed(core, priced);
      if (narrower.size() == 0 || !hasAll(narrower, required)) {
        return;
      }
      boolean helps = narrower.size() < WORTH_ANOTHER_ROUND * core.size();
      // Cut where the first prices say that no zone goes, and see what that is worth.
      boolean recut = round == 0 && !forest.cuts.isEmpty();
      again = (helps || recut) && round < MOST_ROUNDS;
      if (again) {
        attraction = attraction(core, narrower, priced);
        core = narrower;
      }
    }
    if (isRoot) {
      left = core;
    }
    Forest forest = priced.get(0).forest;
    Optional<boolean[]> best =
        ParetoProgramme.best(forest, priced, problem, incumbent.toBeat(), work);
    usedProgramme = true;
    if (best.isEmpty()) {
      return;
    }
    boolean[] chosen = best.get();
    if (isRoot) {
      upperBound = Math.min(upperBound, worth(core, chosen) * (1 + Incumbent.SAME));
    }
    if (core.zones(chosen).size() <= problem.mostZones()) {
      incumbent.offer(core, chosen);
    } else {
      branch(core, misleadingLoop(forest, chosen), required);
    }
  }

  private List<PricedForest> priced(Forest forest) {
    Repair repair = new Repair(forest.core, problem);
    return PriceSearch.run(
        forest, problem, each -> incumbent.offer(forest.core, repair.mended(each)));
  }

  private Core narrowed(Core core, List<PricedForest> priced) {
    boolean[] kept = new boolean[core.size()];
    for (int i = 0; i < kept.length; i++) {
      kept[i] = true;
      for (PricedForest each : priced) {
        kept[i] &=
            each.upperBoundWith(i, problem.limitMetres(), problem.mostZones()) > incumbent.toBeat();
      }
    }
    return Reduction.reduce(core.only(kept), problem.limitMetres());
  }

  /** Lowest bound of choices with each segment of a part of a core. */
  private double[] attraction(Core core, Core part, List<PricedForest> priced) {
    double[] bySegment = new double[whole.size()];
    for (int i = 0; i < core.size(); i++) {
      double bound = Double.POSITIVE_INFINITY;
      for (PricedForest each : priced) {
        bound = Math.min(bound, each.upperBoundWith(i, problem.limitMetres(), problem.mostZones()));
      }
      bySegment[core.segments[i][0]] = bound;
    }
    return Arrays.stream(part.segments).mapToDouble(segments -> bySegment[segments[0]]).toArray();
  }

  private static boolean hasAll(Core core, int[] required) {
    boolean[] has = new boolean[required.length];
    for (int[] segments : core.segments) {
      for (int segment : segments) {
        int place = Arrays.binarySearch(required, segment);
        if (place >= 0) {
          has[place] = true;
        }
      }
    }
    for (boolean one : has) {
      if (!one) {
        return false;
      }
    }
    return true;
  }

  private static double worth(Core core, boolean[] chosen) {
    double worth = 0;
    for (int i = 0; i < chosen.length; i++) {
      worth += chosen[i] ? core.values[i] : 0;
    }
    return worth;
  }

  /** The smallest loop with a cut that took a zone off. */
  private static int[] misleadingLoop(Forest forest, boolean[] chosen) {
    return forest.cuts.stream()
        .filter(cut -> chosen[cut.segment()])
        .map(forest::loop)
        .min(Comparator.comparingInt((int[] loop) -> loop.length).thenComparing(Arrays::compare))
        .orElseThrow();
  }

  private void branch(Core core, int[] loop, int[] required) throws ParetoProgramme.TooMuch {
    double length = Arrays.stream(loop).mapToDouble(i -> core.lengths[i]).sum();
    if (length <= problem.limitMetres()) {
      count();
      solve(core.joined(loop), required, false);
    }
    int[] requiredHere = required;
    for (int out : loop) {
      boolean[] kept = new boolean[core.size()];
      Arrays.fill(kept, true);
      kept[out] = false;
      count();
      Core rest = Reduction.reduce(core.only(kept), problem.limitMetres());
      if (rest.size() > 0 && hasAll(rest, requiredHere)) {
        solve(rest, requiredHere, false);
      }
      requiredHere = with(requiredHere, core.segments[out]);
    }
  }

  private void count() throws ParetoProgramme.TooMuch {
    if (++branches > MOST_BRANCHES) {
      throw new ParetoProgramme.TooMuch();
    }
  }

  private static int[] with(int[] some, int[] others) {
    int[] all = Arrays.copyOf(some, some.length + others.length);
    System.arraycopy(others, 0, all, some.length, others.length);
    return Arrays.stream(all).sorted().distinct().toArray();
  }
}
