package org.meadowmark.core.write.proposal;

import static org.meadowmark.core.write.proposal.SvgWriter.number;

import org.meadowmark.core.rank.zone.MarkShape;

/**
 * Drawings of marks. Source: 33 CFR 62.33 (text read) for regulatory marks: orange shapes on white;
 * on a buoy two horizontal orange bands, one near the top and one just above the waterline. 33 CFR
 * 62.35 for a mooring buoy: white with a horizontal blue band. Sizes and outlines of the buoys are
 * drawn freely.
 */
final class MarkDrawing {
  static final double BUOY_WIDTH = 100;
  static final double BUOY_HEIGHT = 124;

  private static final double MIDDLE = 50;
  private static final double TOP = 8;
  private static final double WATERLINE = 104;
  private static final double HALF_BODY = 31;
  private static final double BAND = 8;
  private static final double SHAPE = 21;

  private MarkDrawing() {}

  /**
   * A buoy with its mark.
   *
   * @param id unique in the page
   * @return SVG, or empty text where there is no mark to draw
   */
  static String buoy(MarkShape shape, String id, SheetText text) {
    if (shape == MarkShape.NONE) {
      return "";
    }
    SvgWriter svg = new SvgWriter();
    String title = text.get("shape." + shape.name());
    svg.picture(id, BUOY_WIDTH, BUOY_HEIGHT, "mark", title, "");
    double left = MIDDLE - HALF_BODY;
    double right = MIDDLE + HALF_BODY;
    String body =
        "M%s %sQ%s %s %s %sL%s %sL%s %sZ"
            .formatted(
                number(left + 4),
                number(TOP + 6),
                number(MIDDLE),
                number(TOP - 6),
                number(right - 4),
                number(TOP + 6),
                number(right),
                number(WATERLINE),
                number(left),
                number(WATERLINE));
    svg.path(body, "fill", MapColours.WHITE, "stroke", MapColours.SOFT_INK, "stroke-width", "1.4");
    switch (shape) {
      case MOORING_BUOY -> band(svg, (TOP + WATERLINE) / 2 - BAND, 2 * BAND, MapColours.MARK_BLUE);
      case CHANNEL_MARK ->
          svg.label(MIDDLE, 70, "?", SvgWriter.type("40", "middle", MapColours.SOFT_INK));
      default -> {
        band(svg, TOP + 10, BAND, MapColours.MARK_ORANGE);
        band(svg, WATERLINE - BAND - 3, BAND, MapColours.MARK_ORANGE);
        shape(svg, shape, MIDDLE, (TOP + 14 + WATERLINE - 7) / 2, SHAPE, 6);
      }
    }
    water(svg);
    return svg.close().finished();
  }

  /**
   * A mark for the map and its legend: the shape on a white disc.
   *
   * @param radius of the disc
   */
  static void symbol(SvgWriter svg, MarkShape shape, double x, double y, double radius) {
    svg.circle(
        x, y, radius, "fill", MapColours.WHITE, "stroke", MapColours.INK, "stroke-width", "1.2");
    switch (shape) {
      case MOORING_BUOY ->
          svg.rectangle(
              x - radius * 0.87,
              y - radius / 4,
              radius * 1.74,
              radius / 2,
              "fill",
              MapColours.MARK_BLUE);
      case CHANNEL_MARK, NONE -> svg.circle(x, y, radius / 3, "fill", MapColours.SOFT_INK);
      default -> shape(svg, shape, x, y, radius * 0.66, radius * 0.24);
    }
  }

  private static void shape(
      SvgWriter svg, MarkShape shape, double x, double y, double size, double stroke) {
    String[] open = {
      "fill", "none", "stroke", MapColours.MARK_ORANGE, "stroke-width", number(stroke)
    };
    switch (shape) {
      case DANGER_DIAMOND -> svg.path(diamond(x, y, size), open);
      case EXCLUSION_DIAMOND -> {
        svg.path(diamond(x, y, size), open);
        double arm = size * 0.5;
        svg.line(x - arm, y, x + arm, y, open).line(x, y - arm, x, y + arm, open);
      }
      case RESTRICTION_CIRCLE -> svg.circle(x, y, size * 0.86, open);
      case INFORMATION_RECTANGLE ->
          svg.rectangle(x - size, y - size * 0.75, 2 * size, 1.5 * size, open);
      default -> throw new IllegalArgumentException("no regulatory shape: " + shape);
    }
  }

  private static String diamond(double x, double y, double size) {
    return "M%s %sL%s %sL%s %sL%s %sZ"
        .formatted(
            number(x),
            number(y - size),
            number(x + size),
            number(y),
            number(x),
            number(y + size),
            number(x - size),
            number(y));
  }

  /** A band across the body, whose sides lean a little. */
  private static void band(SvgWriter svg, double top, double height, String colour) {
    double upper = halfBody(top);
    double lower = halfBody(top + height);
    svg.path(
        "M%s %sL%s %sL%s %sL%s %sZ"
            .formatted(
                number(MIDDLE - upper),
                number(top),
                number(MIDDLE + upper),
                number(top),
                number(MIDDLE + lower),
                number(top + height),
                number(MIDDLE - lower),
                number(top + height)),
        "fill",
        colour);
  }

  private static double halfBody(double y) {
    double share = (y - TOP - 6) / (WATERLINE - TOP - 6);
    return HALF_BODY - 4 + 4 * Math.max(0, Math.min(1, share)) - 0.5;
  }

  private static void water(SvgWriter svg) {
    String[] wave = {"fill", "none", "stroke", MapColours.CHANNEL, "stroke-width", "2.4"};
    svg.path("M4 106q7.7 -6 15.3 0t15.3 0t15.3 0t15.3 0t15.3 0t15.3 0", wave);
    svg.path("M19 115q7.7 -6 15.3 0t15.3 0t15.3 0t15.3 0", wave);
  }
}
