package org.meadowmark.core.rank.zone;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.locationtech.jts.geom.MultiLineString;

/**
 * Contiguous segments proposed for marking together.
 *
 * @param id Z1 covers most
 * @param segmentIds its segments, in the order of ids
 * @param geometry their lines on the analysis grid
 * @param lengthMetres ground length
 * @param scarMetres scar length attributed to its segments
 * @param coveredShare part of all attributed scar length, in 0–1
 * @param scarMetresByCause by cause key, in key order
 * @param worth what is at stake
 * @param devices proposals, largest share first
 * @param markers positions, in the order of ids
 * @param dataGaps what the evidence lacks, in words; empty where nothing is missing
 */
public record Zone(
    String id,
    List<String> segmentIds,
    MultiLineString geometry,
    double lengthMetres,
    double scarMetres,
    double coveredShare,
    Map<String, Double> scarMetresByCause,
    ZoneWorth worth,
    List<DeviceProposal> devices,
    List<Marker> markers,
    List<String> dataGaps) {
  /**
   * Keeps copies of the lists and of the map that cannot be changed, the map in key order.
   *
   * @param id Z1 covers most
   * @param segmentIds its segments, in the order of ids
   * @param geometry their lines on the analysis grid
   * @param lengthMetres ground length
   * @param scarMetres scar length attributed to its segments
   * @param coveredShare part of all attributed scar length, in 0–1
   * @param scarMetresByCause by cause key, in key order
   * @param worth what is at stake
   * @param devices proposals, largest share first
   * @param markers positions, in the order of ids
   * @param dataGaps what the evidence lacks, in words; empty where nothing is missing
   * @throws NullPointerException if a list, the map, an entry of a list or a key is null
   */
  public Zone {
    segmentIds = List.copyOf(segmentIds);
    scarMetresByCause = Collections.unmodifiableSortedMap(new TreeMap<>(scarMetresByCause));
    devices = List.copyOf(devices);
    markers = List.copyOf(markers);
    dataGaps = List.copyOf(dataGaps);
  }
}
