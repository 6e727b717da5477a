package org.meadowmark.core.rank.statistics;

import java.util.OptionalDouble;

/**
 * What the numbers say about one segment.
 *
 * @param rate scar metres per hectare of bed, drawn towards the mean of all segments
 * @param giStar Getis–Ord Gi* of the logarithms of the rates, over the segment and its neighbours
 *     along the channel, a z value; empty where it is undefined. It can be highest beside the
 *     segment with most scars, see {@link HotSpotFinder#CAUTION}
 * @param pValue share of random arrangements in which so many segments are as scarred or more;
 *     empty where it is undefined
 * @param adjustedPValue the same made larger for the likeness of segments side by side, and for the
 *     number of segments looked at
 * @param hotSpot whether the adjusted value is at or below the false discovery rate and the rate
 *     above the mean
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
