package org.meadowmark.core.write;

import com.fasterxml.jackson.core.io.NumberOutput;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.WKTWriter;
import org.meadowmark.core.model.FormulaGuard;

/**
 * Writes a result table as CSV: RFC 4180, UTF-8 without a byte order mark, a header line, lines
 * ended by CR LF, the same in every locale.
 *
 * <p>A number with decimals is the shortest plain decimal that reads back as the same double, with
 * at least one decimal; a date is {@code 2024-06-30}; an unknown value is empty. A text that a
 * spreadsheet would take for a formula gets a leading apostrophe ({@link FormulaGuard}).
 */
public final class CsvTableWriter {
  /** Name of the column with the geometry as well-known text. */
  public static final String GEOMETRY_COLUMN = "wkt";

  private CsvTableWriter() {}

  /**
   * Writes a file.
   *
   * @param file where to; its folder must exist
   * @param overwrite whether an existing file is replaced
   * @param table the table
   * @param withGeometry whether a last column {@value #GEOMETRY_COLUMN} holds the geometry
   * @throws org.meadowmark.core.model.MeadowmarkException if the file exists and {@code overwrite}
   *     is false, or cannot be written
   * @throws IllegalArgumentException if the table breaks its own description
   */
  public static void write(Path file, boolean overwrite, ResultTable table, boolean withGeometry) {
    if (withGeometry) {
      TableRules.checkNames(table, GEOMETRY_COLUMN);
    } else {
      TableRules.checkNames(table);
    }
    AtomicFile.write(file, overwrite, temporary -> writeNew(temporary, table, withGeometry));
  }

  private static void writeNew(Path file, ResultTable table, boolean withGeometry)
      throws IOException {
    WKTWriter wkt = new WKTWriter(2);
    // The stream is closed by itself: a writer that cannot write its last bytes leaves it open.
    try (OutputStream stream = Files.newOutputStream(file, StandardOpenOption.CREATE_NEW);
        Writer writer = new BufferedWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8));
        CSVPrinter printer = new CSVPrinter(writer, CSVFormat.RFC4180)) {
      List<String> cells = new ArrayList<>();
      table.columns().forEach(column -> cells.add(column.name()));
      if (withGeometry) {
        cells.add(GEOMETRY_COLUMN);
      }
      printer.printRecord(cells);
      for (ResultTable.Row row : table.rows()) {
        cells.clear();
        for (Object value : TableRules.values(table, row)) {
          cells.add(cell(value));
        }
        if (withGeometry) {
          Geometry geometry = TableRules.geometry(table, row).orElse(null);
          cells.add(geometry == null ? null : wkt.write(geometry));
        }
        printer.printRecord(cells);
      }
    }
  }

  private static String cell(Object value) {
    if (value == null) {
      return null;
    }
    if (value instanceof String text) {
      return FormulaGuard.guarded(text);
    }
    if (value instanceof Double number) {
      return plainDecimal(number);
    }
    return value.toString();
  }

  /** The shortest plain decimal that reads back as the same number, with at least one decimal. */
  static String plainDecimal(double number) {
    // Double.toString is not the shortest before Java 19.
    String plain =
        new BigDecimal(NumberOutput.toString(number, true)).stripTrailingZeros().toPlainString();
    return plain.indexOf('.') < 0 ? plain + ".0" : plain;
  }
}
