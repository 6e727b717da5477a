package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/** Draws the shapes that hulls and propellers leave, to the millimetre. */
final class ScarPath {
  private static final double ESCAPE_CHANCE = 0.035;
  private static final int BASIN_VERTICES = 20;

  private ScarPath() {}

  /** Where a boat can touch the bottom. */
  @FunctionalInterface
  interface Bottom {
    boolean isInReach(double x, double y);
  }

  /** Where a scar starts and which way it goes, in radians. */
  record Start(double x, double y, double heading) {}

  /**
   * Follows a boat until its scar is long enough or the water is too deep.
   *
   * @return the path; shorter than wanted, even a single point, where the bottom falls away
   */
  static List<Coordinate> follow(
      Draws draws, Start start, double lengthMetres, boolean mayEscape, Bottom bottom) {
    double curvature = draws.normal() / 220;
    boolean escapes = mayEscape && lengthMetres > 18 && draws.chance(ESCAPE_CHANCE);
    double escapeFrom = escapes ? lengthMetres * draws.between(0.2, 0.5) : 2 * lengthMetres;
    double escapeCurvature = draws.sign() / draws.between(3.5, 9);
    double escapeTurn = Math.toRadians(draws.between(170, 330));
    double plainStep = Math.min(6, Math.max(1, lengthMetres / 9));
    double x = start.x;
    double y = start.y;
    double heading = start.heading;
    double made = 0;
    List<Coordinate> path = new ArrayList<>();
    path.add(millimetres(x, y));
    while (made < lengthMetres - 0.2 && path.size() < 400) {
      boolean turning = made >= escapeFrom && escapeTurn > 0;
      double step = Math.min(turning ? 1.6 : plainStep, lengthMetres - made);
      double turn = (turning ? escapeCurvature : curvature) * step + 0.012 * draws.normal();
      if (turning) {
        escapeTurn -= Math.abs(turn);
      }
      heading += turn;
      x += step * StrictMath.cos(heading);
      y += step * StrictMath.sin(heading);
      if (!bottom.isInReach(x, y)) {
        break;
      }
      path.add(millimetres(x, y));
      made += step;
    }
    return path;
  }

  /** The path of a second propeller or of a boat that followed close by. */
  static List<Coordinate> beside(List<Coordinate> path, double offsetMetres) {
    List<Coordinate> twin = new ArrayList<>();
    for (int i = 0; i < path.size(); i++) {
      Coordinate before = path.get(Math.max(0, i - 1));
      Coordinate after = path.get(Math.min(path.size() - 1, i + 1));
      double length = before.distance(after);
      if (length > 0) {
        twin.add(
            millimetres(
                path.get(i).x - offsetMetres * (after.y - before.y) / length,
                path.get(i).y + offsetMetres * (after.x - before.x) / length));
      }
    }
    return twin;
  }

  /** The outline of the basin that a grounded hull dug: star-shaped, so always valid. */
  static Geometry basin(
      Draws draws, Start start, double lengthMetres, double widthMetres, GeometryFactory factory) {
    double lobes = draws.between(0.05, 0.2);
    double phase = draws.between(0, 2 * StrictMath.PI);
    Coordinate[] ring = new Coordinate[BASIN_VERTICES + 1];
    for (int i = 0; i < BASIN_VERTICES; i++) {
      double angle = 2 * StrictMath.PI * i / BASIN_VERTICES;
      double ragged = 1 + lobes * StrictMath.sin(3 * angle + phase) + draws.between(-0.06, 0.06);
      double along = lengthMetres / 2 * ragged * StrictMath.cos(angle);
      double aside = widthMetres / 2 * ragged * StrictMath.sin(angle);
      double cos = StrictMath.cos(start.heading);
      double sin = StrictMath.sin(start.heading);
      ring[i] =
          millimetres(start.x + along * cos - aside * sin, start.y + along * sin + aside * cos);
    }
    ring[BASIN_VERTICES] = ring[0].copy();
    return factory.createPolygon(ring);
  }

  static LineString line(List<Coordinate> path, GeometryFactory factory) {
    return factory.createLineString(path.toArray(Coordinate[]::new));
  }

  static Coordinate millimetres(double x, double y) {
    return new Coordinate(Math.rint(x * 1_000) / 1_000, Math.rint(y * 1_000) / 1_000);
  }
}
