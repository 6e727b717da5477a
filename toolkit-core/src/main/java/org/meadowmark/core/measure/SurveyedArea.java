package org.meadowmark.core.measure;

import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.meadowmark.core.model.MapArea;

/** What was looked at, as one shape. Safe for use by several threads. */
public final class SurveyedArea {
  private final Optional<PreparedGeometry> shape;

  /**
   * Joins the parts.
   *
   * @param parts polygons that were looked at; none means that everything was
   */
  public SurveyedArea(List<MapArea> parts) {
    shape =
        parts.isEmpty()
            ? Optional.empty()
            : Optional.of(
                PreparedGeometryFactory.prepare(
                    UnaryUnionOp.union(parts.stream().map(MapArea::geometry).toList())));
  }

  /**
   * {@return the part of a geometry that was looked at: itself, a piece of it, or an empty one}
   *
   * @param geometry points, lines or polygons on the analysis grid
   */
  public Geometry part(Geometry geometry) {
    if (shape.isEmpty() || geometry.isEmpty() || shape.get().contains(geometry)) {
      return geometry;
    }
    if (!shape.get().intersects(geometry)) {
      return geometry.getFactory().createEmpty(geometry.getDimension());
    }
    return OverlayNGRobust.overlay(geometry, shape.get().getGeometry(), OverlayNG.INTERSECTION);
  }
}
