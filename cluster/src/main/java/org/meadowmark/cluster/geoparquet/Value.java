package org.meadowmark.cluster.geoparquet;

import java.time.LocalDate;

/**
 * A value of an attribute or a column, in a form that every kind fits in.
 *
 * @param column number of the attribute in its layer or of the column in its table
 * @param kind what it is
 * @param text a text; empty for other kinds
 * @param bits a whole number, a truth value as 0 or 1, the bits of a number, or the days of a date
 *     since 1970-01-01
 */
public record Value(int column, Kind kind, String text, long bits) {
  /** Kinds of values. */
  public enum Kind {
    TEXT,
    INTEGER,
    REAL,
    BOOLEAN,
    DATE
  }

  /**
   * The form of a value.
   *
   * @param column number of the column
   * @param value String, Long, Integer, Double, Boolean or LocalDate
   * @throws IllegalArgumentException if it is of another type
   */
  public static Value of(int column, Object value) {
    if (value instanceof String text) {
      return new Value(column, Kind.TEXT, text, 0);
    } else if (value instanceof Long || value instanceof Integer) {
      return new Value(column, Kind.INTEGER, "", ((Number) value).longValue());
    } else if (value instanceof Double number) {
      return new Value(column, Kind.REAL, "", Double.doubleToRawLongBits(number));
    } else if (value instanceof Boolean truth) {
      return new Value(column, Kind.BOOLEAN, "", truth ? 1 : 0);
    } else if (value instanceof LocalDate date) {
      return new Value(column, Kind.DATE, "", date.toEpochDay());
    }
    throw new IllegalArgumentException("no column takes " + value.getClass());
  }

  /** The value itself; whole numbers as Long. */
  public Object object() {
    return switch (kind) {
      case TEXT -> text;
      case INTEGER -> bits;
      case REAL -> Double.longBitsToDouble(bits);
      case BOOLEAN -> bits != 0;
      case DATE -> LocalDate.ofEpochDay(bits);
    };
  }
}
