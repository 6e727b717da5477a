package org.meadowmark.core.read.csv;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.read.FeatureSink;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.read.LayerProblems;
import org.meadowmark.core.read.LayerReader;
import org.meadowmark.core.read.SourceFeature;
import org.meadowmark.core.read.StrictText;
import org.meadowmark.core.survey.LayerSource;

/**
 * Reads CSV with a header line, in UTF-8 with or without a byte order mark, separated by comma,
 * semicolon or tab, whichever the header line has most of.
 *
 * <p>The id of a feature is the number of the line where its record starts. The geometry is
 * well-known text, also with {@code SRID=n;} before it (taken as {@code EPSG:n}), or two numbers;
 * the columns are those that the survey names, else those with a usual name. Cells are typed by
 * their look: whole numbers, decimals, dates such as {@code 2024-06-30}, else text; a number with a
 * leading zero stays text.
 *
 * <p>Source: RFC 4180, <i>Common Format and MIME Type for CSV Files</i> (2005).
 */
public final class CsvLayerReader implements LayerReader {
  private static final char[] DELIMITERS = {',', ';', '\t'};
  private static final int LONGEST_HEADER = 1 << 16;

  private final boolean needsGeometry;

  /** A reader of layers: a file without a geometry is refused. */
  public CsvLayerReader() {
    this(true);
  }

  /**
   * A reader of layers or of plain tables.
   *
   * @param needsGeometry whether a file without geometry columns is refused
   */
  public CsvLayerReader(boolean needsGeometry) {
    this.needsGeometry = needsGeometry;
  }

  @Override
  public void read(LayerSource source, FeatureSink sink) {
    LayerProblems problems = LayerProblems.ofFile(source);
    problems.refuseOtherLayer(List.of(problems.layer()));
    try (BufferedReader reader = StrictText.open(source.file(), StandardCharsets.UTF_8)) {
      CSVFormat format = CSVFormat.DEFAULT.builder().setDelimiter(delimiter(reader)).get();
      RecordLimit limited = new RecordLimit(reader);
      try (CSVParser parser = CSVParser.builder().setReader(limited).setFormat(format).get()) {
        readRecords(new RecordLines(parser, limited, problems), problems, sink);
      }
    } catch (CharacterCodingException e) {
      throw notUtf8(problems, e);
    } catch (IOException e) {
      throw problems.unreadable(e);
    }
  }

  private static RuntimeException notUtf8(LayerProblems problems, Exception cause) {
    return problems.refused("is not UTF-8", "save it as CSV UTF-8", cause);
  }

  private static char delimiter(BufferedReader reader) throws IOException {
    reader.mark(LONGEST_HEADER);
    int[] counts = new int[DELIMITERS.length];
    boolean quoted = false;
    for (int i = 0; i < LONGEST_HEADER - 1; i++) {
      int character = reader.read();
      if (character < 0 || (!quoted && (character == '\n' || character == '\r'))) {
        break;
      }
      if (character == '"') {
        quoted = !quoted;
      }
      for (int d = 0; d < DELIMITERS.length; d++) {
        if (!quoted && character == DELIMITERS[d]) {
          counts[d]++;
        }
      }
    }
    reader.reset();
    int most = 0;
    for (int d = 1; d < DELIMITERS.length; d++) {
      if (counts[d] > counts[most]) {
        most = d;
      }
    }
    return DELIMITERS[most];
  }

