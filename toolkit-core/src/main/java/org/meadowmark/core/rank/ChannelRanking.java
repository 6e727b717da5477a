package org.meadowmark.core.rank;

import java.util.List;

/**
 * Segments ranked by score.
 *
 * @param segments highest score first; those without a rate last; ties by id
 * @param shares scar lengths by scar id, then segment id
 * @param scarLengthMetres length of all scar lines
 * @param attributedMetres the part attributed to a segment
 * @param outOfReachMetres the part farther from every segment than the reach
 * @param blockedMetres the part with a segment in reach but only across a barrier
 * @param polygonScarCount scars mapped as polygons, which have no length to attribute
 */
public record ChannelRanking(
    List<RankedSegment> segments,
    List<ScarShare> shares,
    double scarLengthMetres,
    double attributedMetres,
    double outOfReachMetres,
    double blockedMetres,
    int polygonScarCount) {
  /**
   * Keeps copies of the lists that cannot be changed.
   *
   * @param segments highest score first; those without a rate last; ties by id
   * @param shares scar lengths by scar id, then segment id
   * @param scarLengthMetres length of all scar lines
   * @param attributedMetres the part attributed to a segment
   * @param outOfReachMetres the part farther from every segment than the reach
   * @param blockedMetres the part with a segment in reach but only across a barrier
   * @param polygonScarCount scars mapped as polygons, which have no length to attribute
   * @throws NullPointerException if a list or an entry of one is null
   */
  public ChannelRanking {
    segments = List.copyOf(segments);
    shares = List.copyOf(shares);
  }
}
