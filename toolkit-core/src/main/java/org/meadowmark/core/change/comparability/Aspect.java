package org.meadowmark.core.change.comparability;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What two surveys may differ in. */
public enum Aspect {
  /** The day within the year: leaves hide scars in one season and show them in another. */
  SEASON_OF_YEAR("season-of-year", "season of the year"),
  /** How the survey was made, in the user's words: another method may see other scars. */
  METHOD("method", "method"),
  /** Hours of looking for each hectare of bed: who looks longer sees more scars. */
  EFFORT("effort", "effort"),
  /** Secchi depth in metres: in clearer water more scars are seen. */
  WATER_CLARITY("water-clarity", "water clarity"),
  /** Pixel size of the imagery in metres: a finer one shows narrower scars. */
  RESOLUTION("resolution", "resolution"),
  /**
   * Combined accuracy of positions at 95 %, in metres: what lies within it is taken for one scar.
   */
  POSITIONAL_ACCURACY("positional-accuracy", "positional accuracy"),
  /** Share of the surveyed bed that both surveys looked at. */
  SURVEYED_AREA("surveyed-area", "surveyed area"),
  /** Reference system of the scar layers: a shift between two datums would stay. */
  REFERENCE_SYSTEM("reference-system", "reference system"),
  /**
   * Shapes of the beds: where they were drawn anew, change of the drawing and of the grass cannot
   * be told apart.
   */
  BED_LAYER("bed-layer", "bed layer"),
  /** The channels: segments, and so rates by segment, are those of the last survey's. */
  CHANNELS("channels", "channels");

  private final String key;
  private final String label;

  Aspect(String key, String label) {
    this.key = key;
    this.label = label;
  }

  /** {@return name on the command line} */
  public String key() {
    return key;
  }

  /** {@return words for people} */
  public String label() {
    return label;
  }

  /**
   * {@return the aspect of a name}
   *
   * @param key name on the command line
   */
  public static Optional<Aspect> find(String key) {
    return Arrays.stream(values()).filter(aspect -> aspect.key.equals(key)).findFirst();
  }

  /** {@return names of all aspects on the command line, in their order} */
  public static List<String> keys() {
    return Arrays.stream(values()).map(Aspect::key).toList();
  }
}
