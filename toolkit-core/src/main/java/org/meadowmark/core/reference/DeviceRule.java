package org.meadowmark.core.reference;

import java.util.List;

/**
 * Which marker a mix of causes speaks for.
 *
 * @param causeKey key of the leading cause
 * @param pattern pattern of scars that the rule is for, {@link #ANY_PATTERN} where it does not
 *     matter
 * @param device the marker, in words
 * @param shapeKey shape of the mark, one of {@link #SHAPES}
 * @param reason why, in words
 * @param source where the row comes from
 */
public record DeviceRule(
    String causeKey, String pattern, String device, String shapeKey, String reason, String source) {

  /** The rule holds whatever pattern the scars make. */
  public static final String ANY_PATTERN = "any";

  /** Shapes that a mark may have. */
  public static final List<String> SHAPES =
      List.of(
          "danger-diamond",
          "exclusion-diamond",
          "restriction-circle",
          "information-rectangle",
          "mooring-buoy",
          "channel-mark",
          "none");
}
