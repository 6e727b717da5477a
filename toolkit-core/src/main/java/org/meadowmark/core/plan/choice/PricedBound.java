package org.meadowmark.core.plan.choice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * An upper bound on what can be had within a budget: money gets a price, and each site is then
 * judged alone.
 *
 * <p>At a price p of one unit of money, no choice is worth more than p × budget plus, for each
 * site, what its candidates are worth beyond their price and that of its mobilisation, where that
 * is more than nothing. This holds at every price (Lagrangian relaxation: Geoffrion 1974,
 * Mathematical Programming Study 2:82–114, from memory). The price taken is that at which the bound
 * is lowest: there it equals what parts of repairs would allow. Time n log n.
 */
final class PricedBound {
  /** The bound is a sum of many numbers: it must not fall below the truth by rounding. */
  private static final double ROUNDING = 1e-12;

  private final BudgetProblem problem;
  private final List<List<Integer>> members;
  private final double price;
  private final double value;

  /** What the candidates of each site are worth beyond their price and that of the way. */
  private final double[] beyondWay;

  private record Piece(double cost, double benefit) {
    double ratio() {
      return BudgetProblem.ratio(benefit, cost);
    }
  }

  PricedBound(BudgetProblem problem, List<List<Integer>> members) {
    this.problem = problem;
    this.members = members;
    this.price = breakingRatio();
    this.beyondWay = new double[members.size()];
    double sum = price * problem.limit();
    for (int site = 0; site < beyondWay.length; site++) {
      beyondWay[site] = -price * problem.mobilisation().get(site);
      for (int i : members.get(site)) {
        beyondWay[site] += surplus(i);
      }
    }
    for (int site = 0; site < members.size(); site++) {
      sum += siteSurplus(site);
    }
    this.value = sum * (1 + ROUNDING);
  }

  /** Price of one unit of money at which the bound is lowest. */
  double price() {
    return price;
  }

  /** No choice is worth more. */
  double value() {
    return value;
  }

  /** What a site that is reached is worth beyond its price; 0 where it is not worth the way. */
  double siteSurplus(int site) {
    return Math.max(0, beyondWay[site]);
  }

  /** No choice with a candidate in it is worth more. */
  double valueWith(int candidate) {
    Candidate c = problem.candidates().get(candidate);
    double reached = beyondWay[c.site()];
    double beyondPrice = c.benefit() - price * c.cost();
    return (value - Math.max(0, reached) + reached + Math.min(0, beyondPrice)) * (1 + ROUNDING);
  }

  /** What a candidate is worth beyond its price, or 0. */
  double surplus(int candidate) {
    Candidate c = problem.candidates().get(candidate);
    return Math.max(0, c.benefit() - price * c.cost());
  }

  /**
   * Pieces are bought by benefit for cost; the price is that of the piece that is not affordable.
   */
  private double breakingRatio() {
    List<Piece> pieces = new ArrayList<>();
    for (int site = 0; site < members.size(); site++) {
      addPieces(site, pieces);
    }
    pieces.sort(Comparator.comparingDouble(Piece::ratio).reversed());
    double left = problem.budget();
    for (Piece piece : pieces) {
      left -= piece.cost();
      if (left < 0) {
        return piece.ratio();
      }
    }
    return 0;
  }

  /** The candidates that make a site's way worth most, together; then the others one by one. */
  private void addPieces(int site, List<Piece> pieces) {
    double cost = problem.mobilisation().get(site);
    double benefit = 0;
    int taken = 0;
    for (int i : members.get(site)) {
      Candidate c = problem.candidates().get(i);
      if (taken > 0
          && BudgetProblem.ratio(c.benefit(), c.cost()) <= BudgetProblem.ratio(benefit, cost)) {
        break;
      }
      cost += c.cost();
      benefit += c.benefit();
      taken++;
    }
    if (taken > 0) {
      pieces.add(new Piece(cost, benefit));
    }
    for (int i : members.get(site).subList(taken, members.get(site).size())) {
      Candidate c = problem.candidates().get(i);
      pieces.add(new Piece(c.cost(), c.benefit()));
    }
  }
}
