package org.meadowmark.core.plan.choice;

/** What says that no choice is worth more. */
public enum Proof {
  /** Nothing: a better one is possible, within the bound. */
  NONE("not proven"),
  /** It is worth as much as the bound allows. */
  BOUND("bound"),
  /** Every set within the budget was looked at. */
  ALL_SETS("all sets"),
  /** The toolkit's own programme ran to its end. */
  PROGRAMME("own programme"),
  /** A general integer solver says so, and its answer held when it was worked out again. */
  SOLVER("integer solver"),
  /** Both the programme and the solver, with the same benefit. */
  PROGRAMME_AND_SOLVER("own programme and integer solver");

  private final String key;

  Proof(String key) {
    this.key = key;
  }

  /** Words used in tables. */
  public String key() {
    return key;
  }
}
