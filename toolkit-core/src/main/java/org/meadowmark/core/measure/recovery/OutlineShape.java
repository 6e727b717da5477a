package org.meadowmark.core.measure.recovery;

import java.util.OptionalDouble;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.buffer.BufferOp;

/**
 * Any footprint: its outline is moved inwards by a negative buffer at a few offsets, with cubic
 * pieces between them.
 *
 * <p>The area shrinks by the perimeter for each unit of offset, so both ends of a piece have their
 * slopes; a rectangle's and a circle's areas are parabolas in the offset and come out exactly.
 */
final class OutlineShape implements ScarShape {
  private static final int PIECES = 12;

  /** Of the square root of the area: how closely the largest circle is looked for. */
  private static final double TOLERANCE = 1e-4;

  private final double closingOffset;
  private final double[] areas = new double[PIECES + 1];
  private final double[] perimeters = new double[PIECES + 1];

  /**
   * Prepares a footprint.
   *
   * @param footprint polygons on a grid in metres
   * @param lengthFactor grid length divided by ground length
   */
  OutlineShape(Geometry footprint, double lengthFactor) {
    double gridOffset = 0;
    for (int i = 0; i < footprint.getNumGeometries(); i++) {
      gridOffset = Math.max(gridOffset, radius(footprint.getGeometryN(i)));
    }
    this.closingOffset = gridOffset / lengthFactor;
    for (int i = 0; i < PIECES; i++) {
      Geometry left = i == 0 ? footprint : BufferOp.bufferOp(footprint, -gridOffset * i / PIECES);
      areas[i] = left.getArea() / (lengthFactor * lengthFactor);
      perimeters[i] = left.getLength() / lengthFactor;
    }
    // The last piece ends in a point or a line, whose length is that of the parabola towards it.
    double step = closingOffset / PIECES;
    perimeters[PIECES] =
        step > 0
            ? Math.max(
                0,
                Math.min(
                    perimeters[PIECES - 1], 2 * areas[PIECES - 1] / step - perimeters[PIECES - 1]))
            : 0;
  }

  private static double radius(Geometry polygon) {
    double tolerance = TOLERANCE * Math.sqrt(polygon.getArea());
    if (!(tolerance > 0)) {
      return 0;
    }
    return MaximumInscribedCircle.getRadiusLine(polygon, tolerance).getLength();
  }

  @Override
  public double areaSquareMetres() {
    return areas[0];
  }

  @Override
  public double bareSquareMetres(double offsetMetres) {
    if (!(offsetMetres < closingOffset)) {
      return 0;
    }
    double step = closingOffset / PIECES;
    int piece = Math.min(PIECES - 1, (int) (offsetMetres / step));
    double u = offsetMetres / step - piece;
    double area =
        areas[piece] * (1 + 2 * u) * (1 - u) * (1 - u)
            - perimeters[piece] * step * u * (1 - u) * (1 - u)
            + areas[piece + 1] * u * u * (3 - 2 * u)
            + perimeters[piece + 1] * step * u * u * (1 - u);
    return Math.max(areas[piece + 1], Math.min(areas[piece], area));
  }

  @Override
  public double closingOffsetMetres() {
    return closingOffset;
  }

  @Override
  public OptionalDouble stripWidthMetres() {
    return OptionalDouble.empty();
  }
}
