package org.meadowmark.core.change.comparability;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What two surveys may differ in. */
public enum Aspect {
  SEASON_OF_YEAR("season-of-year", "season of the year"),
  METHOD("method", "method"),
  EFFORT("effort", "effort"),
  WATER_CLARITY("water-clarity", "water clarity"),
  RESOLUTION("resolution", "resolution"),
  POSITIONAL_ACCURACY("positional-accuracy", "positional accuracy"),
  SURVEYED_AREA("surveyed-area", "surveyed area"),
  REFERENCE_SYSTEM("reference-system", "reference system"),
  BED_LAYER("bed-layer", "bed layer"),
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

  /** {@return the aspect of a name} */
  public static Optional<Aspect> find(String key) {
    return Arrays.stream(values()).filter(aspect -> aspect.key.equals(key)).findFirst();
  }

  /** Names of all. */
  public static List<String> keys() {
    return Arrays.stream(values()).map(Aspect::key).toList();
  }
}
