package org.meadowmark.core.reference;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.csv.DuplicateHeaderMode;
import org.meadowmark.core.model.BoundedFile;
import org.meadowmark.core.model.MeadowmarkException;

/**
 * The reference tables as files: those packed into the toolkit, each replaced by a file of the same
 * name in a folder of the user's where there is one.
 *
 * <p>Tables are CSV (<a href="https://www.rfc-editor.org/rfc/rfc4180">RFC 4180</a>), UTF-8, a
 * header first. Immutable; the folder is read at every call.
 */
public final class TableLibrary {
  private static final String RESOURCES = "/org/meadowmark/shared/";
  private static final String SUFFIX = ".csv";
  private static final int MOST_BYTES = 10_000_000;
  private static final char BYTE_ORDER_MARK = '\uFEFF';
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180
          .builder()
          .setHeader()
          .setSkipHeaderRecord(true)
          .setIgnoreEmptyLines(true)
          .setDuplicateHeaderMode(DuplicateHeaderMode.DISALLOW)
          .get();

  /** The tables there are. */
  public enum Table {
    /** Plants that beds are made of. */
    SPECIES("species"),
    /** What makes scars, with the width that a scar of the cause has where none is given. */
    SCAR_CAUSES("scar-causes"),
    /** Classes of a bed by the share of it that is scarred. */
    SEVERITY_CLASSES("severity-classes"),
    /** Which mark suits which damage, by cause and pattern. */
    DEVICE_RULES("device-rules"),
    /** Animals that cross gaps alike, with the distance that they cross. */
    FISH_GUILDS("fish-guilds"),
    /** Times that scars take to close, by species. */
    SCAR_RECOVERY("scar-recovery"),
    /** How fast rhizomes grow. */
    RHIZOME_ELONGATION("rhizome-elongation"),
    /** Defaults, limits and sources of the parameters. */
    PARAMETERS("parameters");

    private final String key;

    Table(String key) {
      this.key = key;
    }

    /** {@return name without the suffix} */
    public String key() {
      return key;
    }

    /** {@return name of the file} */
    public String fileName() {
      return key + SUFFIX;
    }
  }

  private final Optional<Path> folder;

  private TableLibrary(Optional<Path> folder) {
    this.folder = folder;
  }

  /** {@return the tables packed into the toolkit} */
  public static TableLibrary bundled() {
    return new TableLibrary(Optional.empty());
  }

  /**
   * {@return the tables of a folder; one that it lacks is taken from the toolkit}
   *
   * @param folder folder that holds one or more of the tables
   * @throws MeadowmarkException if there is no such folder, it holds no table, or it holds a CSV
   *     file that is none of the tables
   */
  public static TableLibrary of(Path folder) {
    List<String> known = Arrays.stream(Table.values()).map(Table::fileName).toList();
    TreeSet<String> found = new TreeSet<>();
    try (Stream<Path> files = Files.list(folder)) {
      files
          .map(f -> f.getFileName().toString())
          .filter(n -> n.endsWith(SUFFIX))
          .forEach(found::add);
    } catch (IOException e) {
      throw new MeadowmarkException(
          folder + ": folder of tables cannot be read; give a folder that exists", e);
    }
    for (String name : found) {
      if (!known.contains(name)) {
        throw new MeadowmarkException(
            folder.resolve(name)
                + ": is no reference table; use one of these names: "
                + String.join(", ", known));
      }
    }
    if (found.isEmpty()) {
      throw new MeadowmarkException(
          folder
              + ": holds no reference table; put one or more of these in: "
              + String.join(", ", known));
    }
    return new TableLibrary(Optional.of(folder));
  }

  /**
   * {@return where a table is read from: the path of a file, or its name where it is the packed
   * one}
   *
   * @param table the table
   */
  public String label(Table table) {
    return ownFile(table).map(Path::toString).orElse(table.fileName());
  }

  /**
   * {@return the text of a table, without a byte order mark}
   *
   * @param table the table
   * @throws MeadowmarkException if the file cannot be read or is not UTF-8
   */
  public String text(Table table) {
    Optional<Path> own = ownFile(table);
    String text;
    try {
      text = own.isPresent() ? BoundedFile.text(own.get(), MOST_BYTES) : packedText(table);
    } catch (BoundedFile.TooLongException e) {
      throw new MeadowmarkException(
          label(table) + ": is " + e.getMessage() + "; give a table like the packed one", e);
    } catch (CharacterCodingException e) {
      throw new MeadowmarkException(label(table) + ": is not UTF-8; save it as UTF-8", e);
    } catch (IOException e) {
      throw new MeadowmarkException(
          label(table) + ": cannot be read (" + e.getMessage() + "); check the file", e);
    }
    return !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? text.substring(1) : text;
  }

  /**
   * {@return the rows of a table in file order}
   *
   * @param table the table
   * @param columns names that the header must have, all of them and no other
   * @throws MeadowmarkException if the table is not CSV with such a header, or has no row
   */
  public List<TableRow> rows(Table table, List<String> columns) {
    String label = label(table);
    List<TableRow> rows = new ArrayList<>();
    try (CSVParser parser = CSVParser.parse(text(table), FORMAT)) {
      checkHeader(label, parser.getHeaderNames(), columns);
      long lastLine = parser.getCurrentLineNumber();
      for (CSVRecord csv : parser) {
        long line = lastLine + 1;
        lastLine = parser.getCurrentLineNumber();
        if (!csv.isConsistent()) {
          throw new MeadowmarkException(
              label
                  + ": line "
                  + line
                  + ": has "
                  + csv.size()
                  + " values, not "
                  + columns.size()
                  + "; put values with a comma in double quotes");
        }
        Map<String, String> values = new LinkedHashMap<>();
        csv.toMap().forEach((name, value) -> values.put(name.strip(), value.strip()));
        rows.add(new TableRow(label, line, values));
      }
    } catch (IOException | UncheckedIOException | IllegalArgumentException e) {
      throw new MeadowmarkException(
          label + ": is not CSV: " + firstLine(e) + "; correct the file", e);
    }
    if (rows.isEmpty()) {
      throw new MeadowmarkException(label + ": has no row; give at least one");
    }
    return List.copyOf(rows);
  }

  private static void checkHeader(String label, List<String> header, List<String> columns) {
    List<String> names = header.stream().map(String::strip).toList();
    for (String column : columns) {
      if (!names.contains(column)) {
        throw headerError(label, "column '" + column + "' is missing", columns);
      }
    }
    for (String name : names) {
      if (!columns.contains(name)) {
        throw headerError(label, "column '" + name + "' is not known", columns);
      }
    }
  }

  private static MeadowmarkException headerError(
      String label, String problem, List<String> columns) {
    return new MeadowmarkException(
        label + ": line 1: " + problem + "; the columns are: " + String.join(",", columns));
  }

  private static String firstLine(Exception e) {
    Throwable cause = e instanceof UncheckedIOException ? e.getCause() : e;
    return String.valueOf(cause.getMessage()).lines().findFirst().orElse("");
  }

  private Optional<Path> ownFile(Table table) {
    return folder.map(f -> f.resolve(table.fileName())).filter(Files::exists);
  }

  private static String packedText(Table table) throws IOException {
    try (InputStream in = TableLibrary.class.getResourceAsStream(RESOURCES + table.fileName())) {
      if (in == null) {
        throw new IllegalStateException("packed table is missing: " + table.fileName());
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
