package org.meadowmark.core.plan.choice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Set;

/**
 * Takes what has most benefit for its cost until nothing more is affordable.
 *
 * <p>A site that nobody goes to yet is offered as a bundle: its mobilisation with the candidates
 * that make the way worth most. Once it is taken the others of the site are offered without the
 * mobilisation. Offers are looked at again only when they come first (Minoux 1978, <i>Accelerated
 * greedy algorithms for maximizing submodular set functions</i>, Optimization Techniques, Lecture
 * Notes in Control and Information Sciences 7:234–243, from memory): what is affordable only
 * shrinks, so an old offer is never better than it looked. The best single candidate is compared at
 * the end, since cheap small repairs can shut out one large one. Time n log n as a rule.
 */
final class LazyGreedy {
  private final BudgetProblem problem;
  private final List<List<Integer>> members;
  private final List<Integer> chosen = new ArrayList<>();
  private final PriorityQueue<Offer> offers = new PriorityQueue<>();
  private double left;

  /** Candidates to take together; of equal ratios the offer of the first candidate comes first. */
  private record Offer(int site, List<Integer> candidates, double cost, double benefit)
      implements Comparable<Offer> {
    @Override
    public int compareTo(Offer other) {
      int byRatio =
          Double.compare(
              BudgetProblem.ratio(other.benefit, other.cost), BudgetProblem.ratio(benefit, cost));
      return byRatio != 0 ? byRatio : Integer.compare(candidates.get(0), other.candidates.get(0));
    }

    boolean isBundle() {
      return site >= 0;
    }
  }

  LazyGreedy(BudgetProblem problem, List<List<Integer>> members) {
    this.problem = problem;
    this.members = members;
    this.left = problem.limit();
  }

  /** Positions of the candidates chosen, ascending. */
  List<Integer> choose() {
    List<Integer> single = bestSingle();
    for (int site = 0; site < members.size(); site++) {
      offerBundle(site);
    }
    while (!offers.isEmpty()) {
      Offer offer = offers.poll();
      if (offer.cost() <= left) {
        take(offer);
      } else if (offer.isBundle()) {
        offerBundle(offer.site());
      }
    }
    List<Integer> best = problem.benefit(single) > problem.benefit(chosen) ? single : chosen;
    Collections.sort(best);
    return best;
  }

  private void take(Offer offer) {
    chosen.addAll(offer.candidates());
    left -= offer.cost();
    if (offer.isBundle()) {
      Set<Integer> taken = new HashSet<>(offer.candidates());
      for (int i : members.get(offer.site())) {
        if (!taken.contains(i)) {
          Candidate c = problem.candidates().get(i);
          offers.add(new Offer(-1, List.of(i), c.cost(), c.benefit()));
        }
      }
    }
  }

  private void offerBundle(int site) {
    double cost = problem.mobilisation().get(site);
    double benefit = 0;
    List<Integer> bundle = new ArrayList<>();
    for (int i : members.get(site)) {
      Candidate c = problem.candidates().get(i);
      if (cost + c.cost() > left) {
        continue;
      }
      if (!bundle.isEmpty()
          && BudgetProblem.ratio(c.benefit(), c.cost()) <= BudgetProblem.ratio(benefit, cost)) {
        break;
      }
      bundle.add(i);
      cost += c.cost();
      benefit += c.benefit();
    }
    if (!bundle.isEmpty()) {
      offers.add(new Offer(site, bundle, cost, benefit));
    }
  }

  /** The candidate that is worth most among those affordable with the way to them, alone. */
  private List<Integer> bestSingle() {
    int best = -1;
    for (int site = 0; site < members.size(); site++) {
      for (int i : members.get(site)) {
        Candidate c = problem.candidates().get(i);
        if (problem.mobilisation().get(site) + c.cost() <= left
            && (best < 0 || c.benefit() > problem.candidates().get(best).benefit())) {
          best = i;
        }
      }
    }
    return best < 0 ? new ArrayList<>() : new ArrayList<>(List.of(best));
  }
}
