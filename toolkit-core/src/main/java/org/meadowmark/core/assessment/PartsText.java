package org.meadowmark.core.assessment;

import java.util.List;
import java.util.Locale;
import org.meadowmark.core.partition.MeasuringInParts;
import org.meadowmark.core.partition.MeasuringInParts.PartFacts;

/** Says in what parts a survey was measured. */
final class PartsText {
  /** One line a part. */
  static final String FILE_NAME = "parts.csv";

  private PartsText() {}

  static String summary(MeasuringInParts.Outcome outcome) {
    List<PartFacts> parts = outcome.parts();
    return String.format(
        Locale.ROOT,
        "Measured in %,d part(s) made of %,d group(s) of beds and scars that depend on each other;"
            + " the largest group has %,d scars, the largest part %,d.",
        parts.size(),
        outcome.groups(),
        outcome.largestGroupScars(),
        parts.stream().mapToInt(PartFacts::scars).max().orElse(0));
  }

  static String table(MeasuringInParts.Outcome outcome) {
    StringBuilder text = new StringBuilder("part,groups,beds,bed_vertices,scars,patches\n");
    int number = 1;
    for (PartFacts part : outcome.parts()) {
      text.append(number++)
          .append(',')
          .append(part.groups())
          .append(',')
          .append(part.beds())
          .append(',')
          .append(part.bedVertices())
          .append(',')
          .append(part.scars())
          .append(',')
          .append(part.patches())
          .append('\n');
    }
    return text.toString();
  }
}
