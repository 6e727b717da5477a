package org.meadowmark.core.rank.zone;

import java.util.List;

/**
 * The zones proposed for a survey.
 *
 * @param zones by id
 * @param mostZones limit that was set
 * @param totalLengthMetres limit that was set on the zones' total length
 * @param method how the choice was made, in words: programme, solver
 * @param best the choice: what it covers, what could be covered at most, what worst-first covers
 * @param curve cover against length, by length
 * @param cautions what must stand on every proposal
 */
public record ZonePlan(
    List<Zone> zones,
    int mostZones,
    double totalLengthMetres,
    String method,
    CoverPoint best,
    List<CoverPoint> curve,
    List<String> cautions) {
  /**
   * Keeps copies of the lists that cannot be changed.
   *
   * @param zones by id
   * @param mostZones limit that was set
   * @param totalLengthMetres limit that was set on the zones' total length
   * @param method how the choice was made, in words: programme, solver
   * @param best the choice: what it covers, what could be covered at most, what worst-first covers
   * @param curve cover against length, by length
   * @param cautions what must stand on every proposal
   * @throws NullPointerException if a list or an entry of one is null
   */
  public ZonePlan {
    zones = List.copyOf(zones);
    curve = List.copyOf(curve);
    cautions = List.copyOf(cautions);
  }
}
