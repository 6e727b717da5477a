package org.meadowmark.core.change.effect;

import java.util.List;
import org.meadowmark.core.survey.ExposureBasis;

/**
 * New scars beside one channel segment, season by season.
 *
 * @param segmentId the segment
 * @param lengthMetres ground length of the segment
 * @param newScarMetres length of new scar attributed to it, one figure a season, in metres
 * @param bedHectares bed within reach of it that both surveys of the season looked at
 */
public record SegmentSeasons(
    String segmentId, double lengthMetres, List<Double> newScarMetres, List<Double> bedHectares) {
  private static final double METRES_A_KILOMETRE = 1_000;

  /**
   * Keeps copies of the lists, and checks them.
   *
   * @param segmentId the segment
   * @param lengthMetres ground length of the segment
   * @param newScarMetres length of new scar attributed to it, one figure a season, in metres
   * @param bedHectares bed within reach of it that both surveys of the season looked at
   * @throws IllegalArgumentException if the lists differ in length or a figure is negative or not
   *     finite
   */
  public SegmentSeasons {
    newScarMetres = List.copyOf(newScarMetres);
    bedHectares = List.copyOf(bedHectares);
    if (newScarMetres.size() != bedHectares.size()) {
      throw new IllegalArgumentException("every season has metres and hectares");
    }
    for (int season = 0; season < newScarMetres.size(); season++) {
      if (!isAmount(newScarMetres.get(season)) || !isAmount(bedHectares.get(season))) {
        throw new IllegalArgumentException(
            segmentId + ": no amounts: " + newScarMetres + ", " + bedHectares);
      }
    }
  }

  private static boolean isAmount(double value) {
    return value >= 0 && !Double.isInfinite(value);
  }

  /** Exposure in a season: hectares of bed, or kilometres of channel beside surveyed bed. */
  double exposure(ExposureBasis basis, int season) {
    double hectares = bedHectares.get(season);
    return switch (basis) {
      case BED -> hectares;
      case CHANNEL -> hectares > 0 ? lengthMetres / METRES_A_KILOMETRE : 0;
    };
  }

  /** Least bed in reach in any season, in hectares. */
  double leastBedHectares() {
    return bedHectares.stream().mapToDouble(Double::doubleValue).min().orElse(0);
  }
}
