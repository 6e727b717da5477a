package org.meadowmark.core.reference;

import java.math.BigDecimal;
import java.util.Map;
import java.util.OptionalDouble;
import org.meadowmark.core.model.MeadowmarkException;

/** A row of a reference table that knows its file and line. */
public final class TableRow {
  private static final String KEY_PATTERN = "[a-z][a-z0-9_-]*";

  private final String label;
  private final long line;
  private final Map<String, String> values;

  TableRow(String label, long line, Map<String, String> values) {
    this.label = label;
    this.line = line;
    this.values = Map.copyOf(values);
  }

  /**
   * {@return the value of a column, empty where the cell is}
   *
   * @param column name of the column
   * @throws IllegalArgumentException if the table has no such column
   */
  public String text(String column) {
    String value = values.get(column);
    if (value == null) {
      throw new IllegalArgumentException("no column " + column);
    }
    return value;
  }

  /**
   * {@return the value of a column that must not be empty}
   *
   * @param column name of the column
   * @throws MeadowmarkException if it is
   */
  public String requiredText(String column) {
    String value = text(column);
    if (value.isEmpty()) {
      throw error(column, "is empty", "give a value");
    }
    return value;
  }

  /**
   * {@return a key: lower-case letters, digits, hyphens and underscores, a letter first}
   *
   * @param column name of the column
   * @throws MeadowmarkException if the value is no key
   */
  public String key(String column) {
    String value = requiredText(column);
    if (!value.matches(KEY_PATTERN)) {
      throw error(
          column, "'" + value + "' is no key", "use lower-case letters, digits and hyphens only");
    }
    return value;
  }

  /**
   * {@return a decimal number}
   *
   * @param column name of the column
   * @throws MeadowmarkException if the cell is empty or holds something else
   */
  public double number(String column) {
    requiredText(column);
    return optionalNumber(column).orElseThrow();
  }

  /**
   * {@return a decimal number, or nothing where the cell is empty}
   *
   * @param column name of the column
   * @throws MeadowmarkException if the cell holds something else
   */
  public OptionalDouble optionalNumber(String column) {
    String value = text(column);
    if (value.isEmpty()) {
      return OptionalDouble.empty();
    }
    double number;
    try {
      number = new BigDecimal(value).doubleValue();
    } catch (NumberFormatException e) {
      throw error(column, "'" + value + "' is no number", "write it like 12.5");
    }
    if (Double.isInfinite(number)) {
      throw error(column, "'" + value + "' is too large", "write it like 12.5");
    }
    return OptionalDouble.of(number);
  }

  /**
   * {@return {@code true} or {@code false}}
   *
   * @param column name of the column
   * @throws MeadowmarkException if the value is anything else
   */
  public boolean flag(String column) {
    return switch (requiredText(column)) {
      case "true" -> true;
      case "false" -> false;
      default -> throw error(column, "'" + text(column) + "' is no flag", "use true or false");
    };
  }

  /**
   * {@return file and line, and the column where one is given, for messages}
   *
   * @param column name of the column
   */
  public String where(String column) {
    return label + ": line " + line + ": " + column;
  }

  /**
   * {@return the error to throw where a value of this row is wrong}
   *
   * @param column name of the column whose value is wrong
   * @param problem what is wrong, without the value's place
   * @param remedy what the user is to do
   */
  public MeadowmarkException error(String column, String problem, String remedy) {
    return new MeadowmarkException(where(column) + " " + problem + "; " + remedy);
  }
}
