package org.meadowmark.core.measure;

import java.util.function.Supplier;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.meadowmark.core.model.Scar;

/**
 * A scar's extent on the analysis grid, inside the surveyed area.
 *
 * @param index position of the scar in the survey
 * @param scar the scar
 * @param line its line inside the surveyed area; empty for a polygon scar
 * @param shape gives its footprint inside the surveyed area
 * @param lengthFactor grid length divided by ground length at the scar
 * @param fullLineLength grid length of the whole line
 * @param fullArea grid area of the whole footprint
 */
record Footprint(
    int index,
    Scar scar,
    Geometry line,
    Supplier<Geometry> shape,
    double lengthFactor,
    double fullLineLength,
    double fullArea) {
  /** A footprint may be a rounding error larger than its width says. */
  private static final double LARGER = 1.001;

  /** Its footprint inside the surveyed area; may be empty. Of very many scars it is made anew. */
  Geometry area() {
    return shape.get();
  }

  /** A box around it. */
  Envelope extent() {
    Envelope extent = new Envelope(scar.geometry().getEnvelopeInternal());
    if (scar.isLine()) {
      extent.expandBy(scar.widthMetres() * lengthFactor / 2);
    }
    return extent;
  }

  /** Whether a straight way may touch the footprint; quicker than to make the footprint. */
  boolean mayMeet(Coordinate from, Coordinate to) {
    if (!scar.isLine()) {
      return true;
    }
    double reach = LARGER * scar.widthMetres() * lengthFactor / 2;
    for (Object part : LinearComponentExtracter.getLines(scar.geometry())) {
      Coordinate[] vertices = ((LineString) part).getCoordinates();
      for (int i = 0; i + 1 < vertices.length; i++) {
        if (Distance.segmentToSegment(from, to, vertices[i], vertices[i + 1]) <= reach) {
          return true;
        }
      }
    }
    return false;
  }

  double areaFactor() {
    return lengthFactor * lengthFactor;
  }
}
