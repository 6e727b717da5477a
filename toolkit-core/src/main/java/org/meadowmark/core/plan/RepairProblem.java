package org.meadowmark.core.plan;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.meadowmark.core.measure.ConnectivityDetail;
import org.meadowmark.core.measure.connectivity.JointFillings;
import org.meadowmark.core.plan.choice.BudgetProblem;
import org.meadowmark.core.plan.choice.Candidate;
import org.meadowmark.core.plan.choice.JointBenefit;
import org.meadowmark.core.survey.RepairParameters;

/**
 * Scars to choose from within a budget, with what they are worth alone and together.
 *
 * @param problem candidates in the order of the scars
 * @param joint what they are worth together
 * @param connectivity what they restore of connectivity, where that is known
 */
record RepairProblem(BudgetProblem problem, JointBenefit joint, Optional<JointGain> connectivity) {

  /** What a set of the scars restores of connectivity, where that is known. */
  Optional<Connected> connected(Collection<Integer> chosen) {
    return connectivity.map(
        gain ->
            new Connected(
                gain.connectedHectares(chosen),
                chosen.stream().mapToDouble(gain::connectedAlone).sum()));
  }

  RepairProblem withBudget(double budget) {
    return new RepairProblem(problem.withBudget(budget), joint, connectivity);
  }

  /** Makes problems of one survey. */
  static final class Maker {
    private final RepairParameters choices;
    private final LaterGains later;
    private final Optional<JointFillings> fillings;
    private final Map<String, Integer> fillingOf = new HashMap<>();

    Maker(RepairParameters choices, LaterGains later, Optional<ConnectivityDetail> detail) {
      this.choices = choices;
      this.later = later;
      this.fillings = detail.flatMap(ConnectivityDetail::together);
      if (fillings.isPresent()) {
        for (int i = 0; i < detail.orElseThrow().scars().size(); i++) {
          fillingOf.put(detail.orElseThrow().scars().get(i).scarId(), i);
        }
      }
    }

    /**
     * A problem.
     *
     * @param scars in the order of ids
     * @param yearsLater years after the first season
     * @param planted scars of earlier seasons
     */
    RepairProblem of(
        List<RepairScar> scars, double budget, int yearsLater, List<RepairScar> planted) {
      Optional<JointGain> gain = fillings.map(known -> gain(known, scars, yearsLater, planted));
      Map<String, Integer> sites = new HashMap<>();
      List<Candidate> candidates = new ArrayList<>();
      List<Double> mobilisation = new ArrayList<>();
      for (int i = 0; i < scars.size(); i++) {
        RepairScar scar = scars.get(i);
        int site = sites.computeIfAbsent(scar.siteId(), id -> sites.size());
        if (site == mobilisation.size()) {
          mobilisation.add(choices.mobilisationCost());
        }
        double benefit = gain.isPresent() ? gain.get().alone(i) : separateBenefit(scar, yearsLater);
        candidates.add(new Candidate(site, scar.cost().total(), benefit));
      }
      BudgetProblem problem = new BudgetProblem(candidates, mobilisation, budget);
      JointBenefit joint = JointBenefit.sum(problem);
      if (gain.isPresent()) {
        joint = gain.get();
      }
      return new RepairProblem(problem, joint, gain);
    }

    private double separateBenefit(RepairScar scar, int yearsLater) {
      return (choices.grassWeight() * later.grass(scar, yearsLater)
              + choices.connectivityWeight()
                  * scar.connectivityGainHectares().orElse(0)
                  * later.share(yearsLater))
          * staysWhole(scar);
    }

    private double staysWhole(RepairScar scar) {
      return scar.risk().staysWhole(choices.establishmentYears());
    }

    private JointGain gain(
        JointFillings known, List<RepairScar> scars, int yearsLater, List<RepairScar> planted) {
      List<JointGain.Repair> repairs =
          scars.stream()
              .map(
                  scar ->
                      new JointGain.Repair(
                          choices.grassWeight() * later.grass(scar, yearsLater),
                          staysWhole(scar),
                          fillingOf.getOrDefault(scar.scarId(), -1)))
              .toList();
      List<Integer> given =
          planted.stream()
              .map(scar -> fillingOf.getOrDefault(scar.scarId(), -1))
              .filter(filling -> filling >= 0)
              .toList();
      return new JointGain(
          repairs, choices.connectivityWeight() * later.share(yearsLater), known, given);
    }
  }
}
