package org.meadowmark.samples;

import java.util.OptionalDouble;
import org.meadowmark.core.model.DepthField;

/**
 * Water depths at the centres of square cells, row by row from the north-west.
 *
 * @param westMetres easting of the western edge
 * @param southMetres northing of the southern edge
 * @param cellMetres side of a cell
 * @param columns cells west to east
 * @param rows cells north to south
 * @param depthsMetres depth of each cell, positive down; NaN on land. The array is not copied: a
 *     caller must not change it.
 */
public record DepthGrid(
    double westMetres,
    double southMetres,
    double cellMetres,
    int columns,
    int rows,
    float[] depthsMetres)
    implements DepthField {

  @Override
  public OptionalDouble depthMetres(double x, double y) {
    int column = (int) Math.floor((x - westMetres) / cellMetres);
    int row = rows - 1 - (int) Math.floor((y - southMetres) / cellMetres);
    if (column < 0 || row < 0 || column >= columns || row >= rows) {
      return OptionalDouble.empty();
    }
    float depth = depthsMetres[row * columns + column];
    return Float.isNaN(depth) ? OptionalDouble.empty() : OptionalDouble.of(depth);
  }
}
