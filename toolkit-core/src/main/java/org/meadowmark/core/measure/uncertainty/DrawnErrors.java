package org.meadowmark.core.measure.uncertainty;

import java.util.Arrays;
import java.util.List;

/**
 * The errors of a few scars in one draw, by place in a list.
 *
 * @param factor width factors
 * @param x shifts in easting on the grid
 * @param y shifts in northing on the grid
 */
record DrawnErrors(double[] factor, double[] x, double[] y) {
  static DrawnErrors none(int count) {
    double[] one = new double[count];
    Arrays.fill(one, 1);
    return new DrawnErrors(one, new double[count], new double[count]);
  }

  void draw(List<ErrorDraws> scars, int draw) {
    for (int i = 0; i < factor.length; i++) {
      factor[i] = scars.get(i).widthFactor(draw);
      scars.get(i).shift(draw, x, y, i);
    }
  }

  DrawnErrors widthOnly() {
    DrawnErrors none = none(factor.length);
    return new DrawnErrors(factor, none.x, none.y);
  }

  DrawnErrors positionOnly() {
    return new DrawnErrors(none(factor.length).factor, x, y);
  }
}
