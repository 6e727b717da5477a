package org.meadowmark.core.write.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.meadowmark.core.measure.recovery.Estimate;
import org.meadowmark.core.measure.recovery.Planting;
import org.meadowmark.core.measure.recovery.ScarRecovery;
import org.meadowmark.core.measure.recovery.ScarRegrowth;
import org.meadowmark.core.measure.recovery.SurveyRecovery;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.reference.Species;
import org.meadowmark.core.write.Figures;

/** How bare the middle scar of each species stays over the years. */
final class RecoveryChart {
  static final String NAME = "scar-recovery";
  static final String TITLE = "How long scars stay bare, by species";

  private static final int HEIGHT = 680;
  private static final int MOST_SPECIES = 4;
  private static final int POINTS = 80;
  private static final double PERCENT = 100;
  private static final int TICKS = 5;
  private static final double LABEL_ROOM = 1.12;

  private static final BasicStroke SOLID = new BasicStroke(2.6f);
  private static final BasicStroke THIN = new BasicStroke(1.4f);
  private static final BasicStroke DASHED =
      new BasicStroke(1.8f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {6, 5}, 0);

  private RecoveryChart() {}

  /**
   * The chart.
   *
   * @param recovery recovery of the scars
   * @param species names by key
   */
  static Picture of(SurveyRecovery recovery, Map<String, Species> species) {
    Map<String, ScarRecovery> middle = middleOfSpecies(recovery.scars());
    if (middle.isEmpty()) {
      JFreeChart empty =
          ChartStyle.empty(
              TITLE, "No forecast: no scar lies in a species with a known recovery time.");
      return new Picture(NAME, empty, ChartStyle.WIDTH, ChartStyle.EMPTY_HEIGHT);
    }
    String subtitle =
        "The scar of middle recovery time in each species. Thick: middle estimate; thin: low and"
            + " high; dashed: middle, planted in year 0.";
    return new Picture(
        NAME,
        ChartStyle.numeric(TITLE, subtitle, plot(recovery.planting(), middle, species)),
        ChartStyle.WIDTH,
        HEIGHT);
  }

  private static Map<String, ScarRecovery> middleOfSpecies(List<ScarRecovery> scars) {
    Map<String, List<ScarRecovery>> bySpecies = new TreeMap<>();
    for (ScarRecovery scar : scars) {
      if (scar.alone().isPresent() && years(scar, Estimate.MIDDLE) > 0) {
        bySpecies.computeIfAbsent(scar.species(), key -> new ArrayList<>()).add(scar);
      }
    }
    Map<String, ScarRecovery> middle = new TreeMap<>();
    bySpecies.entrySet().stream()
        .sorted(Comparator.comparingInt(each -> -each.getValue().size()))
        .limit(MOST_SPECIES)
        .forEach(
            each -> {
              List<ScarRecovery> sorted =
                  each.getValue().stream()
                      .sorted(
                          Comparator.comparingDouble(
                                  (ScarRecovery scar) -> years(scar, Estimate.MIDDLE))
                              .thenComparing(ScarRecovery::scarId, Ids.ORDER))
                      .toList();
              middle.put(each.getKey(), sorted.get((sorted.size() - 1) / 2));
            });
    return middle;
  }

  private static double years(ScarRecovery scar, Estimate estimate) {
    return estimate.ofLoss(scar.alone().orElseThrow().yearsToFull());
  }

  private static XYPlot plot(
      Planting planting, Map<String, ScarRecovery> scars, Map<String, Species> species) {
    double longest =
        scars.values().stream().mapToDouble(scar -> years(scar, Estimate.HIGH)).max().orElseThrow();
    XYPlot plot =
        new XYPlot(
            new XYSeriesCollection(),
            ChartStyle.valueAxis("years"),
            ChartStyle.valueAxis("part of the scar still bare (%)"),
            new XYLineAndShapeRenderer(true, false));
    int place = 0;
    for (Map.Entry<String, ScarRecovery> each : scars.entrySet()) {
      ScarRecovery scar = each.getValue();
      ScarRegrowth regrowth = scar.regrowth().orElseThrow();
      Color ink = ChartStyle.cause(place);
      for (Estimate estimate : Estimate.values()) {
        add(
            plot,
            years(scar, estimate),
            years -> regrowth.bareShare(estimate, years),
            ink,
            estimate == Estimate.MIDDLE ? SOLID : THIN);
      }
      add(
          plot,
          years(scar, Estimate.MIDDLE),
          years -> regrowth.bareShare(Estimate.MIDDLE, years, planting, 0),
          ink,
          DASHED);
      label(plot, longest, label(each.getKey(), scar, species), place, scars.size(), ink);
      place++;
    }
    NumberAxis across = (NumberAxis) plot.getDomainAxis();
    across.setRange(0, longest * LABEL_ROOM);
    across.setTickUnit(new NumberTickUnit(GapBins.niceStep(Math.max(1, longest / TICKS))));
    NumberAxis up = (NumberAxis) plot.getRangeAxis();
    up.setRange(0, PERCENT);
    up.setTickUnit(new NumberTickUnit(PERCENT / TICKS));
    return plot;
  }

  private interface Share {
    double at(double years);
  }

  private static void add(XYPlot plot, double until, Share share, Color ink, BasicStroke stroke) {
    XYSeriesCollection data = (XYSeriesCollection) plot.getDataset();
    XYLineAndShapeRenderer renderer = (XYLineAndShapeRenderer) plot.getRenderer();
    int place = data.getSeriesCount();
    XYSeries series = new XYSeries(place);
    for (int i = 0; i <= POINTS; i++) {
      double years = until * i / POINTS;
      series.add(years, PERCENT * share.at(years));
    }
    data.addSeries(series);
    renderer.setSeriesPaint(place, ink);
    renderer.setSeriesStroke(place, stroke);
  }

  private static String label(String key, ScarRecovery scar, Map<String, Species> species) {
    Species known = species.get(key);
    String name = known == null ? (key.isEmpty() ? "species not mapped" : key) : known.commonName();
    String width =
        scar.regrowth().orElseThrow().shape().stripWidthMetres().stream()
            .mapToObj(metres -> ", " + Figures.length(metres) + " wide,")
            .findFirst()
            .orElse("");
    return name
        + ": scar "
        + scar.scarId()
        + width
        + " closes in "
        + Figures.number(years(scar, Estimate.MIDDLE))
        + " years ("
        + Figures.number(years(scar, Estimate.LOW))
        + " to "
        + Figures.number(years(scar, Estimate.HIGH))
        + ")";
  }

  /** Names below each other in the upper right, where every curve has come down. */
  private static void label(
      XYPlot plot, double longest, String words, int place, int places, Color ink) {
    XYTextAnnotation label =
        new XYTextAnnotation(words, longest * LABEL_ROOM * 0.99, PERCENT - 4 - 5.0 * place);
    label.setFont(ChartStyle.font(Font.PLAIN, places > 3 ? 14 : 15));
    label.setPaint(ink);
    label.setTextAnchor(TextAnchor.CENTER_RIGHT);
    plot.addAnnotation(label);
  }
}
