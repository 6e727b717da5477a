package org.meadowmark.core.model;

/** What a layer stands for in a survey. */
public enum LayerRole {
  /** Scars: lines with a width, or polygons. A survey needs at least one such layer. */
  SCARS("scars", "scar lines and scar polygons"),
  /** Beds of seagrass or eelgrass, as polygons. A survey needs at least one such layer. */
  BEDS("beds", "seagrass or eelgrass bed polygons"),
  /** Centrelines of channels, which damage is attributed to and which are ranked. */
  CHANNELS("channels", "channel centrelines"),
  /** Polygons that totals are reported for, such as the parts of a reserve; they may overlap. */
  MANAGEMENT_AREAS("management_areas", "polygons that totals are reported for"),
  /** Polygons that were looked at in this survey; without them everything counts as looked at. */
  SURVEYED_AREA("surveyed_area", "polygons that were looked at in this survey"),
  /** Land and structures that boats and fish cannot cross, as polygons or lines. */
  BARRIERS("barriers", "land and structures that boats and fish cannot cross"),
  /** Water depth, as a grid or as points with a depth. */
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
