package org.meadowmark.core.write.proposal;

import org.meadowmark.core.write.Figures;

/** A scale bar of a round ground length, in four parts. */
final class ScaleBar {
  private static final int PARTS = 4;
  private static final double HEIGHT = 7;

  private ScaleBar() {}

  /**
   * Draws the bar.
   *
   * @param most longest it may be, in units of the drawing
   * @param metresPerUnit ground metres in a unit of the drawing
   * @return its length in units of the drawing
   */
  static double draw(SvgWriter svg, double x, double y, double most, double metresPerUnit) {
    double metres = RoundSteps.atMost(most * metresPerUnit);
    double length = metres / metresPerUnit;
    double part = length / PARTS;
    for (int i = 0; i < PARTS; i++) {
      svg.rectangle(
          x + i * part,
          y,
          part,
          HEIGHT,
          "fill",
          i % 2 == 0 ? MapColours.INK : MapColours.WHITE,
          "stroke",
          MapColours.INK,
          "stroke-width",
          "1");
    }
    svg.label(x, y + 21, "0", SvgWriter.type("14", "start", MapColours.INK));
    svg.label(x + length, y + 21, length(metres), SvgWriter.type("14", "middle", MapColours.INK));
    return length;
  }

  /** The length of a bar, which is round and so needs no rounding. */
  static String length(double metres) {
    return metres < 1_000
        ? Figures.chosenLength(metres)
        : Figures.count(Math.round(metres / 1_000)) + Figures.UNIT_SPACE + "km";
  }
}
