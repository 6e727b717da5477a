package org.meadowmark.samples;

import java.time.LocalDate;

/**
 * What scars and channels to invent on beds that exist already.
 *
 * @param seed everything is drawn from it
 * @param scars number of scars
 * @param hotSpots number of channel stretches beside which scars are more frequent
 * @param hotSpotElevation how many times more frequent, for the same area of bed
 * @param hotSpotReachMetres how far from its stretch a hot spot reaches
 * @param channelEnds number of places that the invented channels join
 * @param surveyDate first day of the survey
 */
public record ScarSettings(
    long seed,
    int scars,
    int hotSpots,
    double hotSpotElevation,
    double hotSpotReachMetres,
    int channelEnds,
    LocalDate surveyDate) {

  /**
   * @throws IllegalArgumentException if a number is negative, the elevation is below 1, the reach
   *     is not above 0, or there are fewer than two channel ends or more than 500
   */
  public ScarSettings {
    if (scars < 0 || hotSpots < 0) {
      throw new IllegalArgumentException("numbers of scars and hot spots must be 0 or more");
    }
    if (!(hotSpotElevation >= 1) || !(hotSpotReachMetres > 0)) {
      throw new IllegalArgumentException("elevation must be 1 or more and reach above 0");
    }
    if (channelEnds < 2 || channelEnds > 500) {
      throw new IllegalArgumentException("channel ends must be from 2 to 500: " + channelEnds);
    }
  }

  /** Scars with twelve hot spots, eight times the usual rate within 150 m, and forty ends. */
  public static ScarSettings of(long seed, int scars) {
    return new ScarSettings(seed, scars, 12, 8, 150, 40, LocalDate.of(2026, 6, 14));
  }
}
