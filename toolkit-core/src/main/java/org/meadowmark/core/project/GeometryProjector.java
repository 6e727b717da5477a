package org.meadowmark.core.project;

import java.util.logging.Level;
import java.util.logging.Logger;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.CoordinateXY;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.impl.CoordinateArraySequence;
import org.locationtech.jts.geom.util.GeometryTransformer;
import org.meadowmark.core.model.FlatSequence;

/**
 * Projects geometries from one reference system to another; the result has x and y only.
 *
 * <p>Only vertices are projected: an edge that is straight in the file is drawn straight on the
 * grid. An edge of length L at latitude φ strays from the other line by about L²·tan φ / (8R), 10
 * mm for 1 km at 28° (the sagitta of a parallel of latitude; derived, and checked by a test).
 *
 * <p>Safe for use by several threads.
 */
final class GeometryProjector {
  private final MathTransform transform;
  private final boolean swapOrdinates;

  /** Kept so that it is not collected. It would print on the terminal, for one place in a layer. */
  private static final Logger PROJECTIONS_LOG =
      Logger.getLogger("org.geotools.referencing.operation.projection");

  static {
    PROJECTIONS_LOG.setLevel(Level.OFF);
  }

  GeometryProjector(MathTransform transform, boolean swapOrdinates) {
    this.transform = transform;
    this.swapOrdinates = swapOrdinates;
  }

  /**
   * Projects a geometry.
   *
   * @throws TransformException if a coordinate cannot be projected or the result is not finite
   */
  Geometry project(Geometry geometry) throws TransformException {
    try {
      return new Transformer().transform(geometry);
    } catch (UncheckedTransformException e) {
      throw e.failure;
    }
  }

  /**
   * Projects x, y pairs in place.
   *
   * @throws TransformException if a coordinate cannot be projected or the result is not finite
   */
  void project(double[] ordinates) throws TransformException {
    if (swapOrdinates) {
      for (int i = 0; i < ordinates.length; i += 2) {
        double first = ordinates[i];
        ordinates[i] = ordinates[i + 1];
        ordinates[i + 1] = first;
      }
    }
    try {
      transform.transform(ordinates, 0, ordinates, 0, ordinates.length / 2);
    } catch (IllegalArgumentException | IllegalStateException | ArithmeticException e) {
      // The library fails so where it words a warning about a place far out of reach.
      throw new TransformException("the coordinate is far out of reach", e);
    }
    for (double ordinate : ordinates) {
      if (!Double.isFinite(ordinate)) {
        throw new TransformException("the projected coordinate is not a finite number");
      }
    }
  }

  private final class Transformer extends GeometryTransformer {
    @Override
    protected CoordinateSequence transformCoordinates(
        CoordinateSequence sequence, Geometry parent) {
      double[] ordinates = new double[2 * sequence.size()];
      for (int i = 0; i < sequence.size(); i++) {
        ordinates[2 * i] = sequence.getX(i);
        ordinates[2 * i + 1] = sequence.getY(i);
      }
      try {
        project(ordinates);
      } catch (TransformException e) {
        throw new UncheckedTransformException(e);
      }
      if (!(parent instanceof LinearRing)) {
        // Scars come by the million: their coordinates take a third of the memory so.
        return new FlatSequence(ordinates);
      }
      Coordinate[] coordinates = new Coordinate[sequence.size()];
      for (int i = 0; i < coordinates.length; i++) {
        coordinates[i] = new CoordinateXY(ordinates[2 * i], ordinates[2 * i + 1]);
      }
      return new CoordinateArraySequence(coordinates, 2, 0);
    }
  }

  private static final class UncheckedTransformException extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final TransformException failure;

    UncheckedTransformException(TransformException failure) {
      super(failure);
      this.failure = failure;
    }
  }
}
