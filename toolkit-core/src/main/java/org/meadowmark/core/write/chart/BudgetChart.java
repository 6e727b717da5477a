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
import org.meadowmark.core.plan.CurvePoint;
import org.meadowmark.core.plan.RepairPlan;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Figures;

/** What repairs are worth against what may be spent on them. */
final class BudgetChart {
  static final String NAME = "repair-budget";
  static final String TITLE = "What planting scars is worth, by budget";

  private static final int HEIGHT = 620;
  private static final int TICKS = 5;
  private static final double HEADROOM = 1.15;
  private static final double LEAST_VISIBLE_GAP = 0.01;
  private static final BasicStroke LINE = new BasicStroke(2.4f);
  private static final BasicStroke DASHED =
      new BasicStroke(1.8f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {6, 5}, 0);

  private BudgetChart() {}

  static Picture of(AssessedSurvey assessed) {
    RepairPlan plan = assessed.repairs();
    if (plan.curve().isEmpty()) {
      JFreeChart empty =
          ChartStyle.empty(TITLE, "No scar is fit for planting, or planting costs nothing.");
      return new Picture(NAME, empty, ChartStyle.WIDTH, ChartStyle.EMPTY_HEIGHT);
    }
    boolean placeholders =
        !assessed.definition().parameters().repair().placeholders().names().isEmpty();
    String subtitle =
        "Best benefit for cost first; no choice is more than "
            + Figures.percent(largestGap(plan.curve()))
            + " above it."
            + (placeholders ? " Costs are placeholders until they are set." : "");
    return new Picture(
        NAME, ChartStyle.numeric(TITLE, subtitle, plot(plan)), ChartStyle.WIDTH, HEIGHT);
  }

  /** How far the bound is above the curve at most, as a part of the curve. */
  private static double largestGap(List<CurvePoint> curve) {
    return curve.stream()
        .filter(point -> point.benefit() > 0)
        .mapToDouble(point -> point.upperBound() / point.benefit() - 1)
        .max()
        .orElse(0);
  }

  private static XYPlot plot(RepairPlan plan) {
    List<CurvePoint> curve = plan.curve();
    XYSeriesCollection data = new XYSeriesCollection();
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, true);
    XYPlot plot =
        new XYPlot(
            data,
            ChartStyle.valueAxis("budget"),
            ChartStyle.valueAxis("benefit (weighted)"),
            renderer);
    add(data, renderer, curve, "benefit", CurvePoint::benefit, ChartStyle.WATER, LINE);
    if (largestGap(curve) > LEAST_VISIBLE_GAP) {
      add(data, renderer, curve, "bound", CurvePoint::upperBound, ChartStyle.SOFT_INK, DASHED);
    }
    CurvePoint last = curve.get(curve.size() - 1);
    double highest =
        curve.stream().mapToDouble(CurvePoint::upperBound).max().orElseThrow() * HEADROOM;
    scale((NumberAxis) plot.getDomainAxis(), last.budget() * 1.05);
    scale((NumberAxis) plot.getRangeAxis(), highest);
    plan.flattens()
        .filter(point -> point.budget() < last.budget())
        .ifPresent(point -> mark(plot, point, last));
    plan.choice()
        .filter(choice -> choice.budget() > 0 && choice.budget() <= last.budget())
        .ifPresent(
            choice -> {
              XYTextAnnotation label =
                  new XYTextAnnotation("× planned", choice.cost(), choice.benefit());
              label.setFont(ChartStyle.font(Font.BOLD, 15));
              label.setPaint(ChartStyle.ACCENT);
              label.setTextAnchor(TextAnchor.CENTER_LEFT);
              plot.addAnnotation(label);
            });
    return plot;
  }

  private static void scale(NumberAxis axis, double highest) {
    axis.setRange(0, highest);
    axis.setTickUnit(new NumberTickUnit(GapBins.niceStep(highest / TICKS)));
    axis.setNumberFormatOverride(new UpTo(highest));
  }

  private static void add(
      XYSeriesCollection data,
      XYLineAndShapeRenderer renderer,
      List<CurvePoint> curve,
      String name,
      ToDoubleFunction<CurvePoint> value,
      Color ink,
      BasicStroke stroke) {
    XYSeries series = new XYSeries(name);
    series.add(0, 0);
    curve.forEach(point -> series.add(point.budget(), value.applyAsDouble(point)));
    int place = data.getSeriesCount();
    data.addSeries(series);
    renderer.setSeriesPaint(place, ink);
    renderer.setSeriesStroke(place, stroke);
    renderer.setSeriesShape(place, new Ellipse2D.Double(-4, -4, 8, 8));
    renderer.setSeriesShapesVisible(place, stroke == LINE);
  }

  private static void mark(XYPlot plot, CurvePoint flat, CurvePoint last) {
    ValueMarker marker = new ValueMarker(flat.budget());
    marker.setPaint(ChartStyle.INK);
    marker.setStroke(DASHED);
    marker.setLabel(
        "  "
            + Figures.percent(last.benefit() > 0 ? flat.benefit() / last.benefit() : 1)
            + " of all benefit for "
            + Figures.number(flat.budget())
            + "  ");
    marker.setLabelFont(ChartStyle.font(Font.PLAIN, 15));
    marker.setLabelPaint(ChartStyle.INK);
    boolean left = flat.budget() > last.budget() / 2;
    marker.setLabelAnchor(left ? RectangleAnchor.BOTTOM_LEFT : RectangleAnchor.BOTTOM_RIGHT);
    marker.setLabelTextAnchor(left ? TextAnchor.BOTTOM_RIGHT : TextAnchor.BOTTOM_LEFT);
    marker.setLabelBackgroundColor(new Color(0, 0, 0, 0));
    plot.addDomainMarker(marker);
  }
}