  private void readRecords(RecordLines records, LayerProblems problems, FeatureSink sink) {
    CSVRecord header = records.next();
    if (header == null) {
      throw problems.refused("has no header line", "write the column names into its first line");
    }
    List<String> names = names(header, problems);
    GeometryCells cells =
        GeometryCells.find(names, problems.source().geometryColumns(), needsGeometry, problems);
    CSVRecord record = records.next();
    Optional<String> srid = record == null ? Optional.empty() : cells.srid(record);
    List<String> attributeNames = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      if (!cells.holds(i) && !names.get(i).isEmpty()) {
        attributeNames.add(names.get(i));
      }
    }
    sink.header(
        new LayerHeader(
            problems.layer(),
            attributeNames,
            srid.map(number -> CrsText.ofCode("EPSG:" + number)),
            -1));
    while (record != null) {
      sendRecord(record, Long.toString(records.line()), names, cells, srid, problems, sink);
      record = records.next();
    }
  }

  private static List<String> names(CSVRecord header, LayerProblems problems) {
    List<String> names = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (String cell : header) {
      String name = cell.strip();
      if (!name.isEmpty() && !seen.add(name.toLowerCase(Locale.ROOT))) {
        throw problems.refused(
            "has two columns named '" + LayerProblems.oneLine(name) + "'", "rename one of them");
      }
      names.add(name);
    }
    return names;
  }

  private static void sendRecord(
      CSVRecord record,
      String id,
      List<String> names,
      GeometryCells cells,
      Optional<String> srid,
      LayerProblems problems,
      FeatureSink sink) {
    if (record.size() != names.size()) {
      sink.finding(
          problems.skipped(
              id,
              FindingCode.UNREADABLE_FEATURE,
              "line %s has %d cells, the header %d".formatted(id, record.size(), names.size())));
      return;
    }
    Optional<Geometry> geometry;
    try {
      geometry = cells.read(record);
    } catch (ParseException e) {
      sink.finding(
          problems.skipped(
              id,
              FindingCode.UNREADABLE_FEATURE,
              "the geometry on line %s cannot be read (%s)"
                  .formatted(id, LayerProblems.detail(e))));
      return;
    }
    if (geometry.isPresent() && !cells.srid(record).equals(srid)) {
      sink.finding(
          problems.skipped(
              id,
              FindingCode.CRS_MISMATCH,
              "the SRID on line %s is not that of the first record".formatted(id)));
      return;
    }
    Map<String, Object> attributes = new HashMap<>();
    for (int i = 0; i < names.size(); i++) {
      Object value =
          cells.holds(i) || names.get(i).isEmpty() ? null : CellValues.parse(record.get(i));
      if (value != null) {
        attributes.put(names.get(i), value);
      }
    }
    sink.feature(new SourceFeature(problems.ref(id), geometry, attributes));
  }

  /** Records with the number of the line each starts on; failures in the layer's words. */
  private static final class RecordLines {
    private final Iterator<CSVRecord> records;
    private final CSVParser parser;
    private final RecordLimit limit;
    private final LayerProblems problems;
    private long line;

    RecordLines(CSVParser parser, RecordLimit limit, LayerProblems problems) {
      this.parser = parser;
      this.limit = limit;
      this.records = parser.iterator();
      this.problems = problems;
    }

    CSVRecord next() {
      limit.recordCame();
      try {
        if (!records.hasNext()) {
          return null;
        }
        CSVRecord record = records.next();
        long breaksInside = 0;
        for (String cell : record) {
          breaksInside += cell.chars().filter(character -> character == '\n').count();
        }
        line = parser.getCurrentLineNumber() - breaksInside;
        return record;
      } catch (UncheckedIOException | IllegalStateException e) {
        if (e.getCause() instanceof CharacterCodingException) {
          throw notUtf8(problems, e);
        }
        if (e.getCause() instanceof RecordLimit.TooLongException) {
          throw problems.refused(
              "has more than %d characters in the record after line %d"
                  .formatted(RecordLimit.MOST_CHARACTERS, line),
              "look for a quotation mark that is not closed, or write the layer as a GeoPackage",
              e);
        }
        throw problems.refused(
            "cannot be read on after line %d (%s)".formatted(line, LayerProblems.detail(e)),
            "look for a quotation mark that is not closed",
            e);
      }
    }

    long line() {
      return line;
    }
  }
}
