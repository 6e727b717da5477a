package org.meadowmark.core.model;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Geometry;

/**
 * A mapped scar: a line with a width, or a polygon (grounding basin, anchor hole).
 *
 * @param id unique in the layer
 * @param ref where it was read
 * @param geometry LineString, MultiLineString, Polygon or MultiPolygon
 * @param cause key of a row of {@code scar-causes.csv}
 * @param widthMetres ground width of a line; 0 for a polygon, whose outline is its extent
 * @param widthSource where the width came from
 * @param date when it was mapped, where the layer says
 * @param excavationMetres depth of the trench below the bottom around it, 0 or more, where the
 *     layer says
 * @param notes what was noted on the ground and the grass there
 */
public record Scar(
    String id,
    FeatureRef ref,
    Geometry geometry,
    String cause,
    double widthMetres,
    WidthSource widthSource,
    Optional<LocalDate> date,
    OptionalDouble excavationMetres,
    SiteNotes notes)
    implements Located {

  /** Where a scar's width came from. */
  public enum WidthSource {
    /** Measured: an attribute of the scar. */
    MEASURED,
    /** The default of its cause. */
    CAUSE_DEFAULT,
    /** The scar is a polygon: no width is needed. */
    OUTLINE
  }

  /**
   * Refuses a scar of which a part is missing, or whose width is none.
   *
   * @param id unique in the layer
   * @param ref where it was read
   * @param geometry LineString, MultiLineString, Polygon or MultiPolygon
   * @param cause key of a row of {@code scar-causes.csv}
   * @param widthMetres ground width of a line; 0 for a polygon, whose outline is its extent
   * @param widthSource where the width came from
   * @param date when it was mapped, where the layer says
   * @param excavationMetres depth of the trench below the bottom around it, 0 or more, where the
   *     layer says
   * @param notes what was noted on the ground and the grass there
   * @throws NullPointerException if anything is null
   * @throws IllegalArgumentException if the width is negative or not finite
   */
  public Scar {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(ref, "ref");
    Objects.requireNonNull(geometry, "geometry");
    Objects.requireNonNull(cause, "cause");
    Objects.requireNonNull(widthSource, "widthSource");
    Objects.requireNonNull(date, "date");
    Objects.requireNonNull(excavationMetres, "excavationMetres");
    Objects.requireNonNull(notes, "notes");
    if (!(widthMetres >= 0) || Double.isInfinite(widthMetres)) {
      throw new IllegalArgumentException("scar width must be 0 or more: " + widthMetres);
    }
  }

  /**
   * A scar with nothing noted on its ground.
   *
   * @param id unique in the layer
   * @param ref where it was read
   * @param geometry LineString, MultiLineString, Polygon or MultiPolygon
   * @param cause key of a row of {@code scar-causes.csv}
   * @param widthMetres ground width of a line; 0 for a polygon, whose outline is its extent
   * @param widthSource where the width came from
   * @param date when it was mapped, where the layer says
   * @param excavationMetres depth of the trench below the bottom around it, 0 or more, where the
   *     layer says
   * @throws NullPointerException if anything is null
   * @throws IllegalArgumentException if the width is negative or not finite
   */
  public Scar(
      String id,
      FeatureRef ref,
      Geometry geometry,
      String cause,
      double widthMetres,
      WidthSource widthSource,
      Optional<LocalDate> date,
      OptionalDouble excavationMetres) {
    this(
        id, ref, geometry, cause, widthMetres, widthSource, date, excavationMetres, SiteNotes.NONE);
  }

  /**
   * A scar whose excavation was not mapped.
   *
   * @param id unique in the layer
   * @param ref where it was read
   * @param geometry LineString, MultiLineString, Polygon or MultiPolygon
   * @param cause key of a row of {@code scar-causes.csv}
   * @param widthMetres ground width of a line; 0 for a polygon, whose outline is its extent
   * @param widthSource where the width came from
   * @param date when it was mapped, where the layer says
   * @throws NullPointerException if anything is null
   * @throws IllegalArgumentException if the width is negative or not finite
   */
  public Scar(
      String id,
      FeatureRef ref,
      Geometry geometry,
      String cause,
      double widthMetres,
      WidthSource widthSource,
      Optional<LocalDate> date) {
    this(id, ref, geometry, cause, widthMetres, widthSource, date, OptionalDouble.empty());
  }

  /** {@return whether the scar is mapped as a line} */
  public boolean isLine() {
    return geometry.getDimension() == 1;
  }

  @Override
  public Scar withGeometry(Geometry other) {
    return new Scar(id, ref, other, cause, widthMetres, widthSource, date, excavationMetres, notes);
  }
}
