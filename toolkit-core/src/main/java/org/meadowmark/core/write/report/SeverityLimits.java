package org.meadowmark.core.write.report;

import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.write.Figures;

/** Limits of a severity class in symbols. */
final class SeverityLimits {
  private SeverityLimits() {}

  /** As in {@code 0 %}, {@code < 5 %}, {@code ≤ 20 %}, {@code > 20 %}. */
  static String of(SeverityClass severity) {
    if (severity.lowestShare() == severity.highestShare()) {
      return Figures.chosenPercent(severity.highestShare());
    }
    if (severity.highestShare() >= 1) {
      return (severity.lowestIncluded() ? "≥" : ">")
          + Figures.UNIT_SPACE
          + Figures.chosenPercent(severity.lowestShare());
    }
    return (severity.highestIncluded() ? "≤" : "<")
        + Figures.UNIT_SPACE
        + Figures.chosenPercent(severity.highestShare());
  }
}
