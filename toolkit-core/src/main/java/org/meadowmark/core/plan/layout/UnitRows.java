package org.meadowmark.core.plan.layout;

import org.locationtech.jts.algorithm.MinimumAreaRectangle;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Point;
import org.meadowmark.core.survey.PlantingPattern;

/**
 * Units in rows along a scar.
 *
 * <p>A line takes the number of rows whose distance comes nearest to the spacing's, each in the
 * middle of a band of the same width, and at least one: a scar 0.3 m wide takes one row at any
 * larger spacing. Along a row, units stand one spacing apart, with what is left over at both ends
 * alike: 100 m at 1 m are 101 units. A polygon takes rows along the long side of its smallest
 * rectangle, units in the middles of equal cells, and keeps those inside its outline; it takes at
 * least one unit.
 *
 * <p>Lengths are on the grid. Rows beside the middle line of a bend open on its outside and close
 * on its inside.
 */
final class UnitRows {
  /** A spacing that fits in exactly must not be lost to rounding. */
  private static final double ROUNDING = 1e-9;

  private final PlantingPattern pattern;
  private final double spacing;

  /** Takes units one by one. */
  @FunctionalInterface
  interface Sink {
    /**
     * Takes a unit.
     *
     * @param row row from 1, across the scar
     * @param place where it stands
     */
    void unit(int row, Coordinate place);
  }

  UnitRows(PlantingPattern pattern, double spacing) {
    this.pattern = pattern;
    this.spacing = spacing;
  }

  /** Rows in a width. */
  int rows(double width) {
    return (int) Math.max(1, Math.round(width / (spacing * pattern.rowSpacings())));
  }

  /** Units of lines of a width, all of them, without making them. */
  long count(Geometry lines, double width) {
    long sum = 0;
    for (int g = 0; g < lines.getNumGeometries(); g++) {
      long full = steps(lines.getGeometryN(g).getLength()) + 1L;
      int rows = rows(width);
      int shifted = pattern == PlantingPattern.HEXAGONAL ? rows / 2 : 0;
      sum += (rows - shifted) * full + shifted * (full - 1);
    }
    return sum;
  }

  /** Units of lines of a width, line by line, row by row. */
  void along(Geometry lines, double width, Sink sink) {
    int rows = rows(width);
    for (int g = 0; g < lines.getNumGeometries(); g++) {
      LineString line = (LineString) lines.getGeometryN(g);
      for (int row = 0; row < rows; row++) {
        alongRow(line, row, (row - (rows - 1) / 2.0) * width / rows, sink);
      }
    }
  }

  private void alongRow(LineString line, int row, double offset, Sink sink) {
    double length = line.getLength();
    int steps = steps(length);
    boolean shifted = pattern == PlantingPattern.HEXAGONAL && row % 2 == 1;
    double start = (length - steps * spacing) / 2 + (shifted ? spacing / 2 : 0);
    int units = shifted ? steps : steps + 1;
    Coordinate[] points = line.getCoordinates();
    int segment = 0;
    double before = 0;
    for (int unit = 0; unit < units; unit++) {
      double at = start + unit * spacing;
      double segmentLength = points[segment].distance(points[segment + 1]);
      while (segment < points.length - 2 && before + segmentLength < at) {
        before += segmentLength;
        segment++;
        segmentLength = points[segment].distance(points[segment + 1]);
      }
      sink.unit(
          row + 1,
          beside(
              points[segment],
              points[segment + 1],
              segmentLength == 0 ? 0 : Math.min(1, (at - before) / segmentLength),
              offset));
    }
  }

  private static Coordinate beside(Coordinate from, Coordinate to, double share, double offset) {
    double dx = to.x - from.x;
    double dy = to.y - from.y;
    double length = Math.hypot(dx, dy);
    double perLength = length == 0 ? 0 : offset / length;
    return new Coordinate(
        from.x + share * dx - perLength * dy, from.y + share * dy + perLength * dx);
  }

  /** Units of a polygon. */
  void inside(Geometry polygon, Sink sink) {
    Coordinate[] corners = MinimumAreaRectangle.getMinimumRectangle(polygon).getCoordinates();
    int[] found = {0};
    if (corners.length >= 4) {
      boolean firstIsLong = corners[0].distance(corners[1]) >= corners[1].distance(corners[2]);
      Coordinate origin = firstIsLong ? corners[0] : corners[1];
      Coordinate far = firstIsLong ? corners[1] : corners[2];
      Coordinate wide = firstIsLong ? corners[3] : corners[0];
      IndexedPointInAreaLocator area = new IndexedPointInAreaLocator(polygon);
      grid(
          origin,
          far,
          wide,
          (row, place) -> {
            if (area.locate(place) != Location.EXTERIOR) {
              found[0]++;
              sink.unit(row, place);
            }
          });
    }
    if (found[0] == 0) {
      Point middle = polygon.getInteriorPoint();
      sink.unit(1, middle.getCoordinate());
    }
  }

  private void grid(Coordinate origin, Coordinate far, Coordinate wide, Sink sink) {
    double length = origin.distance(far);
    double width = origin.distance(wide);
    int rows = rows(width);
    int across = (int) Math.max(1, Math.round(length / spacing));
    for (int row = 0; row < rows; row++) {
      boolean shifted = pattern == PlantingPattern.HEXAGONAL && row % 2 == 1;
      int units = shifted ? across - 1 : across;
      double v = (row + 0.5) / rows;
      for (int unit = 0; unit < units; unit++) {
        double u = (unit + (shifted ? 1 : 0.5)) / across;
        sink.unit(
            row + 1,
            new Coordinate(
                origin.x + u * (far.x - origin.x) + v * (wide.x - origin.x),
                origin.y + u * (far.y - origin.y) + v * (wide.y - origin.y)));
      }
    }
  }

  private int steps(double length) {
    return (int) Math.floor(length / spacing + ROUNDING);
  }
}
