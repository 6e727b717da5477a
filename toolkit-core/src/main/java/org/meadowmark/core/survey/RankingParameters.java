package org.meadowmark.core.survey;

/**
 * Choices for the evidence of channel segments and their ranking. Defaults, limits and sources are
 * rows of {@code parameters.csv}.
 *
 * @param channelHalfWidthMetres distance of a channel's edge from its centreline
 * @param edgeToleranceMetres a scar that ends this close to the edge reaches it
 * @param nearParallelDegrees scars at a smaller angle to the channel run along it
 * @param nearAcrossDegrees scars at a larger angle to the channel run across it
 * @param bendDegrees a channel that turns at least this much over a segment and its neighbours
 *     bends there
 * @param patternShare share of scar length, in 0–1, from which a segment has a pattern
 * @param hotSpotNeighbourMetres segments whose middles are at most so far apart along the channels
 *     are neighbours in the hot-spot test
 * @param hotSpotMinimumExposureHectares segments with less bed in reach are not tested
 * @param permutations random arrangements for each pseudo p-value
 * @param falseDiscoveryRate share of flagged segments that may be false alarms on average, in 0–1
 * @param boatDraftMetres typical draft: shallower water lets propeller and hull touch
 * @param scoreWeights weights of the terms of the score
 * @param scoreWeightSpread weights are drawn up to this share below and above, in 0–1
 * @param scoreDraws draws of weights and widths for the steadiness of the ranking; 0 for none
 */
public record RankingParameters(
    double channelHalfWidthMetres,
    double edgeToleranceMetres,
    double nearParallelDegrees,
    double nearAcrossDegrees,
    double bendDegrees,
    double patternShare,
    double hotSpotNeighbourMetres,
    double hotSpotMinimumExposureHectares,
    int permutations,
    double falseDiscoveryRate,
    double boatDraftMetres,
    ScoreWeights scoreWeights,
    double scoreWeightSpread,
    int scoreDraws) {

  /** {@return largest distance from the centreline of a scar that reaches the channel's edge} */
  public double edgeReachMetres() {
    return channelHalfWidthMetres + edgeToleranceMetres;
  }
}
