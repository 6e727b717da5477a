package org.meadowmark.core.change.match;

/** What became of a scar between two surveys. */
public enum ChangeClass {
  /** In both surveys, of about the same length. */
  PERSISTING("persisting"),
  /** In both, and longer in the later one. */
  EXTENDED("extended"),
  /** In both, and shorter in the later one: part of it has healed. */
  SHORTENED("shortened"),
  /** One scar of the earlier survey is several in the later one. */
  SPLIT("split"),
  /** Several scars of the earlier survey are one in the later one. */
  MERGED("merged"),
  /** In the earlier survey only, where the later one looked too. */
  HEALED("healed"),
  /** In the later survey only, where the earlier one looked too. */
  NEW("new"),
  /** Where the other survey did not look, or without any length: nothing can be said. */
  NOT_COMPARABLE("not comparable");

  private final String key;

  ChangeClass(String key) {
    this.key = key;
  }

  /** {@return name in tables} */
  public String key() {
    return key;
  }
}
