package org.meadowmark.core.rank.evidence;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The evidence of a segment beside its rate. What cannot be known has no value, and a gap in words
 * where that is for want of data; a segment without scars has no angle, edge or depth to show.
 *
 * @param edge scars that reach the channel's edge; empty without scars
 * @param lie how scars lie to the channel; empty without scars
 * @param pattern how most of them lie
 * @param depth water depth at scars; empty without scars or where none is known
 * @param beds bed in reach
 * @param worstSeverity key of the worst severity class in reach, or empty text
 * @param meanSeverity mean severity class of the bed in reach, in 0–1
 * @param scarredArea length times width of its scars
 * @param connectivityGainHectares what filling its scars, each alone, would restore of the
 *     equivalent connected area: each scar's gain by the share of its length on the segment, added
 *     up; empty where that was not worked out
 * @param reScarredShare share of new scar length on ground scarred in an earlier season, in 0–1;
 *     empty with one season
 * @param dataGaps what is missing, in words
 */
public record SegmentEvidence(
    Optional<EdgeContact> edge,
    Optional<ScarLie> lie,
    ScarPattern pattern,
    Optional<ScarDepth> depth,
    BedsInReach beds,
    String worstSeverity,
    OptionalDouble meanSeverity,
    ScarredArea scarredArea,
    OptionalDouble connectivityGainHectares,
    OptionalDouble reScarredShare,
    List<String> dataGaps) {
  /**
   * Keeps a copy of the list that cannot be changed.
   *
   * @param edge scars that reach the channel's edge; empty without scars
   * @param lie how scars lie to the channel; empty without scars
   * @param pattern how most of them lie
   * @param depth water depth at scars; empty without scars or where none is known
   * @param beds bed in reach
   * @param worstSeverity key of the worst severity class in reach, or empty text
   * @param meanSeverity mean severity class of the bed in reach, in 0–1
   * @param scarredArea length times width of its scars
   * @param connectivityGainHectares what filling its scars, each alone, would restore of the
   *     equivalent connected area: each scar's gain by the share of its length on the segment,
   *     added up; empty where that was not worked out
   * @param reScarredShare share of new scar length on ground scarred in an earlier season, in 0–1;
   *     empty with one season
   * @param dataGaps what is missing, in words
   * @throws NullPointerException if the list or an entry of it is null
   */
  public SegmentEvidence {
    dataGaps = List.copyOf(dataGaps);
  }
}
