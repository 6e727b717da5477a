package org.meadowmark.core.plan.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The best choice, proven: a dynamic programme over sites and their candidates that keeps, of the
 * choices so far, those that no cheaper one is worth as much as (Nemhauser and Ullmann 1969,
 * Management Science 15:494–505, from memory). Choices that cannot beat a known one at the price of
 * {@link PricedBound} are dropped. Costs need not be whole numbers.
 */
final class ParetoProgramme {
  private final BudgetProblem problem;
  private final List<List<Integer>> members;
  private final PricedBound bound;
  private final double toBeat;
  private final int mostSteps;
  private final double[] laterSites;

  private int[] parent = new int[1024];
  private int[] taken = new int[1024];
  private int states;
  private long steps;

  /** Choices by cost ascending, each worth more than the one before. */
  private record Front(double[] cost, double[] benefit, int[] state, int size) {}

  ParetoProgramme(
      BudgetProblem problem,
      List<List<Integer>> members,
      PricedBound bound,
      double toBeat,
      int mostSteps) {
    this.problem = problem;
    this.members = members;
    this.bound = bound;
    this.toBeat = toBeat;
    this.mostSteps = mostSteps;
    this.laterSites = new double[members.size() + 1];
    for (int site = members.size() - 1; site >= 0; site--) {
      laterSites[site] = laterSites[site + 1] + bound.siteSurplus(site);
    }
  }

  /** A better choice than the known one. */
  record Result(boolean isComplete, Optional<List<Integer>> better) {}

  Result run() {
    Front front = new Front(new double[1], new double[1], new int[] {newState(-1, -1)}, 1);
    for (int site = 0; site < members.size(); site++) {
      if (members.get(site).isEmpty()) {
        continue;
      }
      double later = laterSites[site + 1];
      double inSite = 0;
      for (int i : members.get(site)) {
        inSite += bound.surplus(i);
      }
      Front open = moved(front, problem.mobilisation().get(site), 0, -1, later + inSite);
      for (int i : members.get(site)) {
        Candidate c = problem.candidates().get(i);
        inSite -= bound.surplus(i);
        double ahead = later + Math.max(0, inSite);
        open = merged(open, moved(open, c.cost(), c.benefit(), i, ahead), ahead);
        if (steps > mostSteps) {
          return new Result(false, Optional.empty());
        }
      }
      front = merged(front, open, later);
      if (steps > mostSteps) {
        return new Result(false, Optional.empty());
      }
    }
    int best = front.size() - 1;
    return best >= 0 && front.benefit()[best] > toBeat
        ? new Result(true, Optional.of(chosen(front.state()[best])))
        : new Result(true, Optional.empty());
  }

  private Front moved(Front front, double cost, double benefit, int candidate, double ahead) {
    double[] costs = new double[front.size()];
    double[] benefits = new double[front.size()];
    int[] state = new int[front.size()];
    int size = 0;
    steps += front.size();
    for (int k = 0; k < front.size(); k++) {
      double newCost = front.cost()[k] + cost;
      double newBenefit = front.benefit()[k] + benefit;
      if (newCost <= problem.limit() && canBeat(newCost, newBenefit, ahead)) {
        costs[size] = newCost;
        benefits[size] = newBenefit;
        state[size] = candidate < 0 ? front.state()[k] : newState(front.state()[k], candidate);
        size++;
      }
    }
    return new Front(costs, benefits, state, size);
  }

  /** A part in a million of a millionth is left for rounding errors. */
  private boolean canBeat(double cost, double benefit, double ahead) {
    double most = benefit + bound.price() * Math.max(0, problem.limit() - cost) + ahead;
    return most * (1 + 1e-12) > toBeat;
  }

  /** Both fronts, without choices that another beats; of equals that of the first stays. */
  private Front merged(Front first, Front second, double ahead) {
    double[] cost = new double[first.size() + second.size()];
    double[] benefit = new double[cost.length];
    int[] state = new int[cost.length];
    int size = 0;
    steps += cost.length;
    int a = 0;
    int b = 0;
    while (a < first.size() || b < second.size()) {
      boolean fromFirst =
          b == second.size()
              || a < first.size()
                  && (first.cost()[a] < second.cost()[b]
                      || first.cost()[a] == second.cost()[b]
                          && first.benefit()[a] >= second.benefit()[b]);
      Front from = fromFirst ? first : second;
      int k = fromFirst ? a++ : b++;
      boolean better = size == 0 || from.benefit()[k] > benefit[size - 1];
      if (better && canBeat(from.cost()[k], from.benefit()[k], ahead)) {
        cost[size] = from.cost()[k];
        benefit[size] = from.benefit()[k];
        state[size] = from.state()[k];
        size++;
      }
    }
    return new Front(cost, benefit, state, size);
  }

  private int newState(int before, int candidate) {
    if (states == parent.length) {
      parent = Arrays.copyOf(parent, 2 * states);
      taken = Arrays.copyOf(taken, 2 * states);
    }
    parent[states] = before;
    taken[states] = candidate;
    return states++;
  }

  private List<Integer> chosen(int last) {
    List<Integer> chosen = new ArrayList<>();
    for (int state = last; parent[state] >= 0; state = parent[state]) {
      chosen.add(taken[state]);
    }
    chosen.sort(null);
    return chosen;
  }
}
