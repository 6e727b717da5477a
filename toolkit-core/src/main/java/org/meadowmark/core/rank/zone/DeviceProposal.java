package org.meadowmark.core.rank.zone;

/**
 * A device that a rule proposes for a zone, with the reason in words.
 *
 * @param cause cause of scar that the rule is for
 * @param share part of the zone's scar length with that cause, in 0–1
 * @param device what to put up, in words
 * @param shape shape of the mark
 * @param reason why
 * @param source where the rule comes from
 */
public record DeviceProposal(
    String cause, double share, String device, MarkShape shape, String reason, String source) {}
