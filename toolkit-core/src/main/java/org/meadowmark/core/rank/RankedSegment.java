package org.meadowmark.core.rank;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.meadowmark.core.rank.evidence.SegmentEvidence;
import org.meadowmark.core.rank.score.SegmentScore;
import org.meadowmark.core.rank.statistics.SegmentStatistics;

/**
 * A segment with its damage, what speaks for a marker there, and its rank.
 *
 * @param rank 1 is the highest score; empty where no rate can be given
 * @param segment the segment
 * @param scarCount scars with a part attributed to it
 * @param scarLengthMetres scar length attributed to it
 * @param scarLengthMetresByCause the same by cause key, in key order
 * @param leadingCause cause with most length; empty text where there is none
 * @param exposureHectares surveyed bed within reach of the segment
 * @param ratePerHectare scar metres per hectare exposed; empty where too little bed is in reach
 * @param remark why there is no rate, or empty
 * @param evidence the evidence beside the rate
 * @param statistics shrunken rate and hot-spot test
 * @param score the score that the rank is by; empty where no rate can be given
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
    String remark,
    SegmentEvidence evidence,
    SegmentStatistics statistics,
    Optional<SegmentScore> score) {

  /**
   * {@return part of the scar length with a cause, in 0–1; empty without scars}
   *
   * @param cause key of the cause; one that no scar has gives 0
   */
  public OptionalDouble causeShare(String cause) {
    return scarLengthMetres > 0
        ? OptionalDouble.of(scarLengthMetresByCause.getOrDefault(cause, 0.0) / scarLengthMetres)
        : OptionalDouble.empty();
  }

  RankedSegment ranked(int position, SegmentScore found) {
    return new RankedSegment(
        OptionalInt.of(position),
        segment,
        scarCount,
        scarLengthMetres,
        scarLengthMetresByCause,
        leadingCause,
        exposureHectares,
        ratePerHectare,
        remark,
        evidence,
        statistics,
        Optional.of(found));
  }
}
