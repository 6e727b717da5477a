package org.meadowmark.core.write.table;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToLongFunction;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.KeptElsewhere;
import org.meadowmark.core.write.Column;
import org.meadowmark.core.write.Column.Type;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.ResultTable.GeometryKind;
import org.meadowmark.core.write.ResultTable.Row;

/**
 * The definition of a table whose rows are made from records of one type.
 *
 * @param <T> what a row is made from
 */
final class TableLayout<T> {
  /** Decimals kept of a real number: more would be rounding noise of the computation. */
  private static final double DECIMAL_SHIFT = 1e6;

  /** A larger number has no more than six decimals anyway. */
  private static final double LARGEST_ROUNDED = 1e9;

  private static final double PERCENT = 100;

  private record Cell<T>(Column column, Function<? super T, ?> value) {}

  private final String name;
  private final String description;
  private final GeometryKind geometryKind;
  private final Function<? super T, Optional<Geometry>> geometry;
  private final Comparator<? super T> order;
  private final List<Cell<T>> cells;

  private TableLayout(Builder<T> builder) {
    this.name = builder.name;
    this.description = builder.description;
    this.geometryKind = builder.geometryKind;
    this.geometry = builder.geometry;
    this.order = builder.order;
    this.cells = List.copyOf(builder.cells);
  }

  /**
   * Starts the definition of a table.
   *
   * @param name snake-case name
   * @param order order of the rows
   * @param description what a row is, one sentence
   */
  static <T> Builder<T> named(String name, Comparator<? super T> order, String description) {
    return new Builder<>(name, order, description);
  }

  String name() {
    return name;
  }

  String description() {
    return description;
  }

  GeometryKind geometryKind() {
    return geometryKind;
  }

  List<Column> columns() {
    return cells.stream().map(Cell::column).toList();
  }

  /** Makes the table; rows are sorted now and their values read while the table is written. */
  ResultTable table(Collection<? extends T> records) {
    Collection<? extends T> sorted = inOrder(records);
    Iterable<Row> rows = () -> sorted.stream().<Row>map(this::row).iterator();
    return new ResultTable(name, description, columns(), geometryKind, rows);
  }

  /** Records that are kept elsewhere and are in order already stay there. */
  private Collection<? extends T> inOrder(Collection<? extends T> records) {
    if (records instanceof KeptElsewhere && isInOrder(records)) {
      return records;
    }
    List<T> sorted = new ArrayList<>(records);
    sorted.sort(order);
    return sorted;
  }

  private boolean isInOrder(Collection<? extends T> records) {
    T last = null;
    for (T each : records) {
      if (last != null && order.compare(last, each) > 0) {
        return false;
      }
      last = each;
    }
    return true;
  }

  private Row row(T rowRecord) {
    List<Object> values = new ArrayList<>(cells.size());
    for (Cell<T> cell : cells) {
      values.add(cell.value().apply(rowRecord));
    }
    return new Row(values, geometry.apply(rowRecord));
  }

  /** Collects columns in order. */
  static final class Builder<T> {
    private final String name;
    private final String description;
    private final Comparator<? super T> order;
    private final List<Cell<T>> cells = new ArrayList<>();
    private GeometryKind geometryKind = GeometryKind.NONE;
    private Function<? super T, Optional<Geometry>> geometry = row -> Optional.empty();

    private Builder(String name, Comparator<? super T> order, String description) {
      this.name = name;
      this.order = order;
      this.description = description;
    }

    Builder<T> geometry(GeometryKind kind, Function<? super T, ? extends Geometry> value) {
      return optionalGeometry(kind, row -> Optional.of(value.apply(row)));
    }

    Builder<T> optionalGeometry(
        GeometryKind kind, Function<? super T, Optional<Geometry>> optionalValue) {
      geometryKind = kind;
      geometry = optionalValue;
      return this;
    }

    /** A text; an empty one is written as no value. */
    Builder<T> text(String column, String meaning, Function<? super T, String> value) {
      return column(
          column,
          Type.TEXT,
          "",
          meaning,
          row -> {
            String text = value.apply(row);
            return text == null || text.isEmpty() ? null : text;
          });
    }

    Builder<T> count(String column, String meaning, ToLongFunction<? super T> value) {
      return column(column, Type.INTEGER, "1", meaning, value::applyAsLong);
    }

    Builder<T> real(String column, String unit, String meaning, ToDoubleFunction<? super T> value) {
      return column(
          column, Type.REAL, unit, meaning, row -> rounded(column, value.applyAsDouble(row)));
    }

    Builder<T> optionalReal(
        String column, String unit, String meaning, Function<? super T, OptionalDouble> value) {
      return column(
          column,
          Type.REAL,
          unit,
          meaning,
          row -> {
            OptionalDouble found = value.apply(row);
            return found.isPresent() ? rounded(column, found.getAsDouble()) : null;
          });
    }

    /** A share between 0 and 1, written in percent. */
    Builder<T> percent(String column, String meaning, Function<? super T, OptionalDouble> share) {
      return optionalReal(
          column,
          "%",
          meaning,
          row -> {
            OptionalDouble found = share.apply(row);
            return found.isPresent()
                ? OptionalDouble.of(PERCENT * found.getAsDouble())
                : OptionalDouble.empty();
          });
    }

    Builder<T> column(
        String column, Type type, String unit, String meaning, Function<? super T, ?> value) {
      cells.add(new Cell<>(new Column(column, type, unit, meaning), value));
      return this;
    }

    TableLayout<T> build() {
      return new TableLayout<>(this);
    }

    private Double rounded(String column, double value) {
      if (!Double.isFinite(value)) {
        throw new IllegalStateException(name + "." + column + " is not a finite number: " + value);
      }
      double kept =
          Math.abs(value) < LARGEST_ROUNDED
              ? Math.rint(value * DECIMAL_SHIFT) / DECIMAL_SHIFT
              : value;
      return kept == 0 ? 0.0 : kept;
    }
  }
}
