package org.meadowmark.core.rank;

import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A segment with its damage.
 *
 * @param rank 1 is the highest rate; empty where no rate can be given
 * @param segment the segment
 * @param scarCount scars with a part attributed to it
 * @param scarLengthMetres scar length attributed to it
 * @param scarLengthMetresByCause the same by cause key, in key order
 * @param leadingCause cause with most length; empty text where there is none
 * @param exposureHectares surveyed bed within reach of the segment
 * @param ratePerHectare scar metres per hectare exposed; empty where too little bed is in reach
 * @param remark why there is no rate, or empty
 */
public record RankedSegment(
    OptionalInt rank,
    ChannelSegment segment,
    int scarCount,
    double scarLengthMetres,
    Map<String, Double> scarLengthMetresByCause,
    String leadingCause,
    double exposureHectares,
    OptionalDouble ratePerHectare,
    String remark) {

  RankedSegment withRank(int position) {
    return new RankedSegment(
        OptionalInt.of(position),
        segment,
        scarCount,
        scarLengthMetres,
        scarLengthMetresByCause,
        leadingCause,
        exposureHectares,
        ratePerHectare,
        remark);
  }
}
