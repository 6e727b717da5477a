package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiLineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;

/**
 * A scar line cut into steps of a metre or, on a short scar, five, each inside one segment.
 *
 * <p>Steps are numbered along the scar; a number is left out between two parts of a broken line, so
 * that steps with consecutive numbers always follow each other on the ground.
 */
final class ScarSteps {
  private static final double STEP_METRES = 1;
  private static final int FEWEST_STEPS = 5;

  /** Hears of each step in turn. */
  @FunctionalInterface
  interface Visitor {
    /**
     * A step.
     *
     * @param number its number
     * @param from where it starts
     * @param to where it ends
     * @param alongX direction of the line, a unit vector
     * @param alongY direction of the line
     * @param length grid length
     */
    void step(
        int number, Coordinate from, Coordinate to, double alongX, double alongY, double length);
  }

  private ScarSteps() {}

  static void visit(Geometry scarLine, Visitor visitor) {
    int number = 0;
    for (Object part : LinearComponentExtracter.getLines(scarLine)) {
      number = 1 + visit((LineString) part, number, visitor);
    }
  }

  private static int visit(LineString line, int first, Visitor visitor) {
    int number = first;
    double step = Math.min(STEP_METRES, line.getLength() / FEWEST_STEPS);
    Coordinate[] vertices = line.getCoordinates();
    for (int v = 0; v + 1 < vertices.length; v++) {
      Coordinate start = vertices[v];
      Coordinate end = vertices[v + 1];
      double length = start.distance(end);
      int count = (int) Math.ceil(length / step);
      double alongX = (end.x - start.x) / length;
      double alongY = (end.y - start.y) / length;
      Coordinate from = between(start, end, 0);
      for (int i = 0; i < count; i++) {
        Coordinate to = between(start, end, (i + 1.0) / count);
        visitor.step(number++, from, to, alongX, alongY, length / count);
        from = to;
      }
    }
    return number;
  }

  static Coordinate middle(Coordinate from, Coordinate to) {
    return between(from, to, 0.5);
  }

  private static Coordinate between(Coordinate from, Coordinate to, double fraction) {
    return new Coordinate(from.x + fraction * (to.x - from.x), from.y + fraction * (to.y - from.y));
  }

  /**
   * The stretches of a scar line that runs of steps make.
   *
   * @param scarLine the line
   * @param runs first and last step of each run in turn, ascending
   */
  static MultiLineString stretches(Geometry scarLine, int[] runs) {
    List<LineString> parts = new ArrayList<>();
    List<Coordinate> open = new ArrayList<>();
    int[] run = {0};
    visit(
        scarLine,
        (number, from, to, alongX, alongY, length) -> {
          if (run[0] == runs.length || number < runs[run[0]]) {
            return;
          }
          if (open.isEmpty()) {
            open.add(from);
          }
          open.add(to);
          if (number == runs[run[0] + 1]) {
            parts.add(scarLine.getFactory().createLineString(open.toArray(Coordinate[]::new)));
            open.clear();
            run[0] += 2;
          }
        });
    return scarLine.getFactory().createMultiLineString(parts.toArray(LineString[]::new));
  }
}
