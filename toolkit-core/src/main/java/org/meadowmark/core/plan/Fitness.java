package org.meadowmark.core.plan;

/** Whether a scar should be planted. */
public enum Fitness {
  /** Nothing that is known speaks against it. */
  PLANT("plant"),
  /** What keeps grass from growing there has to end, or to be cleared, before. */
  PROTECT_FIRST("protect first"),
  /** Grass will not hold there. */
  NOT_FIT("not fit"),
  /** Nothing is known to be gained. */
  NO_GAIN("no gain");

  private final String key;

  Fitness(String key) {
    this.key = key;
  }

  /** {@return word used in tables} */
  public String key() {
    return key;
  }
}
