package org.meadowmark.core.model;

import java.util.OptionalDouble;

/** Water depth over the analysis grid. */
@FunctionalInterface
public interface DepthField {
  /** No depth is known anywhere. */
  DepthField UNKNOWN = (x, y) -> OptionalDouble.empty();

  /**
   * {@return depth in metres, positive downwards, or empty where none is known}
   *
   * @param x easting on the analysis grid, in metres
   * @param y northing on the analysis grid, in metres
   */
  OptionalDouble depthMetres(double x, double y);
}
