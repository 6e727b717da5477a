package org.meadowmark.core.write.proposal;

import java.util.List;

/**
 * Colours of the map: pale water and land, beds in one hue that darkens with severity, strong lines
 * on top. The order of the beds and the kinds of scar can be told apart with each common kind of
 * colour blindness, and scars stand out against every bed.
 */
public final class MapColours {
  public static final String INK = "#1D3344";
  public static final String SOFT_INK = "#536875";
  public static final String WATER = "#EEF5F8";
  public static final String LAND = "#EDE4CF";
  public static final String LAND_EDGE = "#A8977A";
  public static final String BED_EDGE = "#5B8E78";
  public static final String GRATICULE = "#B9CBD3";
  public static final String CHANNEL = "#3C7F9B";
  public static final String ZONE = "#F6C21C";
  public static final String ZONE_LINE = "#7A4B00";
  public static final String WHITE = "#FFFFFF";

  /** A bed whose severity is not known. */
  public static final String BED_UNKNOWN = "#E3E6E4";

  /** Colours of regulatory marks, 33 CFR 62.33 (orange) and 62.35 (blue). */
  public static final String MARK_ORANGE = "#E8640C";

  public static final String MARK_BLUE = "#1C5FA8";

  private static final List<String> BEDS = List.of("#E9F0CF", "#C5DDB3", "#8FC09C", "#4F9581");
  private static final List<String> SCARS =
      List.of("#0F1494", "#937C2D", "#AB3240", "#894CAF", "#6F1900", "#3A3847");

  private MapColours() {}

  /** {@return tint of a severity class by its place among the classes, lightest first} */
  public static String bed(int place, int classes) {
    int step = classes <= 1 ? 0 : Math.round(place * (BEDS.size() - 1f) / (classes - 1f));
    return BEDS.get(Math.max(0, Math.min(step, BEDS.size() - 1)));
  }

  /** {@return colour of scars by the place of their cause among the causes} */
  public static String scar(int place) {
    return SCARS.get(Math.floorMod(place, SCARS.size()));
  }
}
