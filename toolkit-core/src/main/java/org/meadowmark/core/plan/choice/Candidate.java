package org.meadowmark.core.plan.choice;

/**
 * A repair that can be chosen.
 *
 * @param site position of its site in {@link BudgetProblem#mobilisation}
 * @param cost its own cost, without mobilisation, 0 or more
 * @param benefit what it is worth, 0 or more
 */
public record Candidate(int site, double cost, double benefit) {
  /**
   * Refuses figures out of their limits.
   *
   * @param site position of its site in {@link BudgetProblem#mobilisation}
   * @param cost its own cost, without mobilisation, 0 or more
   * @param benefit what it is worth, 0 or more
   * @throws IllegalArgumentException if cost or benefit is negative or not finite
   */
  public Candidate {
    if (!(cost >= 0) || Double.isInfinite(cost)) {
      throw new IllegalArgumentException("cost must be 0 or more: " + cost);
    }
    if (!(benefit >= 0) || Double.isInfinite(benefit)) {
      throw new IllegalArgumentException("benefit must be 0 or more: " + benefit);
    }
  }
}
