package org.meadowmark.core.write.style;

/** How a feature is drawn; sizes are pixels. */
sealed interface Symbol {
  /** A surface with an outline. */
  record Surface(String fill, double opacity, String outline, double outlineWidth)
      implements Symbol {}

  /** A line, or the outline of a surface; {@code dashes} is empty for an unbroken line. */
  record Line(String colour, double width, double opacity, String dashes) implements Symbol {
    Line(String colour, double width) {
      this(colour, width, 1, "");
    }
  }

  /** A sign at a point: a shape that the standard names, turned clockwise by some degrees. */
  record Sign(String shape, String fill, String outline, double size, double rotation)
      implements Symbol {}
}
