package org.meadowmark.core.plan;

/**
 * How good the choice within the budget is.
 *
 * @param budget what may be spent
 * @param cost what is spent
 * @param benefit what it is worth
 * @param upperBound no choice is worth more
 * @param isProvenBest whether no choice is worth more
 * @param greedyBenefit what taking the best benefit for cost first would be worth
 */
public record RepairChoice(
    double budget,
    double cost,
    double benefit,
    double upperBound,
    boolean isProvenBest,
    double greedyBenefit) {
  /** The most by which a choice could be better, as a part of the bound, in 0–1. */
  public double gapShare() {
    return upperBound > 0 ? Math.max(0, 1 - benefit / upperBound) : 0;
  }
}
