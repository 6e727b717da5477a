package org.meadowmark.core.change.effect;

import java.util.OptionalDouble;

/**
 * What a channel segment is in the comparison, and why.
 *
 * @param segmentId the segment
 * @param part what it is
 * @param reason why, in words
 * @param rateBefore rate before the first marker, drawn towards the mean of all segments; empty
 *     where there is no season before or no exposure
 */
public record SegmentRole(String segmentId, Part part, String reason, OptionalDouble rateBefore) {

  /** Part of a segment in the comparison. */
  public enum Part {
    /** Has a marker, with a season before it and one after. */
    MARKED("marked"),
    /** Stands for what happens without a marker. */
    CONTROL("control"),
    /** So near to a marked segment that damage may have moved there. */
    BESIDE("beside"),
    /** Takes no part. */
    LEFT_OUT("left out");

    private final String label;

    Part(String label) {
      this.label = label;
    }

    /** {@return word for tables} */
    public String label() {
      return label;
    }
  }
}
