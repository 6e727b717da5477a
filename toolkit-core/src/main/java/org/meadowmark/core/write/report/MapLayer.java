package org.meadowmark.core.write.report;

import java.util.AbstractList;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.RandomAccess;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToLongFunction;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.write.Figures;
import org.meadowmark.core.write.XmlText;
import org.meadowmark.core.write.report.ReportColumn.Kind;

/**
 * A layer of the map with its attributes.
 *
 * @param key short name, stable
 * @param form how it is drawn
 * @param shown whether it is drawn when the report opens
 * @param geometries one a feature, on the analysis grid
 * @param classes classes that features are drawn by
 * @param classOf place of the class, one a feature
 * @param columns attributes; the first holds the id. None for a background
 * @param total features before any were left out
 */
record MapLayer(
    String key,
    Form form,
    boolean shown,
    List<Geometry> geometries,
    List<StyleClass> classes,
    int[] classOf,
    List<ReportColumn> columns,
    int total) {

  /** How a layer is drawn. */
  enum Form {
    AREA,
    OUTLINE,
    LINE,
    POINT
  }

  /**
   * A class of features that are drawn alike.
   *
   * @param label name for people
   * @param style key of its style
   */
  record StyleClass(String label, String style) {}

  /** Whether it is only something to look at. */
  boolean isBackground() {
    return columns.isEmpty();
  }

  /** Features that were left out. */
  int leftOut() {
    return total - geometries.size();
  }

  /** Features in a class. */
  long count(int place) {
    long count = 0;
    for (int each : classOf) {
      count += each == place ? 1 : 0;
    }
    return count;
  }

  /**
   * Starts a layer.
   *
   * @param rows what features are made from, most important first
   * @param most how many of them are taken
   */
  static <T> Builder<T> of(String key, Form form, List<T> rows, int most) {
    return new Builder<>(key, form, rows.subList(0, Math.min(most, rows.size())), rows.size());
  }

  /**
   * Begins a layer of rows that were chosen already.
   *
   * @param chosen what features are made from, most important first
   * @param total how many they were chosen from
   */
  static <T> Builder<T> chosen(String key, Form form, List<T> chosen, int total) {
    return new Builder<>(key, form, chosen, total);
  }

  /** Collects what a layer is made of. */
  static final class Builder<T> {
    private final String key;
    private final Form form;
    private final List<T> rows;
    private final int total;
    private final List<Asked<T>> columns = new ArrayList<>();
    private boolean shown = true;

    private Builder(String key, Form form, List<T> rows, int total) {
      this.key = key;
      this.form = form;
      this.total = total;
      this.rows = rows;
    }

    Builder<T> hidden() {
      shown = false;
      return this;
    }

    Builder<T> text(String label, Function<? super T, String> value) {
      return column(
          label,
          "",
          Kind.TEXT,
          row -> {
            String text = value.apply(row);
            return text == null || text.isEmpty() ? null : XmlText.legal(text);
          });
    }

    Builder<T> count(String label, ToLongFunction<? super T> value) {
      return column(label, "", Kind.COUNT, value::applyAsLong);
    }

    Builder<T> optionalCount(String label, Function<? super T, Long> value) {
      return column(label, "", Kind.COUNT, value);
    }

    Builder<T> number(String label, String unit, ToDoubleFunction<? super T> value) {
      return column(label, unit, Kind.NUMBER, row -> rounded(value.applyAsDouble(row)));
    }

    Builder<T> optional(String label, String unit, Function<? super T, OptionalDouble> value) {
      return column(
          label,
          unit,
          Kind.NUMBER,
          row -> {
            OptionalDouble found = value.apply(row);
            return found.isPresent() ? rounded(found.getAsDouble()) : null;
          });
    }

    /** As it is shown, so that the page and the paper cannot round it differently. */
    private static Double rounded(double value) {
      return Figures.rounded(value).doubleValue();
    }

    private Builder<T> column(
        String label, String unit, Kind kind, Function<? super T, ?> valueOf) {
      columns.add(new Asked<>(label, unit, kind, valueOf, new ArrayList<>(rows.size())));
      return this;
    }

    /** Whether a column has a value; a layer without features keeps all. */
    private boolean saysSomething(Asked<T> column) {
      return column == columns.get(0)
          || rows.isEmpty()
          || column.values().stream().anyMatch(Objects::nonNull);
    }

    /** The layer with one class. */
    MapLayer build(Function<? super T, Geometry> geometry, String label, String style) {
      return build(geometry, List.of(new StyleClass(label, style)), row -> 0);
    }

    /**
     * The layer.
     *
     * @param geometry geometry of a feature
     * @param classes classes
     * @param classOf place of the class of a feature
     */
    MapLayer build(
        Function<? super T, Geometry> geometry,
        List<StyleClass> classes,
        Function<? super T, Integer> classOf) {
      int[] classOfRow = new int[rows.size()];
      int place = 0;
      for (T row : rows) {
        columns.forEach(column -> column.take(row));
        classOfRow[place++] = classOf.apply(row);
      }
      return new MapLayer(
          key,
          form,
          shown,
          new Geometries<>(rows, geometry),
          classes,
          classOfRow,
          columns.stream().filter(this::saysSomething).map(Asked::column).toList(),
          total);
    }
  }

  /** A column that is being filled. */
  private record Asked<T>(
      String label, String unit, Kind kind, Function<? super T, ?> valueOf, List<Object> values) {
    void take(T row) {
      values.add(valueOf.apply(row));
    }

    ReportColumn column() {
      return new ReportColumn(label, unit, kind, values);
    }
  }

  /** Asks the rows each time: those of a large survey are kept elsewhere, and are large. */
  private static final class Geometries<T> extends AbstractList<Geometry> implements RandomAccess {
    private final List<T> rows;
    private final Function<? super T, Geometry> geometry;

    Geometries(List<T> rows, Function<? super T, Geometry> geometry) {
      this.rows = rows;
      this.geometry = geometry;
    }

    @Override
    public Geometry get(int i) {
      return geometry.apply(rows.get(i));
    }

    @Override
    public int size() {
      return rows.size();
    }
  }
}
