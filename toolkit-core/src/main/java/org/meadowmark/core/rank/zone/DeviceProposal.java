package org.meadowmark.core.rank.zone;

/**
 * A device that a rule proposes for a zone, with the reason in words.
 *
 * @param cause cause of scar that the rule is for
 * @param pattern pattern of scars that the rule is for, such as corner-cutting, or "any"
 * @param share part of the zone's scar length with that cause and pattern, in 0–1
 * @param device what to put up, in words
 * @param shape shape of the mark
 * @param reason why
 * @param legalBasis the established legal basis of a regulatory mark as the user stated it, {@link
 *     #LEGAL_BASIS_MISSING} until then, {@link #LEGAL_BASIS_NOT_NEEDED} where the device is no
 *     regulatory mark
 * @param source where the rule comes from
 */
public record DeviceProposal(
    String cause,
    String pattern,
    double share,
    String device,
    MarkShape shape,
    String reason,
    String legalBasis,
    String source) {

  /** Nobody has stated the legal basis of a mark that needs one. */
  public static final String LEGAL_BASIS_MISSING = "missing";

  /** The device regulates nothing. */
  public static final String LEGAL_BASIS_NOT_NEEDED = "not a regulatory mark";
}
