package org.meadowmark.core.rank.zone.choice;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * Exact dynamic programme over a forest. A state is a choice below a segment or junction: its
 * length, value and number of closed zones. A state goes where another has no more length, no more
 * zones and no less value, or where even the most that anything else could add under some prices
 * ({@link PricedForest}) is too little. Lengths are real numbers, not rounded.
 *
 * <p>A path is a forest too. Where loops were cut, a chosen segment takes a zone off for each of
 * its cuts, so that no choice of the network is left out (see {@link PricedForest}); the best may
 * then have too many zones. The number of states made is limited, so the result does not depend on
 * a clock.
 */
final class ParetoProgramme {
  private record State(
      double length, double value, int zones, int segment, State one, State other) {
    static final State EMPTY = new State(0, 0, 0, -1, null, null);

    State with(State added) {
      if (added.isEmpty()) {
        return this;
      }
      if (isEmpty()) {
        return added;
      }
      return new State(
          length + added.length, value + added.value, zones + added.zones, -1, this, added);
    }

    State closed() {
      return new State(length, value, zones + 1, -1, this, EMPTY);
    }

    boolean isEmpty() {
      return segment < 0 && one == null;
    }
  }

  /** The limit on states was reached. */
  static final class TooMuch extends Exception {
    private static final long serialVersionUID = 1;

    TooMuch() {
      super(null, null, false, false);
    }
  }

  private final Forest forest;
  private final List<PricedForest> priced;
  private final double limit;
  private final int mostZones;
  private final int mostCredits;
  private final double toBeat;
  private final Work work;

  private ParetoProgramme(
      Forest forest, List<PricedForest> priced, ZoneProblem problem, double toBeat, Work work) {
    this.forest = forest;
    this.priced = priced;
    this.limit = problem.limitMetres();
    this.mostZones = problem.mostZones();
    this.mostCredits = forest.cuts.size();
    this.toBeat = toBeat;
    this.work = work;
  }

  /** States that may still be made. */
  static final class Work {
    private long left;

    Work(long states) {
      left = states;
    }

    void make() throws TooMuch {
      if (--left < 0) {
        throw new TooMuch();
      }
    }
  }

  /**
   * The best choice on the forest, with credits for cuts, that is worth more than a value.
   *
   * @param priced priced forests with credits, for bounds
   * @return chosen segments; empty where nothing is worth more
   */
  static Optional<boolean[]> best(
      Forest forest, List<PricedForest> priced, ZoneProblem problem, double toBeat, Work work)
      throws TooMuch {
    State best = new ParetoProgramme(forest, priced, problem, toBeat, work).best();
    return best == null || best.value <= toBeat
        ? Optional.empty()
        : Optional.of(chosen(best, forest.core.size()));
  }

  private State best() throws TooMuch {
    int count = forest.core.size();
    List<List<State>> in = new ArrayList<>(Collections.nCopies(count, null));
    List<List<State>> out = new ArrayList<>(Collections.nCopies(count, null));
    List<State> all = List.of(State.EMPTY);
    double[] done = new double[priced.size()];
    for (int at = count - 1; at >= 0; at--) {
      int i = forest.order[at];
      solve(i, in, out);
      if (forest.junctionAbove[i] < 0) {
        List<State> tree = new ArrayList<>(out.get(i));
        in.get(i).forEach(state -> tree.add(state.closed()));
        for (int p = 0; p < done.length; p++) {
          done[p] += priced.get(p).bestOfTree(i);
        }
        double[] rest = new double[done.length];
        for (int p = 0; p < rest.length; p++) {
          rest[p] = priced.get(p).best() - done[p];
        }
        all = product(all, tree, rest, 0);
        in.set(i, null);
        out.set(i, null);
      }
    }
    return all.stream()
        .filter(state -> state.zones <= mostZones)
        .max(
            Comparator.comparingDouble(State::value)
                .thenComparing(Comparator.comparingDouble(State::length).reversed()))
        .orElse(null);
  }

