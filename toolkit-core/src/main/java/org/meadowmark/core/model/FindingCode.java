package org.meadowmark.core.model;

/** Stable codes of everything the reading, checking and projecting stages can find. */
public enum FindingCode {
  UNREADABLE_FILE("file cannot be read"),
  UNREADABLE_FEATURE("feature cannot be read"),
  CRS_MISSING("coordinate reference system missing"),
  CRS_UNKNOWN("coordinate reference system unknown"),
  CRS_MISMATCH("layers in different coordinate reference systems"),
  AXES_SWAPPED("latitude and longitude swapped"),
  OUTSIDE_CRS_DOMAIN("coordinates outside the reach of the reference system"),
  ATTRIBUTE_MISSING("mapped attribute missing"),
  NULL_GEOMETRY("no geometry"),
  EMPTY_GEOMETRY("empty geometry"),
  NON_FINITE_COORDINATE("coordinate is not a finite number"),
  WRONG_GEOMETRY_TYPE("geometry type does not fit the layer"),
  INVALID_POLYGON("invalid polygon"),
  SELF_CROSSING("line crosses itself"),
  ZERO_LENGTH("zero length or zero area"),
  DUPLICATE_ID("id used more than once"),
  DUPLICATE_SCAR("same scar mapped twice"),
  SCAR_OUTSIDE_BEDS("scar outside every bed"),
  SCAR_OUTSIDE_SURVEY("scar outside the surveyed area"),
  BED_OUTSIDE_SURVEY("bed outside the surveyed area"),
  WIDTH_MISSING("no width given"),
  WIDTH_OUT_OF_RANGE("width out of range"),
  CAUSE_UNKNOWN("unknown cause"),
  SPECIES_UNKNOWN("unknown species"),
  VALUE_UNREADABLE("attribute value cannot be understood"),
  BED_OVERLAP("beds overlap"),
  BED_SLIVER("sliver between beds"),
  AREA_OVERLAP("management areas overlap"),
  CHANNEL_DUPLICATE("same channel line mapped twice"),
  CHANNEL_CROSSING("channels cross without a node"),
  CHANNEL_LOOP("channel closes on itself"),
  CHANNEL_ON_LAND("channel runs over land"),
  NO_FEATURES("layer has no usable feature"),
  NARROWER_THAN_PIXEL("narrower than the imagery can show"),
  FEW_CHECK_POINTS("positional error from few check points"),
  MARKER_UNPLACED("marker at no channel segment");

  private final String title;

  FindingCode(String title) {
    this.title = title;
  }

  /** {@return short phrase for headings and tables} */
  public String title() {
    return title;
  }
}
