package org.meadowmark.core.rank.evidence;

/**
 * Depth of the water at the scars of a segment, as the depth layer gives it: on the layer's datum,
 * without the tide.
 *
 * @param knownShare share of scar length where a depth is known, in 0–1
 * @param shallowShare share of that length where it is less than the boat's draft, in 0–1
 * @param medianMetres median over scars of their mean depth, weighted by length
 */
public record ScarDepth(double knownShare, double shallowShare, double medianMetres) {}
