package org.meadowmark.core.model;

/** Where true north lies on the analysis grid. */
@FunctionalInterface
public interface TrueNorth {
  /**
   * True bearing of grid north: what to add to a bearing on the grid to get the true one.
   *
   * @param x easting on the analysis grid, in metres
   * @param y northing on the analysis grid, in metres
   * @return degrees clockwise from true north, near 0
   */
  double gridNorthDegrees(double x, double y);
}
