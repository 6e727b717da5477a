package org.meadowmark.core.rank;

/**
 * The part of a scar that is attributed to a segment.
 *
 * @param scarId scar
 * @param segmentId segment
 * @param lengthMetres length of scar line
 * @param nearestMetres smallest distance to the segment over the part's sample points
 */
public record ScarShare(
    String scarId, String segmentId, double lengthMetres, double nearestMetres) {}
