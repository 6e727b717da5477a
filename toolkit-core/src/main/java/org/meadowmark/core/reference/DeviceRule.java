package org.meadowmark.core.reference;

/**
 * Which marker a mix of causes speaks for.
 *
 * @param causeKey key of the leading cause
 * @param device the marker, in words
 * @param reason why, in words
 * @param source where the row comes from
 */
public record DeviceRule(String causeKey, String device, String reason, String source) {}
