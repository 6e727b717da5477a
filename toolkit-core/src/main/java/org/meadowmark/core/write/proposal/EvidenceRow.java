package org.meadowmark.core.write.proposal;

import java.util.Objects;
import java.util.Optional;

/**
 * A line of the evidence table.
 *
 * @param label what it is, in words
 * @param value the value, set for people; empty where the evidence is missing
 * @param unit its unit; empty text where it has none or the value names it
 * @param note how sure it is (an interval, a p-value, a count), or why it is missing
 */
public record EvidenceRow(String label, Optional<String> value, String unit, String note) {
  public EvidenceRow {
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(note, "note");
  }

  /** {@return evidence that is there} */
  public static EvidenceRow of(String label, String value, String unit, String note) {
    return new EvidenceRow(label, Optional.of(value), unit, note);
  }

  /** {@return evidence that is not there, and why} */
  public static EvidenceRow missing(String label, String why) {
    return new EvidenceRow(label, Optional.empty(), "", why);
  }

  /** {@return whether there is no value} */
  public boolean isMissing() {
    return value.isEmpty();
  }
}
