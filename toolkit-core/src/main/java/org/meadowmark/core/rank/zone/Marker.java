package org.meadowmark.core.rank.zone;

import org.locationtech.jts.geom.Point;

/**
 * A proposed position of a mark, on the channel's edge.
 *
 * @param id zone id and a number, as in Z1-M2
 * @param zoneId the zone
 * @param segmentId the segment it stands beside
 * @param device what to put up, in words
 * @param shape shape of the mark
 * @param reason why here: {@link #ZONE_END} or {@link #SPACING}
 * @param placement where it was put and why there: on the edge, or moved towards the centreline
 *     because land is in the way
 * @param geometry position on the analysis grid
 * @param bearingDegrees true bearing, clockwise from north in 0–360, that the mark faces: towards
 *     boats that come along the channel into the zone
 */
public record Marker(
    String id,
    String zoneId,
    String segmentId,
    String device,
    MarkShape shape,
    String reason,
    String placement,
    Point geometry,
    double bearingDegrees) {

  /** The zone begins or ends here. */
  public static final String ZONE_END = "zone end";

  /** The next mark would be too far away to be seen in time. */
  public static final String SPACING = "spacing along the zone";

  /** {@return the number in the id} */
  public int number() {
    return Integer.parseInt(id.substring(id.lastIndexOf('M') + 1));
  }
}
