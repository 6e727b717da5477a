package org.meadowmark.core.rank.zone;

import org.locationtech.jts.geom.Point;

/**
 * A proposed position of a mark, on the channel's edge.
 *
 * @param id zone id and a number, as in Z1-M2
 * @param zoneId the zone
 * @param device what to put up, in words
 * @param shape shape of the mark
 * @param reason why here: "zone end" or "spacing along the zone"
 * @param geometry position on the analysis grid
 * @param bearingDegrees true bearing, clockwise from north, that the mark faces: towards boats that
 *     come along the channel into the zone
 */
public record Marker(
    String id,
    String zoneId,
    String device,
    MarkShape shape,
    String reason,
    Point geometry,
    double bearingDegrees) {}
