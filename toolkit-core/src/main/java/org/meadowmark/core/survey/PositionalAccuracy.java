package org.meadowmark.core.survey;

/**
 * Horizontal accuracy of mapped positions by the arithmetic of the National Standard for Spatial
 * Data Accuracy.
 *
 * <p>RMSE_r² = RMSE_x² + RMSE_y². The accuracy at 95 % is 1.7308·RMSE_r where RMSE_x = RMSE_y, and
 * 2.4477·½(RMSE_x + RMSE_y) where they differ and the smaller is 0.6 to 1 times the larger. Source:
 * FGDC-STD-007.3-1998, <i>Geospatial Positioning Accuracy Standards, Part 3</i> (multipliers from
 * memory).
 *
 * @param rmseXMetres root mean square error in easting
 * @param rmseYMetres root mean square error in northing
 */
public record PositionalAccuracy(double rmseXMetres, double rmseYMetres) {
  private static final double EQUAL_AXES = 1.7308;
  private static final double UNEQUAL_AXES = 2.4477;
  private static final double LOWEST_RATIO = 0.6;

  /** Fewer check points are too few for the standard. */
  public static final int FEWEST_CHECK_POINTS = 20;

  /**
   * Refuses what is no error.
   *
   * @param rmseXMetres root mean square error in easting
   * @param rmseYMetres root mean square error in northing
   * @throws IllegalArgumentException if an error is negative or not finite
   */
  public PositionalAccuracy {
    if (!(rmseXMetres >= 0 && rmseYMetres >= 0)
        || Double.isInfinite(rmseXMetres)
        || Double.isInfinite(rmseYMetres)) {
      throw new IllegalArgumentException("errors must be 0 or more");
    }
  }

  /**
   * {@return the same error in both axes, from the radial error RMSE_r}
   *
   * @param rmseMetres radial root mean square error RMSE_r in metres, 0 or more
   * @throws IllegalArgumentException if it is negative or not finite
   */
  public static PositionalAccuracy ofRadialRmse(double rmseMetres) {
    double axis = rmseMetres / Math.sqrt(2);
    return new PositionalAccuracy(axis, axis);
  }

  /**
   * {@return the accuracy from the errors at check points: mapped minus true} The standard asks for
   * 20 points or more.
   *
   * @param errorsX mapped minus true easting of each point, in metres
   * @param errorsY mapped minus true northing of each point, in metres, in the same order
   * @throws IllegalArgumentException if there is no point, or the lists differ in length
   */
  public static PositionalAccuracy ofCheckPoints(double[] errorsX, double[] errorsY) {
    if (errorsX.length == 0 || errorsX.length != errorsY.length) {
      throw new IllegalArgumentException("every check point has an error in x and one in y");
    }
    return new PositionalAccuracy(rms(errorsX), rms(errorsY));
  }

  private static double rms(double[] errors) {
    double sum = 0;
    for (double error : errors) {
      sum += error * error;
    }
    return Math.sqrt(sum / errors.length);
  }

  /** {@return radial error RMSE_r} */
  public double radialRmseMetres() {
    return Math.hypot(rmseXMetres, rmseYMetres);
  }

  /** {@return whether the standard has a formula for these errors} */
  public boolean hasAccuracy95() {
    return Math.min(rmseXMetres, rmseYMetres) >= LOWEST_RATIO * Math.max(rmseXMetres, rmseYMetres);
  }

  /**
   * {@return radius around a mapped position that holds the true one in 95 % of cases}
   *
   * @throws IllegalArgumentException if the smaller error is less than 0.6 times the larger: the
   *     standard gives no formula for it
   */
  public double accuracy95Metres() {
    double smaller = Math.min(rmseXMetres, rmseYMetres);
    double larger = Math.max(rmseXMetres, rmseYMetres);
    if (smaller == larger) {
      return EQUAL_AXES * radialRmseMetres();
    }
    if (!hasAccuracy95()) {
      throw new IllegalArgumentException(
          "errors in x and y differ too much for the standard's formula");
    }
    return UNEQUAL_AXES * (rmseXMetres + rmseYMetres) / 2;
  }
}
