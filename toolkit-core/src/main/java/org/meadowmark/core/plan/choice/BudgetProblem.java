package org.meadowmark.core.plan.choice;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * Which candidates to choose so that their benefits add up to most, and their costs with the
 * mobilisation of each site that has one stay within the budget.
 *
 * @param candidates in an order that ties break by
 * @param mobilisation cost of a site, paid once if any of its candidates is chosen
 * @param budget 0 or more
 */
public record BudgetProblem(List<Candidate> candidates, List<Double> mobilisation, double budget) {
  /** Costs are sums of many numbers: a rounding error must not shut a choice out. */
  private static final double ROUNDING = 1e-9;

  /**
   * Keeps copies of the lists that cannot be changed, and refuses figures out of their limits.
   *
   * @param candidates in an order that ties break by
   * @param mobilisation cost of a site, paid once if any of its candidates is chosen
   * @param budget 0 or more
   * @throws IllegalArgumentException if a candidate has no site, or a cost or the budget is
   *     negative or not finite
   */
  public BudgetProblem {
    candidates = List.copyOf(candidates);
    mobilisation = List.copyOf(mobilisation);
    for (Candidate candidate : candidates) {
      if (candidate.site() < 0 || candidate.site() >= mobilisation.size()) {
        throw new IllegalArgumentException("there is no site " + candidate.site());
      }
    }
    for (double cost : mobilisation) {
      if (!(cost >= 0) || Double.isInfinite(cost)) {
        throw new IllegalArgumentException("mobilisation must be 0 or more: " + cost);
      }
    }
    if (!(budget >= 0) || Double.isInfinite(budget)) {
      throw new IllegalArgumentException("budget must be 0 or more: " + budget);
    }
  }

  /**
   * {@return the same with another budget}
   *
   * @param other the other budget, 0 or more, in the currency of the costs
   * @throws IllegalArgumentException if it is negative or not finite
   */
  public BudgetProblem withBudget(double other) {
    return new BudgetProblem(candidates, mobilisation, other);
  }

  /** The same with other benefits, by position. */
  BudgetProblem withBenefits(IntToDoubleFunction benefitOf) {
    List<Candidate> others = new ArrayList<>(candidates.size());
    for (int i = 0; i < candidates.size(); i++) {
      Candidate c = candidates.get(i);
      others.add(new Candidate(c.site(), c.cost(), benefitOf.applyAsDouble(i)));
    }
    return new BudgetProblem(others, mobilisation, budget);
  }

  /**
   * {@return what a choice costs, mobilisation of each of its sites with it}
   *
   * @param chosen positions of the candidates, each once
   */
  public double cost(Collection<Integer> chosen) {
    boolean[] open = new boolean[mobilisation.size()];
    double sum = 0;
    for (int i : chosen) {
      Candidate candidate = candidates.get(i);
      if (!open[candidate.site()]) {
        open[candidate.site()] = true;
        sum += mobilisation.get(candidate.site());
      }
      sum += candidate.cost();
    }
    return sum;
  }

  /**
   * {@return what a choice is worth: the sum of the benefits of each alone}
   *
   * @param chosen positions of the candidates, each once
   */
  public double benefit(Collection<Integer> chosen) {
    double sum = 0;
    for (int i : chosen) {
      sum += candidates.get(i).benefit();
    }
    return sum;
  }

  /** The budget with room for rounding errors. */
  double limit() {
    return budget * (1 + ROUNDING) + ROUNDING;
  }

  /** Candidates with a benefit by site, best benefit for cost first, ties in their order. */
  List<List<Integer>> members() {
    List<List<Integer>> members = new ArrayList<>();
    mobilisation.forEach(site -> members.add(new ArrayList<>()));
    for (int i = 0; i < candidates.size(); i++) {
      if (candidates.get(i).benefit() > 0) {
        members.get(candidates.get(i).site()).add(i);
      }
    }
    for (List<Integer> site : members) {
      site.sort((a, b) -> Double.compare(ratio(b), ratio(a)));
    }
    return members;
  }

  private double ratio(int i) {
    return ratio(candidates.get(i).benefit(), candidates.get(i).cost());
  }

  static double ratio(double benefit, double cost) {
    return cost > 0 ? benefit / cost : Double.POSITIVE_INFINITY;
  }
}
