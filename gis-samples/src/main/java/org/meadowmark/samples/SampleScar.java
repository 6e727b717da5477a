package org.meadowmark.samples;

import java.time.LocalDate;
import java.util.Objects;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Geometry;

/**
 * A scar as one survey saw it.
 *
 * @param truthId the scar itself: the same in every survey that saw it
 * @param cause key of its cause: propeller, anchor, hull, grounding or unknown
 * @param geometry LineString, or Polygon for a grounding
 * @param widthMetres width of a line; empty for a polygon
 * @param seenOn day it was mapped
 * @param fate what became of it since the survey before
 */
public record SampleScar(
    long truthId,
    String cause,
    Geometry geometry,
    OptionalDouble widthMetres,
    LocalDate seenOn,
    Fate fate) {

  /** What became of a scar since the survey before. A healed scar is not seen at all. */
  public enum Fate {
    /** Not there before. */
    NEW,
    /** Still there, perhaps narrower. */
    PERSISTING,
    /** Still there, and longer than before. */
    EXTENDED
  }

  public SampleScar {
    Objects.requireNonNull(cause, "cause");
    Objects.requireNonNull(geometry, "geometry");
    Objects.requireNonNull(widthMetres, "widthMetres");
    Objects.requireNonNull(seenOn, "seenOn");
    Objects.requireNonNull(fate, "fate");
  }
}
