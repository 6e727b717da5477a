package org.meadowmark.core.write.table;

import java.util.List;
import java.util.Locale;
import org.meadowmark.core.write.Column;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** The data dictionary of the result tables, made from their definitions. */
public final class DataDictionary {
  /** The dictionary in an output folder. */
  public static final String FILE_NAME = "data-dictionary.md";

  private static final String HEAD =
      """
      # Data dictionary

      An assessment writes these tables. Each is a CSV file in `tables` and a layer (without a
      geometry: a table) of `results.gpkg`. This page is generated from the definitions that the
      tables are made from; a test fails when the two differ.

      """;

  private static final String OUTPUT_HEAD =
      """
      # Data dictionary

      The tables of this folder. Each is a CSV file in `tables` and a layer (without a geometry: a
      table) of `results.gpkg`.

      """;

  private static final String NOTES =
      """
      - Areas and lengths are ground values unless the correction to the ground was switched off;
        the run record says which. Geometries are on the analysis grid that it names.
      - Real numbers are rounded to six decimals. An empty CSV field or a database NULL means that
        there is no value: it is not zero.
      - A severity class always stands beside the share it was read from and what that share was
        divided by.
      - "No scar seen" is not "no scar": a scar narrower than the imagery can show is not in here.
      """;

  private static final String COMPARISON =
      """

      # Tables of a comparison of seasons

      `compare-seasons` writes these, in the same way.
      """;

  private DataDictionary() {}

  /** {@return the dictionary as Markdown, with a line end after the last line} */
  public static String markdown() {
    StringBuilder text = new StringBuilder(HEAD).append(NOTES);
    ResultTables.layouts().forEach(layout -> append(text, layout));
    text.append(COMPARISON);
    ComparisonTables.layouts().forEach(layout -> append(text, layout));
    return text.toString();
  }

  /**
   * {@return the dictionary of the tables of one run, with the columns that it has}
   *
   * @param tables tables in the order to describe them; their rows are not read
   */
  public static String of(List<ResultTable> tables) {
    StringBuilder text = new StringBuilder(OUTPUT_HEAD).append(NOTES);
    tables.forEach(
        table ->
            append(text, table.name(), table.description(), table.geometryKind(), table.columns()));
    return text.toString();
  }

  private static void append(StringBuilder text, TableLayout<?> layout) {
    append(text, layout.name(), layout.description(), layout.geometryKind(), layout.columns());
  }

  private static void append(
      StringBuilder text,
      String name,
      String description,
      GeometryKind geometryKind,
      List<Column> columns) {
    text.append("\n## ").append(name).append("\n\n");
    text.append(description).append(" ").append(geometry(geometryKind));
    text.append("\n\n| column | type | unit | meaning |\n| --- | --- | --- | --- |\n");
    for (Column column : columns) {
      text.append("| `")
          .append(column.name())
          .append("` | ")
          .append(column.type().name().toLowerCase(Locale.ROOT))
          .append(" | ")
          .append(column.unit())
          .append(" | ")
          .append(column.description().replace("|", "\\|"))
          .append(" |\n");
    }
  }

  private static String geometry(GeometryKind kind) {
    return switch (kind) {
      case NONE -> "No geometry.";
      case GEOMETRY -> "Geometry: lines and polygons.";
      default -> "Geometry: " + kind.name().toLowerCase(Locale.ROOT) + ".";
    };
  }
}
