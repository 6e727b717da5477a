package org.meadowmark.core.plan.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Looks at every set of candidates within the budget; time 2ⁿ. */
final class AllSets {
  /** What is added up in another order differs in its last digits. */
  private static final double EQUAL = 1e-12;

  private final BudgetProblem problem;
  private final JointBenefit.Tally tally;
  private final List<Integer> chosen = new ArrayList<>();
  private final int[] ofSite;
  private double best;
  private Optional<List<Integer>> bestSet = Optional.empty();

  private AllSets(BudgetProblem problem, JointBenefit joint, double toBeat) {
    this.problem = problem;
    this.tally = joint.begin();
    this.best = toBeat;
    this.ofSite = new int[problem.mobilisation().size()];
  }

  /** A set that is worth more than a known one, and than any other; none where there is none. */
  static Optional<List<Integer>> better(BudgetProblem problem, JointBenefit joint, double toBeat) {
    AllSets sets = new AllSets(problem, joint, toBeat);
    sets.from(0, problem.limit());
    return sets.bestSet;
  }

  private void from(int next, double left) {
    if (tally.benefit() > best * (1 + EQUAL)) {
      best = tally.benefit();
      bestSet = Optional.of(List.copyOf(chosen));
    }
    for (int i = next; i < problem.candidates().size(); i++) {
      Candidate c = problem.candidates().get(i);
      double cost = c.cost() + (ofSite[c.site()] == 0 ? problem.mobilisation().get(c.site()) : 0);
      if (cost <= left) {
        tally.add(i);
        chosen.add(i);
        ofSite[c.site()]++;
        from(i + 1, left - cost);
        ofSite[c.site()]--;
        chosen.remove(chosen.size() - 1);
        tally.removeLast();
      }
    }
  }
}
