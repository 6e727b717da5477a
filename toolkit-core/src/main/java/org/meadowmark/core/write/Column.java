package org.meadowmark.core.write;

import java.util.Objects;

/**
 * A column of a result table.
 *
 * @param name snake-case name that carries the unit, such as {@code scarred_area_m2}
 * @param type type of its values
 * @param unit unit for people ({@code m}, {@code m²}, {@code ha}, {@code 1}), or empty
 * @param description what it means, one sentence
 */
public record Column(String name, Type type, String unit, String description) {

  /** Type of a column's values; any value may be null. */
  public enum Type {
    /** {@link String}. */
    TEXT,
    /** {@link Long} or {@link Integer}. */
    INTEGER,
    /** {@link Double}, finite. */
    REAL,
    /** {@link java.time.LocalDate}. */
    DATE,
    /** {@link Boolean}. */
    BOOLEAN
  }

  /**
   * Takes a column as it is defined; the writers of tables check names and values.
   *
   * @param name snake-case name that carries the unit, such as {@code scarred_area_m2}
   * @param type type of its values
   * @param unit unit for people ({@code m}, {@code m²}, {@code ha}, {@code 1}), or empty
   * @param description what it means, one sentence
   * @throws NullPointerException if anything is null
   */
  public Column {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(type, "type");
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(description, "description");
  }
}
