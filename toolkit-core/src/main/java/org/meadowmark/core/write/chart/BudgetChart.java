package org.meadowmark.core.write.chart;

import java.awt.Font;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.XYPlot;
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
    CurvePlot<CurvePoint> curves =
        new CurvePlot<>(curve, CurvePoint::budget, "budget (your currency)", "benefit (weighted)");
    curves.addLine("benefit", CurvePoint::benefit, ChartStyle.WATER);
    if (largestGap(curve) > LEAST_VISIBLE_GAP) {
      curves.addBound("bound", CurvePoint::upperBound, ChartStyle.SOFT_INK);
    }
    XYPlot plot = curves.plot();
    CurvePoint last = curve.get(curve.size() - 1);
    double highest =
        curve.stream().mapToDouble(CurvePoint::upperBound).max().orElseThrow() * HEADROOM;
    scale((NumberAxis) plot.getDomainAxis(), last.budget() * 1.05);
    scale((NumberAxis) plot.getRangeAxis(), highest);
    plan.flattens()
        .filter(point -> point.budget() < last.budget())
        .ifPresent(point -> mark(curves, point, last));
    plan.choice()
        .filter(choice -> choice.budget() > 0 && choice.budget() <= last.budget())
        .ifPresent(
            choice ->
                curves.addText(
                    "× planned", choice.cost(), choice.benefit(), Font.BOLD, ChartStyle.ACCENT));
    return plot;
  }

  private static void scale(NumberAxis axis, double highest) {
    axis.setRange(0, highest);
    axis.setTickUnit(new NumberTickUnit(GapBins.niceStep(highest / TICKS)));
    axis.setNumberFormatOverride(new UpTo(highest));
  }

  private static void mark(CurvePlot<CurvePoint> curves, CurvePoint flat, CurvePoint last) {
    String share = Figures.percent(last.benefit() > 0 ? flat.benefit() / last.benefit() : 1);
    curves.mark(
        flat.budget(),
        share + " of all benefit for " + Figures.number(flat.budget()),
        flat.budget() > last.budget() / 2);
  }
}
