package org.meadowmark.core.rank.zone;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What is at stake in a zone.
 *
 * @param scarMetresPerSeason scar length that the zone covers in the surveyed season
 * @param scarredHectares footprint area of that length
 * @param serviceHectareYears loss that those scars stand for if nothing is done, simple form
 * @param serviceBasis how that was worked out, in words with its numbers
 * @param passages extra travel time at stated speeds
 */
public record ZoneWorth(
    double scarMetresPerSeason,
    double scarredHectares,
    OptionalDouble serviceHectareYears,
    String serviceBasis,
    List<SlowPassage> passages) {
  public ZoneWorth {
    passages = List.copyOf(passages);
  }
}
