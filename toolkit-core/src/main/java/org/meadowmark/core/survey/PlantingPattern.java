package org.meadowmark.core.survey;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** How rows of planting units lie to each other. */
public enum PlantingPattern {
  /** Rows one spacing apart, units side by side. */
  SQUARE("square", 1),
  /** Rows √3/2 of a spacing apart, units of every second row between those of the next. */
  HEXAGONAL("hexagonal", Math.sqrt(3) / 2);

  private final String key;
  private final double rowSpacings;

  PlantingPattern(String key, double rowSpacings) {
    this.key = key;
    this.rowSpacings = rowSpacings;
  }

  /** {@return name used in a survey file} */
  public String key() {
    return key;
  }

  /** {@return distance of rows in spacings} */
  public double rowSpacings() {
    return rowSpacings;
  }

  static Optional<PlantingPattern> find(String key) {
    return Arrays.stream(values()).filter(pattern -> pattern.key.equals(key)).findFirst();
  }

  static List<String> keys() {
    return Arrays.stream(values()).map(PlantingPattern::key).toList();
  }
}
