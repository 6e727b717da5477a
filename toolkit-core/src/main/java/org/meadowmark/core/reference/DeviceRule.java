package org.meadowmark.core.reference;

/**
 * Which marker a mix of causes speaks for.
 *
 * @param causeKey key of the leading cause
 * @param pattern pattern of scars that the rule is for, {@link #ANY_PATTERN} where it does not
 *     matter
 * @param device the marker, in words
 * @param reason why, in words
 * @param source where the row comes from
 */
public record DeviceRule(
    String causeKey, String pattern, String device, String reason, String source) {

  /** The rule holds whatever pattern the scars make. */
  public static final String ANY_PATTERN = "any";
}
