package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;

/**
 * A meandering line along an axis.
 *
 * <p>The direction of a meander deviates from its axis by θ(s) = ω sin(2πs/M), with s along the
 * path, M the path length of a meander and ω the largest angle to the axis: Langbein &amp; Leopold
 * (1966) <i>River meanders – theory of minimum variance</i>, US Geological Survey Professional
 * Paper 422-H (formula from memory). Wavelength and angle wander a little here, as no real channel
 * is regular.
 *
 * @param wavelengthMetres distance along the axis from one bend to the next of the same side
 * @param largestAngleRadians ω
 * @param stepMetres distance between vertices
 * @param wander how irregular: 0 for the pure curve, 1 for a natural one
 */
record SineGeneratedCurve(
    double wavelengthMetres, double largestAngleRadians, double stepMetres, double wander) {

  /** A natural curve. */
  static SineGeneratedCurve natural(
      double wavelengthMetres, double largestAngleRadians, double stepMetres) {
    return new SineGeneratedCurve(wavelengthMetres, largestAngleRadians, stepMetres, 1);
  }

  /** The curve through the first and last of some axis points, passing near the others. */
  Coordinate[] along(List<Coordinate> axisPoints, Draws draws) {
    List<Coordinate> axis = smoothed(axisPoints);
    double[] distance = new double[axis.size()];
    for (int i = 1; i < distance.length; i++) {
      distance[i] = distance[i - 1] + axis.get(i).distance(axis.get(i - 1));
    }
    double axisLength = distance[distance.length - 1];
    int steps = Math.max(4, (int) Math.round(axisLength * 1.25 / stepMetres));
    double waves = Math.max(0.5, axisLength / wavelengthMetres);
    double firstPhase = draws.between(0, 2 * StrictMath.PI);
    double slowPhase = draws.between(0, 2 * StrictMath.PI);
    double[] deviation = new double[steps];
    double advance = 0;
    for (int i = 0; i < steps; i++) {
      double along = (i + 0.5) / steps;
      double slow = wander * StrictMath.sin(2 * StrictMath.PI * waves * along / 3.7 + slowPhase);
      double angle = largestAngleRadians * (1 + 0.3 * slow);
      deviation[i] =
          angle * StrictMath.sin(2 * StrictMath.PI * waves * along + firstPhase + 0.9 * slow);
      advance += StrictMath.cos(deviation[i]) / steps;
    }
    double step = axisLength / steps / advance;
    Coordinate[] curve = new Coordinate[steps + 1];
    curve[0] = axis.get(0).copy();
    int piece = 1;
    for (int i = 0; i < steps; i++) {
      double onAxis = (i + 0.5) / steps * axisLength;
      while (piece < distance.length - 1 && distance[piece] < onAxis) {
        piece++;
      }
      Coordinate from = axis.get(piece - 1);
      Coordinate to = axis.get(piece);
      double heading = StrictMath.atan2(to.y - from.y, to.x - from.x) + deviation[i];
      curve[i + 1] =
          new Coordinate(
              curve[i].x + step * StrictMath.cos(heading),
              curve[i].y + step * StrictMath.sin(heading));
    }
    closeOn(axis.get(axis.size() - 1), curve);
    return curve;
  }

  /** Spreads what is missing to the target over the whole curve; ends become exact. */
  private static void closeOn(Coordinate target, Coordinate[] curve) {
    int last = curve.length - 1;
    double missingX = target.x - curve[last].x;
    double missingY = target.y - curve[last].y;
    for (int i = 1; i < last; i++) {
      double share = (double) i / last;
      curve[i] =
          new Coordinate(
              hundredths(curve[i].x + missingX * share), hundredths(curve[i].y + missingY * share));
    }
    curve[last] = target.copy();
  }

  private static double hundredths(double value) {
    return Math.rint(value * 100) / 100;
  }

  /** Catmull–Rom spline through the points. */
  private static List<Coordinate> smoothed(List<Coordinate> points) {
    if (points.size() == 2) {
      return points;
    }
    int pieces = 20;
    List<Coordinate> axis = new ArrayList<>();
    for (int i = 0; i < points.size() - 1; i++) {
      Coordinate before = points.get(Math.max(0, i - 1));
      Coordinate from = points.get(i);
      Coordinate to = points.get(i + 1);
      Coordinate after = points.get(Math.min(points.size() - 1, i + 2));
      for (int k = 0; k < pieces; k++) {
        double t = (double) k / pieces;
        axis.add(
            new Coordinate(
                spline(before.x, from.x, to.x, after.x, t),
                spline(before.y, from.y, to.y, after.y, t)));
      }
    }
    axis.add(points.get(points.size() - 1));
    return axis;
  }

  private static double spline(double a, double b, double c, double d, double t) {
    return 0.5
        * (2 * b
            + (c - a) * t
            + (2 * a - 5 * b + 4 * c - d) * t * t
            + (3 * b - a - 3 * c + d) * t * t * t);
  }
}
