package org.meadowmark.core.model;

/**
 * How much longer or shorter a length on the analysis grid is than on the ground (the ellipsoid).
 *
 * <p>A grid length divided by {@link #lengthFactor} is a ground length; a grid area divided by
 * {@link #areaFactor} is a ground area.
 */
public interface GroundScale {
  /** Treats grid lengths as ground lengths. */
  GroundScale NONE =
      new GroundScale() {
        @Override
        public double lengthFactor(double x, double y) {
          return 1;
        }

        @Override
        public double areaFactor(double x, double y) {
          return 1;
        }
      };

  /**
   * {@return grid length divided by ground length near a point}
   *
   * @param x easting on the analysis grid, in metres
   * @param y northing on the analysis grid, in metres
   */
  double lengthFactor(double x, double y);

  /**
   * {@return grid area divided by ground area near a point}
   *
   * @param x easting on the analysis grid, in metres
   * @param y northing on the analysis grid, in metres
   */
  double areaFactor(double x, double y);
}
