package org.meadowmark.core.rank.evidence;

/**
 * What a survey can tell at all.
 *
 * @param depth whether there is a depth layer
 * @param connectivity whether the filling of each scar was worked out
 * @param earlier whether scars were held against those of an earlier survey
 */
public record KnownEvidence(boolean depth, boolean connectivity, boolean earlier) {}
