package org.meadowmark.core.model;

/** What a layer stands for in a survey. */
public enum LayerRole {
  SCARS("scars", "scar lines and scar polygons"),
  BEDS("beds", "seagrass or eelgrass bed polygons"),
  CHANNELS("channels", "channel centrelines"),
  MANAGEMENT_AREAS("management_areas", "polygons that totals are reported for"),
  SURVEYED_AREA("surveyed_area", "polygons that were looked at in this survey"),
  BARRIERS("barriers", "land and structures that boats and fish cannot cross"),
  DEPTH("depth", "water depth, a grid or points");

  private final String key;
  private final String description;

  LayerRole(String key, String description) {
    this.key = key;
    this.description = description;
  }

  /** {@return name used in a survey file and in messages} */
  public String key() {
    return key;
  }

  /** {@return one phrase for help texts} */
  public String description() {
    return description;
  }
}
