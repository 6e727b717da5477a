package org.meadowmark.core.survey;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What the score of a channel segment is made of, in the order of columns. */
public enum ScoreTerm {
  /** Damage rate after shrinkage, against the high rates of the survey. */
  RATE("rate"),
  /** How surely the segment belongs to a cluster of high rates. */
  HOT_SPOT("hot-spot"),
  /** Rate, times the share of scar length on scars that reach the channel's edge. */
  EDGE("edge"),
  /** Rate, times the share of scar length where the water is shallower than the boat's draft. */
  SHALLOW("shallow"),
  /** Scarred area for each hectare exposed, against the survey's high values: depends on widths. */
  SCARRED_AREA("scarred-area"),
  /** Mean severity class of the bed exposed. */
  SEVERITY("severity"),
  /**
   * Connectivity that filling the segment's scars would restore, against the survey's high values.
   */
  CONNECTIVITY("connectivity"),
  /** Share of new scar length that lies on ground scarred in an earlier season. */
  RE_SCARRING("re-scarring");

  private final String key;

  ScoreTerm(String key) {
    this.key = key;
  }

  /** {@return name used in a survey file and in messages} */
  public String key() {
    return key;
  }

  static Optional<ScoreTerm> find(String key) {
    return Arrays.stream(values()).filter(term -> term.key.equals(key)).findFirst();
  }

  static List<String> keys() {
    return Arrays.stream(values()).map(ScoreTerm::key).toList();
  }
}
