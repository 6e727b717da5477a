package org.meadowmark.core.write.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.meadowmark.core.rank.zone.CoverPoint;
import org.meadowmark.core.rank.zone.ZonePlan;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Figures;

/** Scar length that zones cover against the total length of zones. */
final class CoverChart {
  static final String NAME = "zone-cover";
  static final String TITLE = "How much scar length zones cover, by their total length";

  private static final int HEIGHT = 620;
  private static final int TICKS = 5;
  private static final double HEADROOM = 1.12;
  private static final double LABEL_ROOM = 1.3;
  private static final double LEAST_LABEL_GAP = 0.05;

  private static final BasicStroke LINE = new BasicStroke(2.4f);
  private static final BasicStroke DASHED =
      new BasicStroke(1.8f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {6, 5}, 0);

  private CoverChart() {}

  static Picture of(AssessedSurvey assessed) {
    ZonePlan plan = assessed.zones();
    if (plan.zones().isEmpty()) {
      String message =
          "No zone to propose: no scar lies within reach of a channel, or none is set.";
      JFreeChart empty = ChartStyle.empty(TITLE, message);
      return new Picture(NAME, empty, ChartStyle.WIDTH, ChartStyle.EMPTY_HEIGHT);
    }
    String subtitle =
        "At most "
            + Figures.count(plan.mostZones(), "zone", "zones")
            + ", each without a break. Worst first takes segments by scar length with the same"
            + " limits.";
    return new Picture(
        NAME, ChartStyle.numeric(TITLE, subtitle, plot(plan)), ChartStyle.WIDTH, HEIGHT);
  }

  private static XYPlot plot(ZonePlan plan) {
    List<CoverPoint> curve = plan.curve();
    boolean unproven = curve.stream().anyMatch(point -> !point.isProvenBest());
    CoverPoint last = curve.get(curve.size() - 1);
    double highest =
        curve.stream().mapToDouble(CoverPoint::upperBoundMetres).max().orElseThrow() * HEADROOM;
    XYSeriesCollection data = new XYSeriesCollection();
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, true);
    XYPlot plot =
        new XYPlot(
            data,
            ChartStyle.valueAxis("total length of zones (m)"),
            ChartStyle.valueAxis("scar length covered (m)"),
            renderer);
    add(plot, curve, "best zones", CoverPoint::coveredMetres, ChartStyle.WATER, LINE);
    add(plot, curve, "worst first", CoverPoint::worstFirstMetres, ChartStyle.ACCENT, LINE);
    if (unproven) {
      add(plot, curve, "bound", CoverPoint::upperBoundMetres, ChartStyle.SOFT_INK, DASHED);
    }
    label(plot, last, highest, unproven);

    NumberAxis across = (NumberAxis) plot.getDomainAxis();
    across.setRange(0, last.lengthMetres() * LABEL_ROOM);
    across.setTickUnit(
        new NumberTickUnit(GapBins.niceStep(Math.max(1, last.lengthMetres() / TICKS))));
    across.setNumberFormatOverride(new UpTo(last.lengthMetres()));
    NumberAxis up = (NumberAxis) plot.getRangeAxis();
    up.setRange(0, highest);
    up.setTickUnit(new NumberTickUnit(GapBins.niceStep(highest / TICKS)));
    mark(plot, plan);
    return plot;
  }

  private static void add(
      XYPlot plot,
      List<CoverPoint> curve,
      String name,
      ToDoubleFunction<CoverPoint> value,
      Color ink,
      BasicStroke stroke) {
    XYSeriesCollection data = (XYSeriesCollection) plot.getDataset();
    XYLineAndShapeRenderer renderer = (XYLineAndShapeRenderer) plot.getRenderer();
    XYSeries series = new XYSeries(name);
    series.add(0, 0);
    curve.forEach(point -> series.add(point.lengthMetres(), value.applyAsDouble(point)));
    int place = data.getSeriesCount();
    data.addSeries(series);
    renderer.setSeriesPaint(place, ink);
    renderer.setSeriesStroke(place, stroke);
    renderer.setSeriesShape(place, new Ellipse2D.Double(-4, -4, 8, 8));
    renderer.setSeriesShapesVisible(place, stroke == LINE);
  }

  /** Names at the right ends of the lines, moved apart where these are close. */
  private static void label(XYPlot plot, CoverPoint last, double highest, boolean unproven) {
    double gap = highest * LEAST_LABEL_GAP;
    double worst = last.worstFirstMetres();
    double best = Math.max(last.coveredMetres(), worst + gap);
    boolean together = last.coveredMetres() - worst < gap / 2;
    text(
        plot,
        "  best zones " + Figures.length(last.coveredMetres()),
        last.lengthMetres(),
        together ? worst + gap / 2 : best,
        ChartStyle.WATER);
    text(
        plot,
        "  worst first " + Figures.length(worst),
        last.lengthMetres(),
        together ? worst - gap / 2 : worst,
        ChartStyle.ACCENT);
    if (unproven) {
      text(
          plot,
          "  no choice covers more: " + Figures.length(last.upperBoundMetres()),
          last.lengthMetres(),
          Math.max(last.upperBoundMetres(), best + gap),
          ChartStyle.SOFT_INK);
    }
  }

  private static void text(XYPlot plot, String words, double x, double y, Color ink) {
    XYTextAnnotation label = new XYTextAnnotation(words, x, y);
    label.setFont(ChartStyle.font(Font.PLAIN, 15));
    label.setPaint(ink);
    label.setTextAnchor(TextAnchor.CENTER_LEFT);
    plot.addAnnotation(label);
  }

  private static void mark(XYPlot plot, ZonePlan plan) {
    ValueMarker marker = new ValueMarker(plan.totalLengthMetres());
    marker.setPaint(ChartStyle.INK);
    marker.setStroke(DASHED);
    marker.setLabel("  proposed: " + Figures.length(plan.best().coveredMetres()) + " covered  ");
    marker.setLabelFont(ChartStyle.font(Font.PLAIN, 15));
    marker.setLabelPaint(ChartStyle.INK);
    marker.setLabelAnchor(RectangleAnchor.BOTTOM_RIGHT);
    marker.setLabelTextAnchor(TextAnchor.BOTTOM_LEFT);
    marker.setLabelBackgroundColor(new Color(0, 0, 0, 0));
    plot.addDomainMarker(marker);
  }
}
