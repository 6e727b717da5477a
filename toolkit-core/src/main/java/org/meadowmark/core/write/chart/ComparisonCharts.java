package org.meadowmark.core.write.chart;

import java.util.List;
import org.meadowmark.core.write.ComparedSurveys;

/** The charts of a comparison of seasons. */
public final class ComparisonCharts {
  private ComparisonCharts() {}

  /**
   * {@return new scars by area and season, and rates beside markers} A chart with nothing to show
   * says so.
   *
   * @param compared results of a comparison
   */
  public static List<Picture> of(ComparedSurveys compared) {
    return List.of(NewScarChart.of(compared), MarkerChart.of(compared));
  }
}
