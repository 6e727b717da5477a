package org.meadowmark.core.plan.choice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Set;

/**
 * Takes what has most benefit for its cost until nothing more is affordable.
 *
 * <p>A site that nobody goes to yet is offered as a bundle: its mobilisation with the candidates
 * that make the way worth most. Once it is taken the others of the site are offered without the
 * mobilisation. Offers are looked at again only when they come first: what an offer is worth is
 * then worked out anew, given all that is chosen, and it is taken if it still comes first (Minoux
 * 1978, <i>Accelerated greedy algorithms for maximizing submodular set functions</i>, Optimization
 * Techniques, Lecture Notes in Control and Information Sciences 7:234–243, from memory).
 *
 * <p>That finds what a look at every offer in every step would find as long as gains only fall.
 * They can also rise: two scars in a row on a lane restore more together than each alone. So after
 * each choice the candidates that it can have raised ({@link JointBenefit#raised}) are looked at at
 * once. Bundles are put together by the gains last known. When the tally is tired, offers stay as
 * they were last seen.
 *
 * <p>The best single candidate is compared at the end, since cheap small repairs can shut out one
 * large one. Time n log n in candidates as a rule, and a gain anew for each look.
 */
final class LazyGreedy {
  private final BudgetProblem problem;
  private final List<List<Integer>> members;
  private final JointBenefit joint;
  private final JointBenefit.Tally tally;
  private final List<Integer> chosen = new ArrayList<>();
  private final boolean[] isChosen;
  private final PriorityQueue<Offer> offers = new PriorityQueue<>();

  /** Gain of each candidate when it was last looked at, and the state that it was worked out in. */
  private final double[] known;

  private final long[] knownIn;

  /** Offers of a site or, below, of a candidate that were made after others are void. */
  private final int[] turnOfSite;

  private final int[] turnOfCandidate;
  private final boolean[] isOpen;
  private double left;

  /** Candidates to take together; of equal ratios the offer of the first candidate comes first. */
  private record Offer(
      int site,
      List<Integer> candidates,
      double cost,
      double benefit,
      int turn,
      boolean isWeighedTogether)
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

  LazyGreedy(BudgetProblem problem, List<List<Integer>> members, JointBenefit joint) {
    this.problem = problem;
    this.members = members;
    this.joint = joint;
    this.tally = joint.begin();
    int count = problem.candidates().size();
    isChosen = new boolean[count];
    known = new double[count];
    knownIn = new long[count];
    turnOfCandidate = new int[count];
    turnOfSite = new int[members.size()];
    isOpen = new boolean[members.size()];
    for (int i = 0; i < count; i++) {
      known[i] = problem.candidates().get(i).benefit();
      knownIn[i] = tally.state(i);
    }
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
      if (isVoid(offer)) {
        continue;
      }
      if (offer.cost() > left) {
        if (offer.isBundle()) {
          offerBundle(offer.site());
        }
      } else if (isOld(offer)) {
        lookAgain(offer);
      } else if (!offer.isWeighedTogether() && !tally.isTired()) {
        offers.add(weighedTogether(offer));
      } else {
        take(offer);
      }
    }
    List<Integer> best = joint.of(single) > joint.of(chosen) ? single : chosen;
    Collections.sort(best);
    return best;
  }

  private boolean isVoid(Offer offer) {
    return offer.isBundle()
        ? offer.turn() != turnOfSite[offer.site()]
        : offer.turn() != turnOfCandidate[offer.candidates().get(0)];
  }

  private boolean isOld(Offer offer) {
    return !tally.isTired()
        && offer.candidates().stream().anyMatch(i -> knownIn[i] != tally.state(i));
  }

  private void lookAgain(Offer offer) {
    offer.candidates().forEach(this::look);
    if (offer.isBundle()) {
      offerBundle(offer.site());
    } else {
      offerSingle(offer.candidates().get(0));
    }
  }

  /** The candidates of a bundle act on each other too. */
  private Offer weighedTogether(Offer bundle) {
    double before = tally.benefit();
    bundle.candidates().forEach(tally::add);
    double benefit = tally.benefit() - before;
    bundle.candidates().forEach(i -> tally.removeLast());
    return new Offer(
        bundle.site(), bundle.candidates(), bundle.cost(), benefit, bundle.turn(), true);
  }

  private void look(int candidate) {
    if (!tally.isTired() && knownIn[candidate] != tally.state(candidate)) {
      known[candidate] = tally.gain(candidate);
      knownIn[candidate] = tally.state(candidate);
    }
  }

  private void take(Offer offer) {
    Set<Integer> raised = new LinkedHashSet<>();
    for (int i : offer.candidates()) {
      tally.add(i);
      isChosen[i] = true;
      chosen.add(i);
      raised.addAll(joint.raised(i));
    }
    left -= offer.cost();
    if (offer.isBundle()) {
      isOpen[offer.site()] = true;
      turnOfSite[offer.site()]++;
      for (int i : members.get(offer.site())) {
        if (!isChosen[i]) {
          offerSingle(i);
        }
      }
    }
    offerAgain(raised);
  }

  private void offerAgain(Set<Integer> raised) {
    Set<Integer> sites = new LinkedHashSet<>();
    for (int i : raised) {
      if (isChosen[i] || tally.isTired()) {
        continue;
      }
      look(i);
      int site = problem.candidates().get(i).site();
      if (isOpen[site]) {
        offerSingle(i);
      } else {
        sites.add(site);
      }
    }
    sites.forEach(this::offerBundle);
  }

  private void offerSingle(int i) {
    turnOfCandidate[i]++;
    if (known[i] > 0) {
      double cost = problem.candidates().get(i).cost();
      offers.add(new Offer(-1, List.of(i), cost, known[i], turnOfCandidate[i], true));
    }
  }

  private void offerBundle(int site) {
    turnOfSite[site]++;
    double cost = problem.mobilisation().get(site);
    double benefit = 0;
    List<Integer> bundle = new ArrayList<>();
    for (int i : byRatio(site)) {
      double more = problem.candidates().get(i).cost();
      if (cost + more > left || !(known[i] > 0)) {
        continue;
      }
      if (!bundle.isEmpty()
          && BudgetProblem.ratio(known[i], more) <= BudgetProblem.ratio(benefit, cost)) {
        break;
      }
      bundle.add(i);
      cost += more;
      benefit += known[i];
    }
    if (!bundle.isEmpty()) {
      offers.add(new Offer(site, bundle, cost, benefit, turnOfSite[site], bundle.size() == 1));
    }
  }

  /** Members are sorted by what each is worth alone; the gains last known may have changed that. */
  private List<Integer> byRatio(int site) {
    List<Integer> sorted = new ArrayList<>(members.get(site));
    sorted.sort(
        (a, b) ->
            Double.compare(
                BudgetProblem.ratio(known[b], problem.candidates().get(b).cost()),
                BudgetProblem.ratio(known[a], problem.candidates().get(a).cost())));
    return sorted;
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