  private void solve(int i, List<List<State>> in, List<List<State>> out) throws TooMuch {
    State taken =
        new State(forest.core.lengths[i], forest.core.values[i], -forest.cutsAt[i], i, null, null);
    double[] restIn = new double[priced.size()];
    double[] restOut = new double[priced.size()];
    for (int p = 0; p < restIn.length; p++) {
      PricedForest each = priced.get(p);
      // The zone of a chosen segment is paid in what is beside it; states leave it out too.
      restIn[p] = each.besideIn[i];
      restOut[p] = each.besideOut[i];
      for (int q : forest.junctionsBelow[i]) {
        restIn[p] += each.open[q];
        restOut[p] += Math.max(each.closed[q], each.open[q] - each.prices.perZone());
      }
    }
    List<State> chosen = pruned(List.of(taken), restIn, 1);
    List<State> left = pruned(List.of(State.EMPTY), restOut, 0);
    for (int q : forest.junctionsBelow[i]) {
      List<State> open = junction(q, in, out, true);
      List<State> closed = new ArrayList<>(junction(q, in, out, false));
      open.forEach(state -> closed.add(state.closed()));
      for (int p = 0; p < restIn.length; p++) {
        PricedForest each = priced.get(p);
        restIn[p] -= each.open[q];
        restOut[p] -= Math.max(each.closed[q], each.open[q] - each.prices.perZone());
      }
      chosen = product(chosen, open, restIn, 1);
      left = product(left, closed, restOut, 0);
      for (int j : forest.below[q]) {
        in.set(j, null);
        out.set(j, null);
      }
    }
    in.set(i, chosen);
    out.set(i, left);
  }

  private List<State> junction(int q, List<List<State>> in, List<List<State>> out, boolean isOpen)
      throws TooMuch {
    double[] rest = new double[priced.size()];
    for (int p = 0; p < rest.length; p++) {
      PricedForest each = priced.get(p);
      rest[p] = isOpen ? each.besideOpen[q] + each.open[q] : each.besideClosed[q] + each.closed[q];
    }
    List<State> states = List.of(State.EMPTY);
    for (int j : forest.below[q]) {
      List<State> child = new ArrayList<>(out.get(j));
      if (isOpen) {
        child.addAll(in.get(j));
      }
      for (int p = 0; p < rest.length; p++) {
        PricedForest each = priced.get(p);
        rest[p] -= isOpen ? Math.max(each.in[j], each.out[j]) : each.out[j];
      }
      states = product(states, child, rest, isOpen ? 1 : 0);
    }
    return states;
  }

  private List<State> product(List<State> one, List<State> other, double[] rest, int openZones)
      throws TooMuch {
    List<State> made = new ArrayList<>();
    for (State a : one) {
      for (State b : other) {
        work.make();
        if (a.length + b.length <= limit
            && a.zones + b.zones + openZones <= mostZones + mostCredits
            && canBeat(a.value + b.value, a.length + b.length, a.zones + b.zones, rest)) {
          made.add(a.with(b));
        }
      }
    }
    return undominated(made);
  }

  private List<State> pruned(List<State> states, double[] rest, int openZones) throws TooMuch {
    return product(states, List.of(State.EMPTY), rest, openZones);
  }

  private boolean canBeat(double value, double length, int zones, double[] rest) {
    for (int p = 0; p < rest.length; p++) {
      Prices prices = priced.get(p).prices;
      double most =
          value - prices.budget(length, zones) + rest[p] + prices.budget(limit, mostZones);
      if (most <= toBeat) {
        return false;
      }
    }
    return true;
  }

  /** By length; each has more value than all shorter ones with as few zones. */
  private List<State> undominated(List<State> states) {
    if (states.size() < 2) {
      return states;
    }
    states.sort(
        Comparator.comparingDouble(State::length)
            .thenComparing(Comparator.comparingDouble(State::value).reversed())
            .thenComparingInt(State::zones));
    int fewest = states.stream().mapToInt(State::zones).min().orElseThrow();
    int most = states.stream().mapToInt(State::zones).max().orElseThrow();
    double[] best = new double[most - fewest + 1];
    Arrays.fill(best, Double.NEGATIVE_INFINITY);
    List<State> kept = new ArrayList<>();
    for (State state : states) {
      int zones = state.zones - fewest;
      if (state.value > best[zones]) {
        kept.add(state);
        for (int z = zones; z < best.length && best[z] < state.value; z++) {
          best[z] = state.value;
        }
      }
    }
    return kept;
  }

  private static boolean[] chosen(State state, int size) {
    boolean[] chosen = new boolean[size];
    Deque<State> open = new ArrayDeque<>(List.of(state));
    while (!open.isEmpty()) {
      State next = open.pop();
      if (next.segment >= 0) {
        chosen[next.segment] = true;
      }
      if (next.one != null) {
        open.push(next.one);
        open.push(next.other);
      }
    }
    return chosen;
  }
}
