package org.meadowmark.core.read.csv;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.meadowmark.core.read.LayerProblems;
import org.meadowmark.core.read.Nesting;
import org.meadowmark.core.survey.LayerSource.GeometryColumns;

/** Finds the cells of a record that hold its geometry, and reads them. */
final class GeometryCells {
  private static final List<String> WKT_NAMES = List.of("wkt", "geom", "geometry", "the_geom");
  private static final List<String> X_NAMES =
      List.of("lon", "longitude", "long", "lng", "x", "easting");
  private static final List<String> Y_NAMES = List.of("lat", "latitude", "y", "northing");
  private static final Pattern SRID =
      Pattern.compile("\\ASRID=([0-9]{1,9});", Pattern.CASE_INSENSITIVE);

  private final GeometryFactory factory = new GeometryFactory();
  private final WKTReader wktReader = new WKTReader(factory);
  private final int wkt;
  private final int x;
  private final int y;

  private GeometryCells(int wkt, int x, int y) {
    this.wkt = wkt;
    this.x = x;
    this.y = y;
  }

  static GeometryCells find(
      List<String> names, GeometryColumns wanted, boolean needed, LayerProblems problems) {
    if (wanted.wkt().isPresent()) {
      return new GeometryCells(named(names, wanted.wkt().get(), problems), -1, -1);
    }
    if (wanted.x().isPresent() != wanted.y().isPresent()) {
      throw problems.refused(
          "only one of its two coordinate columns is named", "name the x and the y column");
    }
    if (wanted.x().isPresent()) {
      return new GeometryCells(
          -1, named(names, wanted.x().get(), problems), named(names, wanted.y().get(), problems));
    }
    OptionalInt wkt = usual(names, WKT_NAMES);
    if (wkt.isPresent()) {
      return new GeometryCells(wkt.getAsInt(), -1, -1);
    }
    OptionalInt x = usual(names, X_NAMES);
    OptionalInt y = usual(names, Y_NAMES);
    if (!needed && (x.isEmpty() || y.isEmpty())) {
      return new GeometryCells(-1, -1, -1);
    }
    if (x.isEmpty() || y.isEmpty()) {
      throw problems.refused(
          "has no column that looks like a geometry (columns: " + list(names) + ")",
          "name its column with well-known text, or its x and y columns");
    }
    return new GeometryCells(-1, x.getAsInt(), y.getAsInt());
  }

  private static int named(List<String> names, String wanted, LayerProblems problems) {
    int exact = names.indexOf(wanted);
    if (exact >= 0) {
      return exact;
    }
    return usual(names, List.of(wanted))
        .orElseThrow(
            () ->
                problems.refused(
                    "has no column '" + LayerProblems.oneLine(wanted) + "'",
                    "use one of: " + list(names)));
  }

  private static OptionalInt usual(List<String> names, List<String> wanted) {
    return wanted.stream()
        .flatMap(
            name ->
                Stream.iterate(0, i -> i < names.size(), i -> i + 1)
                    .filter(i -> names.get(i).equalsIgnoreCase(name)))
        .mapToInt(Integer::intValue)
        .findFirst();
  }

  private static String list(List<String> names) {
    return LayerProblems.oneLine(String.join(", ", names));
  }

  boolean holds(int column) {
    return column == wkt || column == x || column == y;
  }

  /** The number in {@code SRID=n;} before the well-known text of a record. */
  Optional<String> srid(CSVRecord record) {
    if (wkt < 0 || wkt >= record.size()) {
      return Optional.empty();
    }
    Matcher prefix = SRID.matcher(record.get(wkt).strip());
    return prefix.find() ? Optional.of(prefix.group(1)) : Optional.empty();
  }

  /**
   * The geometry of a record; empty where its cells are.
   *
   * @throws ParseException if the cells are no geometry
   */
  Optional<Geometry> read(CSVRecord record) throws ParseException {
    if (wkt >= 0) {
      String text = SRID.matcher(record.get(wkt).strip()).replaceFirst("").strip();
      return text.isEmpty() ? Optional.empty() : Optional.of(readWkt(text));
    }
    if (x < 0) {
      return Optional.empty();
    }
    String xText = record.get(x).strip();
    String yText = record.get(y).strip();
    if (xText.isEmpty() && yText.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(factory.createPoint(new Coordinate(number(xText), number(yText))));
  }

  private Geometry readWkt(String text) throws ParseException {
    if (Nesting.deeper(text, '(', ')', Nesting.DEEPEST)) {
      throw new ParseException(Nesting.TOO_DEEP);
    }
    try {
      return wktReader.read(text);
    } catch (RuntimeException e) {
      throw new ParseException(LayerProblems.detail(e));
    }
  }

  private static double number(String text) throws ParseException {
    try {
      return Double.parseDouble(text);
    } catch (NumberFormatException e) {
      throw new ParseException("'" + LayerProblems.oneLine(text) + "' is no number");
    }
  }
}
