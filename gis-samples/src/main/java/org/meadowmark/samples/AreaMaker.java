package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.operation.overlayng.UnaryUnionNG;
import org.locationtech.jts.operation.polygonize.Polygonizer;

/** Draws management areas and the surveyed area, in local metres. */
final class AreaMaker {
  private static final PrecisionModel CENTIMETRES = new PrecisionModel(100);
  private static final double STEP_METRES = 150;

  private final double widthMetres;
  private final GradientNoise areaNoise;
  private final GradientNoise surveyNoise;
  private final GeometryFactory factory;

  AreaMaker(long seed, double widthMetres, GeometryFactory factory) {
    this.widthMetres = widthMetres;
    this.areaNoise = new GradientNoise(seed, Purpose.AREAS);
    this.surveyNoise = new GradientNoise(seed, Purpose.SURVEYED);
    this.factory = factory;
  }

  /** Six areas that share their edges and leave the east end out. */
  List<Polygon> managementAreas() {
    double west = 60;
    double east = 0.86 * widthMetres;
    double south = 150;
    double north = Shoreline.HEIGHT_METRES - 150;
    List<Geometry> lines = new ArrayList<>();
    lines.add(straight(west, south, east, south));
    lines.add(straight(west, north, east, north));
    lines.add(straight(west, south, west, north));
    for (double share : new double[] {0.29, 0.58}) {
      lines.add(upright(share * widthMetres, south - 50, north + 50));
    }
    lines.add(upright(east - 60, south - 50, north + 50));
    lines.add(across(west - 50, east + 150, 3_050));
    lines.add(straight(east, south, east + 150, south));
    lines.add(straight(east, north, east + 150, north));
    Polygonizer polygonizer = new Polygonizer();
    polygonizer.add(UnaryUnionNG.union(lines, factory, CENTIMETRES));
    List<Polygon> areas = new ArrayList<>();
    for (Object found : polygonizer.getPolygons()) {
      Polygon area = (Polygon) found;
      area.normalize();
      areas.add(area);
    }
    areas.sort(
        (a, b) -> {
          Coordinate first = a.getCentroid().getCoordinate();
          Coordinate second = b.getCentroid().getCoordinate();
          int byRow = Boolean.compare(first.y < 3_050, second.y < 3_050);
          return byRow != 0 ? byRow : Double.compare(first.x, second.x);
        });
    return areas;
  }

  /** One polygon that leaves out a strip in the west and a corner in the north-east. */
  Polygon surveyedArea() {
    double west = 0.11 * widthMetres;
    double east = 0.95 * widthMetres;
    double south = 500;
    double north = Shoreline.HEIGHT_METRES - 80;
    double[][] corners = {
      {west, south},
      {east, south},
      {east, 3_500},
      {east - 0.11 * widthMetres, 4_200},
      {east - 0.16 * widthMetres, north},
      {west + 0.03 * widthMetres, north},
      {west - 0.02 * widthMetres, 3_000}
    };
    List<Coordinate> ring = new ArrayList<>();
    for (int i = 0; i < corners.length; i++) {
      double[] from = corners[i];
      double[] to = corners[(i + 1) % corners.length];
      double length = StrictMath.hypot(to[0] - from[0], to[1] - from[1]);
      int pieces = Math.max(1, (int) Math.round(length / STEP_METRES));
      for (int k = 0; k < pieces; k++) {
        double x = from[0] + (to[0] - from[0]) * k / pieces;
        double y = from[1] + (to[1] - from[1]) * k / pieces;
        ring.add(
            precise(
                x + 70 * surveyNoise.at(x / 900, y / 900),
                y + 70 * surveyNoise.at(x / 900 + 50, y / 900)));
      }
    }
    ring.add(ring.get(0).copy());
    return factory.createPolygon(ring.toArray(Coordinate[]::new));
  }

  private LineString straight(double x1, double y1, double x2, double y2) {
    return factory.createLineString(new Coordinate[] {precise(x1, y1), precise(x2, y2)});
  }

  private LineString upright(double x, double south, double north) {
    int pieces = (int) Math.ceil((north - south) / STEP_METRES);
    Coordinate[] points = new Coordinate[pieces + 1];
    for (int i = 0; i <= pieces; i++) {
      double y = south + (north - south) * i / pieces;
      points[i] = precise(x + 130 * areaNoise.at(x / 700, y / 1_300), y);
    }
    return factory.createLineString(points);
  }

  private LineString across(double west, double east, double y) {
    int pieces = (int) Math.ceil((east - west) / STEP_METRES);
    Coordinate[] points = new Coordinate[pieces + 1];
    for (int i = 0; i <= pieces; i++) {
      double x = west + (east - west) * i / pieces;
      points[i] = precise(x, y + 260 * areaNoise.at(30 + x / 1_300, y / 700));
    }
    return factory.createLineString(points);
  }

  private static Coordinate precise(double x, double y) {
    return new Coordinate(Math.rint(x * 100) / 100, Math.rint(y * 100) / 100);
  }
}
