package org.meadowmark.samples;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Text of a survey file. */
final class SurveyToml {
  private final StringBuilder text = new StringBuilder();

  SurveyToml(String name, LocalDate date) {
    text.append("[survey]\n");
    entry("name", name);
    text.append("date = ").append(date).append('\n');
  }

  void layer(String role, String file) {
    text.append("\n[layers.").append(role).append("]\n");
    entry("file", file);
  }

  void entry(String key, String value) {
    text.append(key).append(" = ").append(quoted(value)).append('\n');
  }

  /** Attributes of the layer that came last: field and attribute in turn. */
  void attributes(String role, String... fieldsAndNames) {
    text.append("\n[layers.").append(role).append(".attributes]\n");
    for (int i = 0; i < fieldsAndNames.length; i += 2) {
      entry(fieldsAndNames[i], fieldsAndNames[i + 1]);
    }
  }

  /** Unit and attributes of the scar layer, which must have come last. */
  void scarAttributes(SampleTables.ScarStyle style) {
    entry("width_unit", style.unitsAMetre() == 1 ? "m" : "cm");
    List<String> names =
        new ArrayList<>(
            List.of(
                "id",
                SampleTables.SCAR_ID,
                "cause",
                "cause",
                "width",
                style.widthColumn(),
                "date",
                "seen_on"));
    if (style.hasNotes()) {
      names.addAll(List.of("grazed", "grazed", "scarred_again", "scarred_again"));
    }
    attributes("scars", names.toArray(String[]::new));
    String propeller = CauseKind.PROPELLER.key;
    if (!style.propellerWord().equals(propeller)) {
      text.append("\n[layers.scars.values.cause]\n");
      text.append(quoted(style.propellerWord()))
          .append(" = ")
          .append(quoted(propeller))
          .append('\n');
    }
  }

  String text() {
    return text.toString();
  }

  private static String quoted(String value) {
    StringBuilder quoted = new StringBuilder("\"");
    for (char c : value.toCharArray()) {
      if (c == '"' || c == '\\') {
        quoted.append('\\').append(c);
      } else if (c < ' ' || c == 0x7f) {
        quoted.append(String.format(Locale.ROOT, "\\u%04X", (int) c));
      } else {
        quoted.append(c);
      }
    }
    return quoted.append('"').toString();
  }
}
