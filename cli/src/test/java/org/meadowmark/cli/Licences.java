package org.meadowmark.cli;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** Names of licences as projects state them, and those known from memory. */
final class Licences {
  /** What is shipped may be under it. */
  static final String YES = "yes";

  /**
   * A licence.
   *
   * @param name short name for lists
   * @param allowed {@link #YES}, or that it is fine only beside another choice or not shipped
   */
  record Licence(String name, String allowed) {}

  private record Stated(Pattern pattern, Licence licence) {}

  private record Remembered(Pattern artifact, String licence, String remark) {}

  private static final List<Stated> STATED =
      rows("licences.csv").stream()
          .map(
              row ->
                  new Stated(
                      Pattern.compile(row.get(0), Pattern.CASE_INSENSITIVE),
                      new Licence(row.get(1), row.get(2))))
          .toList();

  private static final List<Remembered> REMEMBERED =
      rows("memory.csv").stream()
          .map(
              row ->
                  new Remembered(
                      Pattern.compile(row.get(0).replace(".", "\\.").replace("*", ".*")),
                      row.get(1),
                      row.get(2)))
          .toList();

  private Licences() {}

  /** The licence that a stated name means; empty where the name is on no list. */
  static Optional<Licence> named(String stated) {
    String text = stated.replaceAll("\\s+", " ").strip();
    return STATED.stream()
        .filter(s -> s.pattern().matcher(text).matches())
        .map(Stated::licence)
        .findFirst();
  }

  /** What is remembered of an artifact, as in {@code group:artifact}. */
  static Optional<String> remembered(String artifact) {
    return REMEMBERED.stream()
        .filter(r -> r.artifact().matcher(artifact).matches())
        .map(r -> r.licence() + (r.remark().isEmpty() ? "" : "; " + r.remark()))
        .findFirst();
  }

  private static List<CSVRecord> rows(String file) {
    try (Reader in =
        new InputStreamReader(
            Licences.class.getResourceAsStream("/licences/" + file), StandardCharsets.UTF_8)) {
      List<CSVRecord> rows = new ArrayList<>(CSVFormat.DEFAULT.parse(in).getRecords());
      return rows.subList(1, rows.size());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
