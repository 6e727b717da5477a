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

  /**
   * Takes the words as they are; whoever sets the table escapes them.
   *
   * @param label what it is, in words
   * @param value the value, set for people
   * @param unit its unit
   * @param note how sure it is (an interval, a p-value, a count), or why it is missing
   * @throws NullPointerException if anything is null
   */
  public EvidenceRow {
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(note, "note");
  }

  /**
   * {@return evidence that is there}
   *
   * @param label what it is, in words
   * @param value the value, set for people
   * @param unit its unit; empty text where it has none or the value names it
   * @param note how sure it is: an interval, a p-value, a count
   */
  public static EvidenceRow of(String label, String value, String unit, String note) {
    return new EvidenceRow(label, Optional.of(value), unit, note);
  }

  /**
   * {@return evidence that is not there, and why}
   *
   * @param label what it would be, in words
   * @param why why it is missing; stands where the note would
   */
  public static EvidenceRow missing(String label, String why) {
    return new EvidenceRow(label, Optional.empty(), "", why);
  }

  /** {@return whether there is no value} */
  public boolean isMissing() {
    return value.isEmpty();
  }
}
