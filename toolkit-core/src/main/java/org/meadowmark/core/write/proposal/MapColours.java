package org.meadowmark.core.write.proposal;

import java.util.List;

/**
 * Colours of the map: pale water and land, beds in one hue that darkens with severity, strong lines
 * on top. The order of the beds and the kinds of scar can be told apart with each common kind of
 * colour blindness, and scars stand out against every bed.
 */
public final class MapColours {
  /** Text, frames, ticks and arrows: what must be read first. */
  public static final String INK = "#1D3344";

  /** Captions and other text of second rank, and the outlines of marks. */
  public static final String SOFT_INK = "#536875";

  /** Ground of the map, under everything else. */
  public static final String WATER = "#EEF5F8";

  /** Land and structures, which no boat crosses. */
  public static final String LAND = "#EDE4CF";

  /** Shores: the edges of {@link #LAND}. */
  public static final String LAND_EDGE = "#A8977A";

  /** Edges of beds, of every severity class. */
  public static final String BED_EDGE = "#5B8E78";

  /** Thin lines of latitude and longitude under the lines of the survey. */
  public static final String GRATICULE = "#B9CBD3";

  /** Lines of channels, and channel marks. */
  public static final String CHANNEL = "#3C7F9B";

  /** Broad bright band of a proposed zone, under its line. */
  public static final String ZONE = "#F6C21C";

  /** Line of a proposed zone, along the middle of its band. */
  public static final String ZONE_LINE = "#7A4B00";

  /** Halo of lines and labels, and the body of marks. */
  public static final String WHITE = "#FFFFFF";

  /** A bed whose severity is not known. */
  public static final String BED_UNKNOWN = "#E3E6E4";

  /** Orange of regulatory marks, 33 CFR 62.33. */
  public static final String MARK_ORANGE = "#E8640C";

  /** Blue of the band of a mooring buoy, 33 CFR 62.35. */
  public static final String MARK_BLUE = "#1C5FA8";

  private static final List<String> BEDS = List.of("#E9F0CF", "#C5DDB3", "#8FC09C", "#4F9581");
  private static final List<String> SCARS =
      List.of("#0F1494", "#937C2D", "#AB3240", "#894CAF", "#6F1900", "#3A3847");

  private MapColours() {}

  /**
   * {@return tint of a severity class by its place among the classes, lightest first}
   *
   * @param place place of the class from 0, lightest damage first; one beyond the ends gets the
   *     tint of the nearest end
   * @param classes how many classes there are; the tints are spread over them
   */
  public static String bed(int place, int classes) {
    int step = classes <= 1 ? 0 : Math.round(place * (BEDS.size() - 1f) / (classes - 1f));
    return BEDS.get(Math.max(0, Math.min(step, BEDS.size() - 1)));
  }

  /**
   * {@return colour of scars by the place of their cause among the causes}
   *
   * @param place place of the cause from 0, in the order of the reference table; colours repeat
   *     after the sixth
   */
  public static String scar(int place) {
    return SCARS.get(Math.floorMod(place, SCARS.size()));
  }
}
