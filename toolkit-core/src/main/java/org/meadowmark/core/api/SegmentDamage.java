package org.meadowmark.core.api;

import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.meadowmark.core.rank.RankedSegment;

/**
 * The damage along a segment of channel.
 *
 * @param rank 1 is the highest score; empty where no rate can be given
 * @param id id of the segment, the same whatever the order of the input
 * @param channel name of the channel, or its id where it has no name
 * @param lengthMetres length of the segment
 * @param scarCount scars with a part attributed to it
 * @param scarLengthMetres scar length attributed to it
 * @param exposureHectares surveyed bed within reach of the segment
 * @param scarMetresPerHectare scar length divided by that bed; empty where too little bed is in
 *     reach
 * @param score score that the rank is by (0–1); empty where no rate can be given
 * @param remark why there is no rate, or empty
 */
public record SegmentDamage(
    OptionalInt rank,
    String id,
    String channel,
    double lengthMetres,
    int scarCount,
    double scarLengthMetres,
    double exposureHectares,
    OptionalDouble scarMetresPerHectare,
    OptionalDouble score,
    String remark) {

  /**
   * Refuses what is missing.
   *
   * @param rank 1 is the highest score
   * @param id id of the segment
   * @param channel name of the channel
   * @param lengthMetres length of the segment
   * @param scarCount scars with a part attributed to it
   * @param scarLengthMetres scar length attributed to it
   * @param exposureHectares surveyed bed within reach of the segment
   * @param scarMetresPerHectare scar length divided by that bed
   * @param score score that the rank is by (0–1)
   * @param remark why there is no rate, or empty
   * @throws NullPointerException if anything is null
   */
  public SegmentDamage {
    Objects.requireNonNull(rank, "rank");
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(channel, "channel");
    Objects.requireNonNull(scarMetresPerHectare, "scarMetresPerHectare");
    Objects.requireNonNull(score, "score");
    Objects.requireNonNull(remark, "remark");
  }

  static SegmentDamage of(RankedSegment ranked) {
    return new SegmentDamage(
        ranked.rank(),
        ranked.segment().id(),
        ranked.segment().channel(),
        ranked.segment().lengthMetres(),
        ranked.scarCount(),
        ranked.scarLengthMetres(),
        ranked.exposureHectares(),
        ranked.ratePerHectare(),
        ranked.score().map(s -> OptionalDouble.of(s.score())).orElse(OptionalDouble.empty()),
        ranked.remark());
  }
}
