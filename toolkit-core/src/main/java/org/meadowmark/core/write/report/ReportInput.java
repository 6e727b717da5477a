package org.meadowmark.core.write.report;

import java.util.List;
import java.util.Objects;
import org.meadowmark.core.write.AssessedSurvey;

/**
 * What a report is made from.
 *
 * @param assessed results
 * @param charts charts in the order to show
 * @param toolVersion version of the program
 */
public record ReportInput(AssessedSurvey assessed, List<ReportChart> charts, String toolVersion) {

  /**
   * Keeps a copy of the charts that cannot be changed.
   *
   * @param assessed results
   * @param charts charts in the order to show
   * @param toolVersion version of the program
   * @throws NullPointerException if anything is null
   */
  public ReportInput {
    Objects.requireNonNull(assessed, "assessed");
    Objects.requireNonNull(toolVersion, "toolVersion");
    charts = List.copyOf(charts);
  }
}
