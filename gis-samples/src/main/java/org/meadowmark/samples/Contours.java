package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.operation.overlayng.UnaryUnionNG;
import org.locationtech.jts.operation.polygonize.Polygonizer;

/**
 * Lines of equal value of several fields, and the faces between them.
 *
 * <p>Neighbouring faces share their edges exactly, because all lines are noded together on one
 * precision grid before faces are formed. Marching squares with linear interpolation; a saddle is
 * decided by the mean of its corners.
 */
final class Contours {
  private static final PrecisionModel CENTIMETRES = new PrecisionModel(100);

  private final GeometryFactory factory;
  private final List<Geometry> segments = new ArrayList<>();

  Contours(GeometryFactory factory) {
    this.factory = factory;
  }

  /** Which cells, named by their lower left node, a line is wanted in. */
  @FunctionalInterface
  interface Cells {
    boolean contains(int column, int row);
  }

  void add(FieldGrid field, double level, Cells cells) {
    for (int row = 0; row < field.rows() - 1; row++) {
      for (int column = 0; column < field.columns() - 1; column++) {
        if (cells.contains(column, row)) {
          addCell(field, (float) level, column, row);
        }
      }
    }
  }

  private void addCell(FieldGrid field, float level, int column, int row) {
    float a = field.get(column, row);
    float b = field.get(column + 1, row);
    float c = field.get(column + 1, row + 1);
    float d = field.get(column, row + 1);
    int inside =
        (a >= level ? 1 : 0) | (b >= level ? 2 : 0) | (c >= level ? 4 : 0) | (d >= level ? 8 : 0);
    if (inside == 0 || inside == 15) {
      return;
    }
    double cell = field.cellMetres();
    double x = column * cell;
    double y = row * cell;
    Coordinate bottom = new Coordinate(x + cell * crossing(a, b, level), y);
    Coordinate right = new Coordinate(x + cell, y + cell * crossing(b, c, level));
    Coordinate top = new Coordinate(x + cell * crossing(d, c, level), y + cell);
    Coordinate left = new Coordinate(x, y + cell * crossing(a, d, level));
    boolean middleInside = (a + b + c + d) / 4 >= level;
    switch (inside) {
      case 1, 14 -> line(left, bottom);
      case 2, 13 -> line(bottom, right);
      case 4, 11 -> line(right, top);
      case 8, 7 -> line(top, left);
      case 3, 12 -> line(left, right);
      case 6, 9 -> line(bottom, top);
      case 5 -> saddle(middleInside, left, top, bottom, right);
      case 10 -> saddle(middleInside, left, bottom, top, right);
      default -> throw new IllegalStateException("no such cell: " + inside);
    }
  }

  private void saddle(
      boolean middleInside, Coordinate left, Coordinate next, Coordinate other, Coordinate right) {
    line(left, middleInside ? next : other);
    line(middleInside ? other : next, right);
  }

  private static double crossing(float from, float to, float level) {
    return ((double) level - from) / ((double) to - from);
  }

  private void line(Coordinate from, Coordinate to) {
    CENTIMETRES.makePrecise(from);
    CENTIMETRES.makePrecise(to);
    if (!from.equals2D(to)) {
      segments.add(factory.createLineString(new Coordinate[] {from, to}));
    }
  }

  /** Faces whose inner point is wanted, ordered by place. */
  List<Polygon> faces(double smallestSquareMetres, Predicate<Point> wanted) {
    if (segments.isEmpty()) {
      return List.of();
    }
    Polygonizer polygonizer = new Polygonizer();
    polygonizer.add(UnaryUnionNG.union(segments, factory, CENTIMETRES));
    List<Polygon> faces = new ArrayList<>();
    for (Object found : polygonizer.getPolygons()) {
      Polygon face = (Polygon) found;
      if (face.getArea() >= smallestSquareMetres && wanted.test(face.getInteriorPoint())) {
        face.normalize();
        faces.add(face);
      }
    }
    faces.sort(Geometry::compareTo);
    return faces;
  }
}
