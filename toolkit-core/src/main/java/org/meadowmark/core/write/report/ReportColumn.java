package org.meadowmark.core.write.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.meadowmark.core.write.Figures;

/**
 * A column of a map layer: shown in its table, and as a detail of a feature.
 *
 * @param label name for people
 * @param unit unit of its values, or empty
 * @param kind kind of its values
 * @param values one a feature, null where nothing is known
 */
record ReportColumn(String label, String unit, Kind kind, List<Object> values) {
  private static final String NOTHING = "–";

  /** Kind of values. */
  enum Kind {
    /** Text. */
    TEXT,
    /** Whole numbers. */
    COUNT,
    /** Measured numbers. */
    NUMBER
  }

  ReportColumn {
    values = Collections.unmodifiableList(new ArrayList<>(values));
  }

  /** Whether the values are numbers. */
  boolean isNumeric() {
    return kind != Kind.TEXT;
  }

  /** Label with the unit. */
  String heading() {
    return unit.isEmpty() ? label : label + ", " + unit;
  }

  /** A value for people. */
  String shown(int row) {
    Object value = values.get(row);
    if (value == null) {
      return NOTHING;
    }
    return switch (kind) {
      case TEXT -> value.toString();
      case COUNT -> Figures.count(((Number) value).longValue());
      case NUMBER -> Figures.number(((Number) value).doubleValue());
    };
  }
}
