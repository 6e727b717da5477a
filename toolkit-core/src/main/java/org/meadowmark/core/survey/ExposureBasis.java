package org.meadowmark.core.survey;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What new scar metres on a segment are divided by, beside years. */
public enum ExposureBasis {
  /** Hectares of surveyed bed within reach of the segment. */
  BED("bed", "ha", "m per hectare of bed in reach and year"),
  /** Kilometres of channel. */
  CHANNEL("channel", "km", "m per kilometre of channel and year");

  private final String key;
  private final String unit;
  private final String rateUnit;

  ExposureBasis(String key, String unit, String rateUnit) {
    this.key = key;
    this.unit = unit;
    this.rateUnit = rateUnit;
  }

  /** {@return name used in a survey file} */
  public String key() {
    return key;
  }

  /** {@return unit of the exposure} */
  public String unit() {
    return unit;
  }

  /** {@return unit of a rate, in words} */
  public String rateUnit() {
    return rateUnit;
  }

  static Optional<ExposureBasis> find(String key) {
    return Arrays.stream(values()).filter(basis -> basis.key.equals(key)).findFirst();
  }

  static List<String> keys() {
    return Arrays.stream(values()).map(ExposureBasis::key).toList();
  }
}
