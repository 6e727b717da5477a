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
  /** What a set is worth, worked out from scratch. */
  double of(Collection<Integer> chosen);

  /**
   * {@return candidates whose gain a choice of this one can raise, so that they have to be looked
   * at again; itself left out} Those whose gain it can only lower need not be among them.
   */
  List<Integer> raised(int candidate);

  /** {@return the part of a candidate's benefit that is the same in every set} */
  double apart(int candidate);

  /** {@return a bound: no set gains more by this candidate} */
  double most(int candidate);

  /**
   * {@return a bound: no set is worth more beyond the sum of the parts that are the same in every
   * set}
   */
  double mostTogether();

  /** Starts with nothing chosen. */
  Tally begin();

  /** Candidates chosen one after another. */
  interface Tally {
    /** What one more candidate would be worth now; may be less than nothing. */
    double gain(int candidate);

    /** Chooses one more. */
    void add(int candidate);

    /** Takes back the one chosen last. */
    void removeLast();

    /** What is chosen is worth. */
    double benefit();

    /**
     * {@return changes whenever the gain of a candidate may have changed, so that a gain worked out
     * before is known to be old}
     */
    long state(int candidate);

    /** {@return whether so much was worked out that gains are no longer to be looked at again} */
    boolean isTired();
  }

  /** {@return benefits that add up} */
  static JointBenefit sum(BudgetProblem problem) {
    return new SummedBenefit(problem);
  }
}
