package org.meadowmark.core.rank;

import org.locationtech.jts.geom.LineString;

/**
 * A piece of channel of near-equal length.
 *
 * @param id stable under line direction and input order
 * @param channel name of the channel, or its id where it has no name
 * @param geometry line on the analysis grid
 * @param lengthMetres ground length
 */
public record ChannelSegment(String id, String channel, LineString geometry, double lengthMetres) {}
