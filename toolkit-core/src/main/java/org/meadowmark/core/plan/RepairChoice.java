package org.meadowmark.core.plan;

import java.util.Optional;
import org.meadowmark.core.plan.choice.BudgetChoice;
import org.meadowmark.core.plan.choice.Proof;

/**
 * How good the choice within the budget is, with all of it planted in the first season.
 *
 * @param budget what may be spent
 * @param cost what is spent
 * @param benefit what it is worth together
 * @param upperBound no choice is worth more
 * @param proof what says that no choice is worth more
 * @param greedyBenefit what taking the best benefit for cost first, each scar by what it is worth
 *     alone, would be worth together
 * @param separateBenefit sum of what each chosen scar is worth alone
 * @param bySum the best choice that was found by the sum of what each scar is worth alone; its
 *     benefit, bound and proof are of that sum
 * @param connected what it restores of connectivity; empty where that was not worked out
 */
public record RepairChoice(
    double budget,
    double cost,
    double benefit,
    double upperBound,
    Proof proof,
    double greedyBenefit,
    double separateBenefit,
    BudgetChoice bySum,
    Optional<Connected> connected) {
  /** {@return whether no choice is worth more} */
  public boolean isProvenBest() {
    return proof.isCertain();
  }

  /** {@return the most by which a choice could be better, as a part of the bound, in 0–1} */
  public double gapShare() {
    return upperBound > 0 ? Math.max(0, 1 - benefit / upperBound) : 0;
  }
}
