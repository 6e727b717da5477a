package org.meadowmark.core.measure;

import java.util.function.Supplier;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
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

  double areaFactor() {
    return lengthFactor * lengthFactor;
  }
}
