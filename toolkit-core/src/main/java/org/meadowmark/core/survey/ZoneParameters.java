package org.meadowmark.core.survey;

import java.util.List;
import java.util.Optional;

/**
 * Choices for zones to mark and for what they are worth. Defaults, limits and sources are rows of
 * {@code parameters.csv}.
 *
 * @param mostZones largest number of zones
 * @param totalLengthMetres largest total length of zones
 * @param markerSpacingMetres marks along a zone are at most so far apart
 * @param deviceShare share of a zone's scar length, in 0–1, from which a cause gets a device
 * @param usualSpeedsKilometresPerHour speeds at which boats pass today, ascending
 * @param slowSpeedKilometresPerHour speed in a slow zone
 * @param recoveryLowYears time in which a scar closes, short end of the range
 * @param recoveryMiddleYears the same, middle
 * @param recoveryHighYears the same, long end
 * @param discountRate what a service of next year is worth less than one of today, in 0–1
 * @param legalBasis established legal basis of regulatory marks, where it is stated
 */
public record ZoneParameters(
    int mostZones,
    double totalLengthMetres,
    double markerSpacingMetres,
    double deviceShare,
    List<Double> usualSpeedsKilometresPerHour,
    double slowSpeedKilometresPerHour,
    double recoveryLowYears,
    double recoveryMiddleYears,
    double recoveryHighYears,
    double discountRate,
    Optional<String> legalBasis) {
  /**
   * Sorts the speeds and leaves out those given twice.
   *
   * @param mostZones largest number of zones
   * @param totalLengthMetres largest total length of zones
   * @param markerSpacingMetres marks along a zone are at most so far apart
   * @param deviceShare share of a zone's scar length, in 0–1, from which a cause gets a device
   * @param usualSpeedsKilometresPerHour speeds at which boats pass today, ascending
   * @param slowSpeedKilometresPerHour speed in a slow zone
   * @param recoveryLowYears time in which a scar closes, short end of the range
   * @param recoveryMiddleYears the same, middle
   * @param recoveryHighYears the same, long end
   * @param discountRate what a service of next year is worth less than one of today, in 0–1
   * @param legalBasis established legal basis of regulatory marks, where it is stated
   * @throws NullPointerException if there is no list of speeds
   */
  public ZoneParameters {
    usualSpeedsKilometresPerHour =
        usualSpeedsKilometresPerHour.stream().sorted().distinct().toList();
  }
}
