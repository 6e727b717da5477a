package org.meadowmark.core.write.table;

import java.util.OptionalDouble;
import java.util.function.Function;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.PositionalAccuracy;
import org.meadowmark.core.write.Column.Type;

/** Columns that say whether a width is less than the mapping can show. */
final class WidthFlags {
  private WidthFlags() {}

  static <T> void add(
      TableLayout.Builder<T> table, Parameters parameters, Function<T, OptionalDouble> width) {
    OptionalDouble accuracy =
        parameters.position().stream()
            .mapToDouble(PositionalAccuracy::accuracy95Metres)
            .findFirst();
    table
        .column(
            "narrower_than_pixel",
            Type.BOOLEAN,
            "",
            "Whether the width is less than a pixel of the imagery; no value where pixel_size_m is"
                + " not stated.",
            row -> isLess(width.apply(row), parameters.pixelSizeMetres()))
        .column(
            "narrower_than_position_accuracy",
            Type.BOOLEAN,
            "",
            "Whether the width is less than the positional accuracy at 95 %; no value where the"
                + " positional error is not stated.",
            row -> isLess(width.apply(row), accuracy));
  }

  private static Boolean isLess(OptionalDouble width, OptionalDouble limit) {
    return width.isPresent() && limit.isPresent()
        ? Boolean.valueOf(width.getAsDouble() < limit.getAsDouble())
        : null;
  }
}
