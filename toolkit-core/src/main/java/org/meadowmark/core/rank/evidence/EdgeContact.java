package org.meadowmark.core.rank.evidence;

/**
 * Scars that reach the channel's edge. A scar reaches it where its part that belongs to the segment
 * comes within half the channel's width and a tolerance of the centreline.
 *
 * @param lengthShare share of the segment's scar length on such scars, in 0–1
 * @param scarShare share of the segment's scars, in 0–1
 */
public record EdgeContact(double lengthShare, double scarShare) {}
