package org.meadowmark.core.survey;

import java.util.List;
import java.util.Objects;

/**
 * A value that a user gave to a parameter, not yet understood.
 *
 * @param name name of the parameter
 * @param values the value, or several for a list, as text; none or one empty text leaves it empty
 * @param where where it was given, for messages: {@code survey.toml: parameters.NAME} or {@code
 *     --set NAME}
 */
public record Setting(String name, List<String> values, String where) {
  /**
   * Refuses a setting of which a part is missing, and keeps a copy of the values.
   *
   * @param name name of the parameter
   * @param values the value, or several for a list, as text; none or one empty text leaves it empty
   * @param where where it was given, for messages: {@code survey.toml: parameters.NAME} or {@code
   *     --set NAME}
   * @throws NullPointerException if anything is null
   */
  public Setting {
    Objects.requireNonNull(name, "name");
    values = List.copyOf(values);
    Objects.requireNonNull(where, "where");
  }
}
