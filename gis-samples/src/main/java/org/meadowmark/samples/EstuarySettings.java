package org.meadowmark.samples;

import java.time.LocalDate;

/**
 * What an invented estuary should be like.
 *
 * @param seed everything is drawn from it
 * @param scars number of different scars over all seasons; a scar that lasts is seen in several
 * @param beds largest number of beds; the place is made as long as so many beds need, about 20 m of
 *     estuary a bed, and the smallest are left out if there are more; a short place has fewer
 * @param seasons number of yearly surveys
 * @param plantedHotSpots number of channel stretches where scars are made more frequent; with 0,
 *     scars are spread evenly over shallow bed and follow no channel at all
 * @param hotSpotElevation how many times more frequent scars are on a planted stretch, for the same
 *     length of channel beside bed
 * @param lastSurvey date of the last survey; the others are whole years before
 */
public record EstuarySettings(
    long seed,
    int scars,
    int beds,
    int seasons,
    int plantedHotSpots,
    double hotSpotElevation,
    LocalDate lastSurvey) {
  /** Settings of the bundled sample. */
  public static final EstuarySettings SAMPLE =
      new EstuarySettings(20_260_614L, 3_000, 400, 2, 6, 25, LocalDate.of(2026, 6, 14));

  private static final int FEWEST_BEDS = 100;
  private static final int MOST_BEDS = 10_000;

  /**
   * @throws IllegalArgumentException if a number is out of its range: scars from 0, beds 100 to
   *     10,000 (the place stays inside one map zone), seasons from 1, hot spots from 0, elevation
   *     from 1
   */
  public EstuarySettings {
    require(scars >= 0, "scars must be 0 or more: " + scars);
    require(beds >= FEWEST_BEDS && beds <= MOST_BEDS, "beds must be from 100 to 10,000: " + beds);
    require(seasons >= 1, "seasons must be 1 or more: " + seasons);
    require(plantedHotSpots >= 0, "hot spots must be 0 or more: " + plantedHotSpots);
    require(
        hotSpotElevation >= 1 && hotSpotElevation < 1_000_000,
        "hot-spot elevation must be 1 or more: " + hotSpotElevation);
  }

  /** The same settings with another seed. */
  public EstuarySettings withSeed(long other) {
    return new EstuarySettings(
        other, scars, beds, seasons, plantedHotSpots, hotSpotElevation, lastSurvey);
  }

  /** The same settings with another number of scars and beds. */
  public EstuarySettings withSize(int otherScars, int otherBeds) {
    return new EstuarySettings(
        seed, otherScars, otherBeds, seasons, plantedHotSpots, hotSpotElevation, lastSurvey);
  }

  /** The same settings with other hot spots. */
  public EstuarySettings withHotSpots(int number, double elevation) {
    return new EstuarySettings(seed, scars, beds, seasons, number, elevation, lastSurvey);
  }

  /** Date of a survey. */
  LocalDate surveyDate(int season) {
    return lastSurvey.minusYears(seasons - 1L - season);
  }

  private static void require(boolean condition, String message) {
    if (!condition) {
      throw new IllegalArgumentException(message);
    }
  }
}
