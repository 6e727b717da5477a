package org.meadowmark.core.plan.choice;

import java.util.List;

/**
 * A choice within a budget.
 *
 * @param chosen positions of the candidates chosen, ascending
 * @param cost what they cost, mobilisation with it
 * @param benefit what they are worth together
 * @param upperBound no choice within the budget is worth more
 * @param proof what says that no choice is worth more
 */
public record BudgetChoice(
    List<Integer> chosen, double cost, double benefit, double upperBound, Proof proof) {
  /**
   * Keeps a copy of the list that cannot be changed.
   *
   * @param chosen positions of the candidates chosen, ascending
   * @param cost what they cost, mobilisation with it
   * @param benefit what they are worth together
   * @param upperBound no choice within the budget is worth more
   * @param proof what says that no choice is worth more
   * @throws NullPointerException if the list or an entry of it is null
   */
  public BudgetChoice {
    chosen = List.copyOf(chosen);
  }

  /** {@return whether no choice is worth more} */
  public boolean isProvenBest() {
    return proof.isCertain();
  }

  /** {@return the most by which a choice could be better, as a part of the bound, in 0–1} */
  public double gapShare() {
    return upperBound > 0 ? Math.max(0, 1 - benefit / upperBound) : 0;
  }
}
