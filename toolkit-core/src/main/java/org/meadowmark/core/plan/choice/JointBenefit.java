package org.meadowmark.core.plan.choice;

import java.util.Collection;
import java.util.List;

/**
 * What candidates are worth together, where that is not the sum of what each is worth alone.
 *
 * <p>Candidates are known by their positions in {@link BudgetProblem#candidates}, whose benefits
 * are those of each alone.
 */
public interface JointBenefit {
  /**
   * {@return what a set is worth, worked out from scratch; the same in any order but for rounding}
   *
   * @param chosen positions of the candidates, each once
   */
  double of(Collection<Integer> chosen);

  /**
   * {@return candidates whose gain a choice of this one can raise, so that they have to be looked
   * at again; itself left out} Those whose gain it can only lower need not be among them.
   *
   * @param candidate position of the candidate
   */
  List<Integer> raised(int candidate);

  /**
   * {@return the part of a candidate's benefit that is the same in every set}
   *
   * @param candidate position of the candidate
   */
  double apart(int candidate);

  /**
   * {@return a bound: no set gains more by this candidate}
   *
   * @param candidate position of the candidate
   */
  double most(int candidate);

  /**
   * {@return a bound: no set is worth more beyond the sum of the parts that are the same in every
   * set}
   */
  double mostTogether();

  /** {@return a tally with nothing chosen} */
  Tally begin();

  /** Candidates chosen one after another. */
  interface Tally {
    /**
     * {@return what one more candidate would be worth now; may be less than nothing}
     *
     * @param candidate position of the candidate
     */
    double gain(int candidate);

    /**
     * Chooses one more, which is not chosen yet.
     *
     * @param candidate position of the candidate
     */
    void add(int candidate);

    /** Takes back the one chosen last. */
    void removeLast();

    /** {@return what the candidates chosen are worth together} */
    double benefit();

    /**
     * {@return changes whenever the gain of a candidate may have changed, so that a gain worked out
     * before is known to be old}
     *
     * @param candidate position of the candidate
     */
    long state(int candidate);

    /** {@return whether so much was worked out that gains are no longer to be looked at again} */
    boolean isTired();
  }

  /**
   * {@return benefits that add up, where candidates do not act on each other}
   *
   * @param problem candidates with the benefit of each alone
   */
  static JointBenefit sum(BudgetProblem problem) {
    return new SummedBenefit(problem);
  }
}
