package org.meadowmark.core.measure.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/** Scarred area in every draw by outlining, uniting and overlaying everything again. */
final class BruteForce {
  private BruteForce() {}

  static Geometry footprint(Geometry geometry, double width) {
    return geometry.getDimension() == 2
        ? geometry
        : BufferOp.bufferOp(
            geometry,
            width / 2,
            new BufferParameters(8, BufferParameters.CAP_FLAT, BufferParameters.JOIN_ROUND, 5));
  }

  static double measured(List<UncertainScar> scars, Geometry grass) {
    return area(
        scars.stream().map(s -> footprint(s.geometry(), s.gridWidthMetres())).toList(), grass);
  }

  static double[] areas(
      List<UncertainScar> scars, Geometry grass, ErrorModel model, boolean width, boolean shift) {
    if (!width && !shift) {
      double[] same = new double[model.draws()];
      Arrays.fill(same, measured(scars, grass));
      return same;
    }
    return IntStream.range(0, model.draws())
        .parallel()
        .mapToDouble(draw -> area(footprints(scars, model, draw, width, shift), grass))
        .toArray();
  }

  private static List<Geometry> footprints(
      List<UncertainScar> scars, ErrorModel model, int draw, boolean width, boolean shift) {
    List<Geometry> footprints = new ArrayList<>();
    double[] x = new double[1];
    double[] y = new double[1];
    for (UncertainScar scar : scars) {
      ErrorDraws errors = new ErrorDraws(scar, model);
      double factor = width ? errors.widthFactor(draw) : 1;
      errors.shift(draw, x, y, 0);
      Geometry area = footprint(scar.geometry(), scar.gridWidthMetres() * factor);
      footprints.add(
          shift ? AffineTransformation.translationInstance(x[0], y[0]).transform(area) : area);
    }
    return footprints;
  }

  private static double area(List<Geometry> footprints, Geometry grass) {
    return OverlayNGRobust.overlay(UnaryUnionOp.union(footprints), grass, OverlayNG.INTERSECTION)
        .getArea();
  }
}
