package org.meadowmark.core.model;

/** Stable codes of everything the reading, checking and projecting stages can find. */
public enum FindingCode {
  /** A file is missing, may not be read, is not of its format, or has no such layer. */
  UNREADABLE_FILE("file cannot be read"),
  /** One feature of a file that can be read otherwise cannot be read; it is left out. */
  UNREADABLE_FEATURE("feature cannot be read"),
  /** Neither the survey nor the file says what reference system a layer is in. */
  CRS_MISSING("coordinate reference system missing"),
  /** A reference system is named or described in a way that cannot be looked up or used. */
  CRS_UNKNOWN("coordinate reference system unknown"),
  /**
   * The survey and the file, two records of a file, or two layers name different reference systems,
   * or a layer lies apart from all others.
   */
  CRS_MISMATCH("layers in different coordinate reference systems"),
  /**
   * Latitudes are beyond 90°, or a layer lies on the others only with latitude and longitude
   * exchanged.
   */
  AXES_SWAPPED("latitude and longitude swapped"),
  /** A place is out of reach of the analysis grid, or where no UTM zone is. */
  OUTSIDE_CRS_DOMAIN("coordinates outside the reach of the reference system"),
  /**
   * An attribute that the survey maps a property to is not in the layer, or a layer of the role has
   * no use for the property.
   */
  ATTRIBUTE_MISSING("mapped attribute missing"),
  /** A feature has no geometry at all. */
  NULL_GEOMETRY("no geometry"),
  /** A geometry has no coordinate. */
  EMPTY_GEOMETRY("empty geometry"),
  /** An ordinate is infinite or not a number. */
  NON_FINITE_COORDINATE("coordinate is not a finite number"),
  /** A geometry is of a type that the layer's role does not take, such as points among beds. */
  WRONG_GEOMETRY_TYPE("geometry type does not fit the layer"),
  /**
   * A polygon whose rings cross, touch or are not closed as the Simple Features standard asks;
   * repaired where it can be, also where projecting made it so.
   */
  INVALID_POLYGON("invalid polygon"),
  /** A line crosses or touches itself; it is used as it is. */
  SELF_CROSSING("line crosses itself"),
  /** A line without length or a polygon without area, or such a part of a feature. */
  ZERO_LENGTH("zero length or zero area"),
  /**
   * An id that another feature of the layer, or of another layer of the same role, has too; or a
   * segment with several markers.
   */
  DUPLICATE_ID("id used more than once"),
  /** A scar with the same shape as another; the copy is left out. */
  DUPLICATE_SCAR("same scar mapped twice"),
  /** A scar lies outside every bed, in whole. */
  SCAR_OUTSIDE_BEDS("scar outside every bed"),
  /** A scar lies outside the surveyed area. */
  SCAR_OUTSIDE_SURVEY("scar outside the surveyed area"),
  /** A bed lies outside the surveyed area. */
  BED_OUTSIDE_SURVEY("bed outside the surveyed area"),
  /**
   * A scar line has no width; the default of its cause is used, or the scar is left out where there
   * is none.
   */
  WIDTH_MISSING("no width given"),
  /**
   * A width that is not above 0, or is outside {@code minimum_width_m} to {@code maximum_width_m}.
   */
  WIDTH_OUT_OF_RANGE("width out of range"),
  /**
   * A scar has no cause, or one that is not in the table of causes; it counts as {@code unknown}.
   */
  CAUSE_UNKNOWN("unknown cause"),
  /** A bed's species is not in the table of species; it counts as {@code unknown}. */
  SPECIES_UNKNOWN("unknown species"),
  /** A value, such as a date or a depth, cannot be understood or does not look as it should. */
  VALUE_UNREADABLE("attribute value cannot be understood"),
  /** Beds lie over each other. */
  BED_OVERLAP("beds overlap"),
  /** A gap or an overlap between beds that is narrower than {@code sliver_tolerance_m}. */
  BED_SLIVER("sliver between beds"),
  /** Management areas lie over each other; what lies in several counts in each of them. */
  AREA_OVERLAP("management areas overlap"),
  /** Two channels run along the same line; the copy is left out. */
  CHANNEL_DUPLICATE("same channel line mapped twice"),
  /** Channels cross with no vertex in common; they are joined there. */
  CHANNEL_CROSSING("channels cross without a node"),
  /** A channel ends where it begins; it is kept as a loop. */
  CHANNEL_LOOP("channel closes on itself"),
  /** A channel runs over a barrier for some way; it is kept. */
  CHANNEL_ON_LAND("channel runs over land"),
  /** A layer that is needed is not given, or nothing in a layer can be used. */
  NO_FEATURES("layer has no usable feature"),
  /** A scar's width is less than {@code pixel_size_m}: others like it may have been missed. */
  NARROWER_THAN_PIXEL("narrower than the imagery can show"),
  /** The positional error was taken from fewer check points than FGDC-STD-007.3-1998 asks for. */
  FEW_CHECK_POINTS("positional error from few check points"),
  /** A marker has no place, or stands within reach of no channel segment. */
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
