package org.meadowmark.core.write.chart;

import java.util.List;
import org.meadowmark.core.write.AssessedSurvey;

/** The charts of an assessed survey. */
public final class Charts {
  private Charts() {}

  /**
   * {@return severity by management area, widths of gaps, connected area by crossing distance,
   * leading channel segments, cover by zones, recovery of scars and benefit of repairs by budget} A
   * chart with nothing to show says so.
   *
   * @param assessed results of an assessment
   */
  public static List<Picture> of(AssessedSurvey assessed) {
    return List.of(
        SeverityChart.of(assessed),
        GapChart.of(assessed),
        ConnectivityChart.of(assessed),
        SegmentChart.of(assessed),
        CoverChart.of(assessed),
        RecoveryChart.of(assessed.recovery(), assessed.references().species()),
        BudgetChart.of(assessed));
  }
}
