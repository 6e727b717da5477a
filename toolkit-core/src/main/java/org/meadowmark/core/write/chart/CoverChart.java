package org.meadowmark.core.write.chart;

import java.awt.Font;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.XYPlot;
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

  private CoverChart() {}

  static Picture of(AssessedSurvey assessed) {
    ZonePlan plan = assessed.zones();
    if (plan.zones().isEmpty()) {
      String message =
          plan.mostZones() == 0
              ? "No zone is asked for: most_zones is 0."
              : "No zone to propose: no scar lies within reach of a channel.";
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
    CurvePlot<CoverPoint> curves =
        new CurvePlot<>(
            curve,
            CoverPoint::lengthMetres,
            "total length of zones (m)",
            "scar length covered (m)");
    curves.addLine("best zones", CoverPoint::coveredMetres, ChartStyle.WATER);
    curves.addLine("worst first", CoverPoint::worstFirstMetres, ChartStyle.ACCENT);
    if (unproven) {
      curves.addBound("bound", CoverPoint::upperBoundMetres, ChartStyle.SOFT_INK);
    }
    label(curves, last, highest, unproven);
    XYPlot plot = curves.plot();

    NumberAxis across = (NumberAxis) plot.getDomainAxis();
    across.setRange(0, last.lengthMetres() * LABEL_ROOM);
    across.setTickUnit(
        new NumberTickUnit(GapBins.niceStep(Math.max(1, last.lengthMetres() / TICKS))));
    across.setNumberFormatOverride(new UpTo(last.lengthMetres()));
    NumberAxis up = (NumberAxis) plot.getRangeAxis();
    up.setRange(0, highest);
    up.setTickUnit(new NumberTickUnit(GapBins.niceStep(highest / TICKS)));
    curves.mark(
        plan.totalLengthMetres(),
        "proposed: " + Figures.length(plan.best().coveredMetres()) + " covered",
        false);
    return plot;
  }

  /** Names at the right ends of the lines, moved apart where these are close. */
  private static void label(
      CurvePlot<CoverPoint> curves, CoverPoint last, double highest, boolean unproven) {
    double gap = highest * LEAST_LABEL_GAP;
    double worst = last.worstFirstMetres();
    double best = Math.max(last.coveredMetres(), worst + gap);
    boolean together = last.coveredMetres() - worst < gap / 2;
    curves.addText(
        "  best zones " + Figures.length(last.coveredMetres()),
        last.lengthMetres(),
        together ? worst + gap / 2 : best,
        Font.PLAIN,
        ChartStyle.WATER);
    curves.addText(
        "  worst first " + Figures.length(worst),
        last.lengthMetres(),
        together ? worst - gap / 2 : worst,
        Font.PLAIN,
        ChartStyle.ACCENT);
    if (unproven) {
      curves.addText(
          "  at most " + Figures.length(last.upperBoundMetres()),
          last.lengthMetres(),
          Math.max(last.upperBoundMetres(), best + gap),
          Font.PLAIN,
          ChartStyle.SOFT_INK);
    }
  }
}
