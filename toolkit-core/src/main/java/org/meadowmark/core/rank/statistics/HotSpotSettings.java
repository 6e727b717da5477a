package org.meadowmark.core.rank.statistics;

/**
 * Choices of the hot-spot test.
 *
 * @param neighbourMetres segments whose middles are at most so far apart along the channels are
 *     neighbours, metres
 * @param permutations draws for every pseudo p-value; small ones are followed further, see {@link
 *     NetworkHotSpots}
 * @param falseDiscoveryRate share of flagged segments that may be false alarms, on average
 * @param minimumExposureHectares segments with less bed in reach get no rate, hectares
 * @param minimumTestedHectares segments with less bed in reach are not tested, hectares; a rate on
 *     little bed is as much a matter of how much of a scar lies beside the bed
 * @param seed seed of the draws
 */
public record HotSpotSettings(
    double neighbourMetres,
    int permutations,
    double falseDiscoveryRate,
    double minimumExposureHectares,
    double minimumTestedHectares,
    long seed) {
  /**
   * Refuses figures out of their limits.
   *
   * @param neighbourMetres segments whose middles are at most so far apart along the channels are
   *     neighbours, metres
   * @param permutations draws for every pseudo p-value; small ones are followed further, see {@link
   *     NetworkHotSpots}
   * @param falseDiscoveryRate share of flagged segments that may be false alarms, on average
   * @param minimumExposureHectares segments with less bed in reach get no rate, hectares
   * @param minimumTestedHectares segments with less bed in reach are not tested, hectares; a rate
   *     on little bed is as much a matter of how much of a scar lies beside the bed
   * @param seed seed of the draws
   * @throws IllegalArgumentException if neighbourMetres is negative, permutations are less than 1,
   *     the false discovery rate is not between 0 and 1, or a least exposure is negative
   */
  public HotSpotSettings {
    require(neighbourMetres >= 0, "neighbourMetres must be 0 or more: " + neighbourMetres);
    require(permutations >= 1, "permutations must be 1 or more: " + permutations);
    require(
        falseDiscoveryRate > 0 && falseDiscoveryRate < 1,
        "falseDiscoveryRate must lie between 0 and 1: " + falseDiscoveryRate);
    require(
        minimumExposureHectares >= 0,
        "minimumExposureHectares must be 0 or more: " + minimumExposureHectares);
    require(
        minimumTestedHectares >= 0,
        "minimumTestedHectares must be 0 or more: " + minimumTestedHectares);
  }

  private static void require(boolean condition, String message) {
    if (!condition) {
      throw new IllegalArgumentException(message);
    }
  }
}
