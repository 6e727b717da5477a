package org.meadowmark.core.plan.choice;

/** What says that no choice is worth more. */
public enum Proof {
  /** Nothing: a better one is possible, within the bound. */
  NONE("not proven", false),
  /** It is worth as much as the bound allows. */
  BOUND("bound", true),
  /** Every set within the budget was looked at. */
  ALL_SETS("all sets", true),
  /** The toolkit's own programme ran to its end. */
  PROGRAMME("own programme", true),
  /**
   * A general integer solver says so, and its answer held when it was worked out again. It works
   * with rounded numbers, so this is no proof.
   */
  SOLVER("integer solver's word", false),
  /** Both the programme and the solver, with the same benefit. */
  PROGRAMME_AND_SOLVER("own programme and integer solver", true);

  private final String key;
  private final boolean isCertain;

  Proof(String key, boolean isCertain) {
    this.key = key;
    this.isCertain = isCertain;
  }

  /** {@return words used in tables} */
  public String key() {
    return key;
  }

  /** {@return whether it was worked out in our own sums} */
  public boolean isCertain() {
    return isCertain;
  }
}
