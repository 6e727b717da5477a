package org.meadowmark.core.rank.statistics;

import java.util.OptionalDouble;

/**
 * What the numbers say about one segment.
 *
 * @param rate scar metres per hectare of bed, drawn towards the mean of all segments
 * @param giStar Getis–Ord Gi* over the segment and its neighbours along the channel, a z value;
 *     empty where it is undefined
 * @param pValue share of random arrangements in which the surroundings are as scarred or more;
 *     empty where it is undefined
 * @param adjustedPValue the same adjusted for the number of segments looked at
 * @param hotSpot whether the adjusted value is at or below the false discovery rate
 * @param rateRemark why there is no rate, or empty
 * @param hotSpotRemark why there is no Gi* or no p-value, or empty
 */
public record SegmentStatistics(
    ShrunkenRate rate,
    OptionalDouble giStar,
    OptionalDouble pValue,
    OptionalDouble adjustedPValue,
    boolean hotSpot,
    String rateRemark,
    String hotSpotRemark) {}
