package org.meadowmark.core.measure;

import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.Scar;

/**
 * A scar's extent on the analysis grid, inside the surveyed area.
 *
 * @param index position of the scar in the survey
 * @param scar the scar
 * @param line its line inside the surveyed area; empty for a polygon scar
 * @param area its footprint inside the surveyed area; may be empty
 * @param lengthFactor grid length divided by ground length at the scar
 * @param fullLineLength grid length of the whole line
 * @param fullArea grid area of the whole footprint
 */
record Footprint(
    int index,
    Scar scar,
    Geometry line,
    Geometry area,
    double lengthFactor,
    double fullLineLength,
    double fullArea) {

  double areaFactor() {
    return lengthFactor * lengthFactor;
  }
}
