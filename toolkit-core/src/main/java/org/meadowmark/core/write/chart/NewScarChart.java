package org.meadowmark.core.write.chart;

import java.awt.BasicStroke;
import java.awt.Stroke;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.CategoryLineAnnotation;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.data.category.DefaultCategoryDataset;
import org.meadowmark.core.change.Interval;
import org.meadowmark.core.change.Scope;
import org.meadowmark.core.change.rates.NewScarRate;
import org.meadowmark.core.write.ComparedSurveys;
import org.meadowmark.core.write.Figures;

/** New scar metres per hectare and year, by management area and season. */
final class NewScarChart {
  static final String NAME = "new-scars";
  static final String TITLE = "New scars by management area and season";
  static final int MOST_BARS = 40;

  private static final Stroke LINE = new BasicStroke(2);

  private NewScarChart() {}

  static Picture of(ComparedSurveys compared) {
    List<NewScarRate> shown = shown(compared);
    if (shown.isEmpty()) {
      return new Picture(
          NAME,
          ChartStyle.empty(TITLE, "No bed was looked at by two surveys."),
          ChartStyle.WIDTH,
          ChartStyle.EMPTY_HEIGHT);
    }
    DefaultCategoryDataset data = new DefaultCategoryDataset();
    List<RowKey> bars = new ArrayList<>();
    for (NewScarRate rate : shown) {
      RowKey bar =
          new RowKey(
              bars.size(),
              ChartStyle.shortened(rate.scope().label()) + ", until " + rate.season().end());
      bars.add(bar);
      data.addValue(rate.metresPerHectareYear().orElseThrow(), "new scars", bar);
    }
    JFreeChart chart =
        ChartStyle.stackedBars(
            TITLE,
            String.format(
                Locale.ROOT,
                "Length of new scar line inside beds that both surveys looked at. Line: %s interval.",
                Figures.chosenPercent(compared.parameters().comparison().confidence())),
            data,
            List.of(ChartStyle.WATER),
            "new scars (m per ha of bed and year)");
    CategoryPlot plot = chart.getCategoryPlot();
    double longest = 0;
    for (int i = 0; i < shown.size(); i++) {
      NewScarRate rate = shown.get(i);
      Interval limits = rate.metresPerHectareYearInterval().orElseThrow();
      plot.addAnnotation(
          new CategoryLineAnnotation(
              bars.get(i), limits.low(), bars.get(i), limits.high(), ChartStyle.INK, LINE));
      longest = Math.max(longest, limits.high());
      BarLabels.add(
          plot,
          bars.get(i),
          limits.high(),
          Figures.number(rate.metresPerHectareYear().orElseThrow())
              + " ("
              + Figures.count(rate.newScars(), "new scar", "new scars")
              + ")");
    }
    BarLabels.fit(plot, longest > 0 ? longest : 1);
    return new Picture(NAME, chart, ChartStyle.WIDTH, ChartStyle.barChartHeight(shown.size()));
  }

  /** The areas, or the whole where there are none; those with most bed where there are too many. */
  private static List<NewScarRate> shown(ComparedSurveys compared) {
    boolean divided =
        compared.newScars().stream().anyMatch(rate -> !rate.scope().equals(Scope.WHOLE));
    List<NewScarRate> all =
        compared.newScars().stream()
            .filter(rate -> rate.metresPerHectareYear().isPresent())
            .filter(rate -> divided ^ rate.scope().equals(Scope.WHOLE))
            .toList();
    List<NewScarRate> kept =
        all.stream()
            .sorted(Comparator.comparingDouble(rate -> -rate.bedHectares()))
            .limit(MOST_BARS)
            .toList();
    return all.stream().filter(kept::contains).toList();
  }
}
