package org.meadowmark.core.write.chart;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.data.category.DefaultCategoryDataset;
import org.meadowmark.core.change.effect.MarkerEffect;
import org.meadowmark.core.write.ComparedSurveys;
import org.meadowmark.core.write.Figures;

/** Rates of new scars beside marked segments and controls, before and after. */
final class MarkerChart {
  static final String NAME = "marker-effect";
  static final String TITLE = "New scars beside marked channel segments and beside controls";

  private MarkerChart() {}

  static Picture of(ComparedSurveys compared) {
    Optional<MarkerEffect.Rates> rates = compared.effect().flatMap(MarkerEffect::rates);
    if (rates.isEmpty()) {
      String message =
          compared.effect().map(MarkerEffect::words).orElse("No file of markers was given.");
      return new Picture(
          NAME, ChartStyle.empty(TITLE, message), ChartStyle.WIDTH, ChartStyle.EMPTY_HEIGHT);
    }
    MarkerEffect effect = compared.effect().orElseThrow();
    MarkerEffect.Rates seen = rates.get();
    Map<String, Double> values = new LinkedHashMap<>();
    values.put(seen.markedSegments() + " marked, before", seen.markedBefore());
    values.put(seen.markedSegments() + " marked, after", seen.markedAfter());
    values.put(seen.controlSegments() + " controls, before", seen.controlBefore());
    values.put(seen.controlSegments() + " controls, after", seen.controlAfter());
    DefaultCategoryDataset data = new DefaultCategoryDataset();
    List<RowKey> bars = new ArrayList<>();
    values.forEach(
        (label, value) -> {
          RowKey bar = new RowKey(bars.size(), label);
          bars.add(bar);
          data.addValue(value, "new scars", bar);
        });
    JFreeChart chart =
        ChartStyle.stackedBars(
            TITLE,
            effect.words(),
            data,
            List.of(ChartStyle.WATER),
            "new scars (" + effect.settings().basis().rateUnit() + ")");
    CategoryPlot plot = chart.getCategoryPlot();
    int place = 0;
    double longest = 0;
    for (double value : values.values()) {
      BarLabels.add(plot, bars.get(place), value, Figures.number(value));
      longest = Math.max(longest, value);
      place++;
    }
    BarLabels.fit(plot, longest > 0 ? longest : 1);
    return new Picture(NAME, chart, ChartStyle.WIDTH, ChartStyle.barChartHeight(bars.size()));
  }
}
