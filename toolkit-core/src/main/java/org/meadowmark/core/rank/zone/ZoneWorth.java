package org.meadowmark.core.rank.zone;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What is at stake in a zone.
 *
 * @param scarMetresPerSeason scar length that the zone covers in the surveyed season
 * @param scarredHectares footprint area of that length
 * @param serviceHectareYears loss that those scars stand for if nothing is done, simple form, at
 *     the middle recovery time
 * @param lowServiceHectareYears the same at the short recovery time
 * @param highServiceHectareYears the same at the long recovery time
 * @param serviceBasis how that was worked out, in words with its numbers
 * @param passages extra travel time at stated speeds
 * @param answers objections to expect and the numbers that answer them, a sentence or two each
 */
public record ZoneWorth(
    double scarMetresPerSeason,
    double scarredHectares,
    OptionalDouble serviceHectareYears,
    OptionalDouble lowServiceHectareYears,
    OptionalDouble highServiceHectareYears,
    String serviceBasis,
    List<SlowPassage> passages,
    List<String> answers) {
  /**
   * Keeps copies of the lists that cannot be changed.
   *
   * @param scarMetresPerSeason scar length that the zone covers in the surveyed season
   * @param scarredHectares footprint area of that length
   * @param serviceHectareYears loss that those scars stand for if nothing is done, simple form, at
   *     the middle recovery time
   * @param lowServiceHectareYears the same at the short recovery time
   * @param highServiceHectareYears the same at the long recovery time
   * @param serviceBasis how that was worked out, in words with its numbers
   * @param passages extra travel time at stated speeds
   * @param answers objections to expect and the numbers that answer them, a sentence or two each
   * @throws NullPointerException if a list or an entry of one is null
   */
  public ZoneWorth {
    passages = List.copyOf(passages);
    answers = List.copyOf(answers);
  }
}
