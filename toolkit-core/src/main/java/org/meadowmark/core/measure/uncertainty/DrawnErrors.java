package org.meadowmark.core.measure.uncertainty;

import java.util.Arrays;
import java.util.List;

/**
 * The errors of a few scars in every draw: a row a scar, by place in a list, a column a draw.
 *
 * @param factor width factors
 * @param x shifts in easting on the grid
 * @param y shifts in northing on the grid
 */
record DrawnErrors(double[][] factor, double[][] x, double[][] y) {
  /** No error at all. */
  static DrawnErrors none(int scars, int draws) {
    return new DrawnErrors(same(scars, draws, 1), same(scars, draws, 0), same(scars, draws, 0));
  }

  /** The errors of every draw. */
  static DrawnErrors of(List<ErrorDraws> scars, int draws) {
    double[][] factor = new double[scars.size()][draws];
    double[][] x = new double[scars.size()][draws];
    double[][] y = new double[scars.size()][draws];
    for (int i = 0; i < scars.size(); i++) {
      for (int draw = 0; draw < draws; draw++) {
        factor[i][draw] = scars.get(i).widthFactor(draw);
        scars.get(i).shift(draw, x[i], y[i], draw);
      }
    }
    return new DrawnErrors(factor, x, y);
  }

  DrawnErrors widthOnly() {
    DrawnErrors none = none(factor.length, draws());
    return new DrawnErrors(factor, none.x, none.y);
  }

  DrawnErrors positionOnly() {
    return new DrawnErrors(none(factor.length, draws()).factor, x, y);
  }

  int draws() {
    return factor.length == 0 ? 0 : factor[0].length;
  }

  private static double[][] same(int scars, int draws, double value) {
    double[] row = new double[draws];
    Arrays.fill(row, value);
    double[][] rows = new double[scars][];
    Arrays.fill(rows, row);
    return rows;
  }
}
