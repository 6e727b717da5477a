package org.meadowmark.core.measure;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.GroundScale;

/**
 * One scale for everything in a bed.
 *
 * @param lengthFactor grid length divided by ground length
 * @param areaFactor grid area divided by ground area
 */
record UniformScale(double lengthFactor, double areaFactor) implements GroundScale {
  /** The scale at the middle of a bed. */
  static UniformScale at(Geometry bed, GroundScale scale) {
    Coordinate centre = bed.getEnvelopeInternal().centre();
    return new UniformScale(
        scale.lengthFactor(centre.x, centre.y), scale.areaFactor(centre.x, centre.y));
  }

  @Override
  public double lengthFactor(double x, double y) {
    return lengthFactor;
  }

  @Override
  public double areaFactor(double x, double y) {
    return areaFactor;
  }
}
