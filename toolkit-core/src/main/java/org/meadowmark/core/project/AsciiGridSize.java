package org.meadowmark.core.project;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Holds what an ESRI ASCII grid states about its size against the size of the file, before the
 * library allocates by it.
 */
final class AsciiGridSize {
  private static final int HEADER_BYTES = 4_096;
  private static final Pattern COLUMNS = statedNumber("ncols");
  private static final Pattern ROWS = statedNumber("nrows");

  private AsciiGridSize() {}

  private static Pattern statedNumber(String name) {
    return Pattern.compile("(?:\\A|\\s)" + name + "\\s+([0-9]{1,10})\\s", Pattern.CASE_INSENSITIVE);
  }

  /**
   * Number of cells.
   *
   * @throws GridFileException if the header is not one, or states more cells than the file can hold
   */
  static long cells(Path file) throws IOException {
    byte[] start;
    try (InputStream stream = Files.newInputStream(file)) {
      start = stream.readNBytes(HEADER_BYTES);
    }
    String header = new String(start, StandardCharsets.ISO_8859_1);
    Matcher columns = COLUMNS.matcher(header);
    Matcher rows = ROWS.matcher(header);
    if (!columns.find() || !rows.find()) {
      throw new GridFileException("its first lines do not state ncols and nrows");
    }
    long wide = Long.parseLong(columns.group(1));
    long high = Long.parseLong(rows.group(1));
    long size = Files.size(file);
    // A cell takes a digit and a blank or line end.
    if (wide > size || high > size || wide * high > size / 2 + 1) {
      throw new GridFileException(
          "it states %d columns and %d rows, more cells than the file holds".formatted(wide, high));
    }
    if (wide == 0 || high == 0) {
      throw new GridFileException("it states no cells");
    }
    return wide * high;
  }
}
