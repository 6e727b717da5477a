package org.meadowmark.core.rank.zone;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.meadowmark.core.rank.ChannelSegment;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.evidence.ScarLie;
import org.meadowmark.core.rank.evidence.ScarPattern;

/**
 * What the planning of zones takes of a segment.
 *
 * @param segment the segment
 * @param scarMetres scar length attributed to it: what a zone covers
 * @param scarMetresByCause the same by cause key
 * @param scarMetresByPattern scar length that lies in a pattern, by key of the pattern
 * @param scarredSquareMetres length times width of its scars
 * @param dataGaps what the evidence lacks, in words
 */
public record ZoneSegment(
    ChannelSegment segment,
    double scarMetres,
    Map<String, Double> scarMetresByCause,
    Map<String, Double> scarMetresByPattern,
    double scarredSquareMetres,
    List<String> dataGaps) {
  /**
   * Keeps copies of the maps and of the list that cannot be changed, the maps in key order.
   *
   * @param segment the segment
   * @param scarMetres scar length attributed to it: what a zone covers
   * @param scarMetresByCause the same by cause key
   * @param scarMetresByPattern scar length that lies in a pattern, by key of the pattern
   * @param scarredSquareMetres length times width of its scars
   * @param dataGaps what the evidence lacks, in words
   * @throws NullPointerException if a map, the list, a key or an entry of the list is null
   */
  public ZoneSegment {
    scarMetresByCause = Collections.unmodifiableMap(new TreeMap<>(scarMetresByCause));
    scarMetresByPattern = Collections.unmodifiableMap(new TreeMap<>(scarMetresByPattern));
    dataGaps = List.copyOf(dataGaps);
  }

  /**
   * {@return what zones are planned from, of a ranked segment with its evidence}
   *
   * @param ranked the segment, with rank or without
   */
  public static ZoneSegment of(RankedSegment ranked) {
    double metres = ranked.scarLengthMetres();
    Map<String, Double> byPattern = new TreeMap<>();
    if (ranked.evidence().lie().isPresent()) {
      ScarLie lie = ranked.evidence().lie().get();
      byPattern.put(ScarPattern.CORNER_CUTTING.key(), lie.insideBendShare() * metres);
      byPattern.put(ScarPattern.ALONG_EDGE.key(), lie.alongEdgeShare() * metres);
      byPattern.put(ScarPattern.SHORT_CUT.key(), lie.acrossShare() * metres);
    }
    List<String> gaps = new ArrayList<>(ranked.evidence().dataGaps());
    return new ZoneSegment(
        ranked.segment(),
        metres,
        ranked.scarLengthMetresByCause(),
        byPattern,
        ranked.evidence().scarredArea().squareMetres(),
        gaps);
  }
}
