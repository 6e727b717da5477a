package org.meadowmark.core.plan.choice;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.List;

/** Benefits that add up. */
record SummedBenefit(BudgetProblem problem) implements JointBenefit {
  @Override
  public double of(Collection<Integer> chosen) {
    return problem.benefit(chosen);
  }

  @Override
  public List<Integer> raised(int candidate) {
    return List.of();
  }

  @Override
  public double apart(int candidate) {
    return problem.candidates().get(candidate).benefit();
  }

  @Override
  public double most(int candidate) {
    return apart(candidate);
  }

  @Override
  public double mostTogether() {
    return 0;
  }

  @Override
  public Tally begin() {
    return new Tally() {
      private final Deque<Integer> chosen = new ArrayDeque<>();
      private double sum;

      @Override
      public double gain(int candidate) {
        return apart(candidate);
      }

      @Override
      public void add(int candidate) {
        chosen.push(candidate);
        sum += apart(candidate);
      }

      @Override
      public void removeLast() {
        sum -= apart(chosen.pop());
      }

      @Override
      public double benefit() {
        return sum;
      }

      @Override
      public long state(int candidate) {
        return 0;
      }

      @Override
      public boolean isTired() {
        return false;
      }
    };
  }
}
