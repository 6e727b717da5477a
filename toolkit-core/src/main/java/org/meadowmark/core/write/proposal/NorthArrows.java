package org.meadowmark.core.write.proposal;

import static org.meadowmark.core.write.proposal.SvgWriter.number;

import java.util.Optional;

/** True north and grid north from one foot, and the angle between them in words. */
final class NorthArrows {
  private static final double LENGTH = 34;
  private static final double LEAST_ANGLE = 0.5 / 60;

  /** At a smaller angle the two would be drawn on top of each other. */
  private static final double LEAST_SEEN = 3;

  private NorthArrows() {}

  /**
   * Draws the arrows.
   *
   * @param gridNorth true bearing of grid north in degrees; empty where it is not known
   */
  static void draw(SvgWriter svg, double x, double y, Optional<Double> gridNorth, SheetText text) {
    double footX = x + 8;
    double footY = y + LENGTH + 13;
    if (gridNorth.isEmpty() || Math.abs(gridNorth.get()) >= LEAST_SEEN) {
      String[] dashed = {
        "stroke", MapColours.SOFT_INK, "stroke-width", "1.4", "stroke-dasharray", "4 3"
      };
      svg.line(footX, footY, footX, footY - LENGTH, dashed);
    }
    gridNorth.ifPresent(
        bearing -> {
          svg.open(
              "g",
              "transform",
              "rotate(" + rotation(-bearing) + " " + number(footX) + " " + number(footY) + ")");
          String arrow =
              "M%s %sL%s %sL%s %sL%s %sZ"
                  .formatted(
                      number(footX),
                      number(footY - LENGTH),
                      number(footX + 8),
                      number(footY - LENGTH + 20),
                      number(footX),
                      number(footY - LENGTH + 14),
                      number(footX - 8),
                      number(footY - LENGTH + 20));
          svg.path(arrow, "fill", MapColours.INK);
          svg.line(
              footX,
              footY,
              footX,
              footY - LENGTH + 14,
              "stroke",
              MapColours.INK,
              "stroke-width",
              "2");
          svg.label(
              footX,
              footY - LENGTH - 3,
              text.get("north"),
              SvgWriter.boldType("15", "middle", MapColours.INK));
          svg.close();
        });
    String[] soft = SvgWriter.type("14", "start", MapColours.SOFT_INK);
    double row = y + 24;
    for (String line : words(gridNorth, text).split("\n")) {
      svg.label(x + 30, row, line, soft);
      row += 18;
    }
  }

  private static String words(Optional<Double> gridNorth, SheetText text) {
    if (gridNorth.isEmpty()) {
      return text.get("northUnknown");
    }
    double bearing = gridNorth.get();
    if (Math.abs(bearing) < LEAST_ANGLE) {
      return text.get("northSame");
    }
    return text.get(bearing > 0 ? "northEast" : "northWest", DegreesMinutes.angle(bearing));
  }

  private static String rotation(double degrees) {
    return Double.toString(Math.round(degrees * 100) / 100.0);
  }
}
