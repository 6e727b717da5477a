package org.meadowmark.core.write.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.util.Arrays;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.StandardXYBarPainter;
import org.jfree.chart.renderer.xy.XYBarRenderer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.meadowmark.core.measure.Gap;
import org.meadowmark.core.measure.LengthDistribution;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Figures;

/** Histogram of the widths of gaps that scars cut between patches. */
final class GapChart {
  static final String NAME = "gap-widths";
  static final String TITLE = "How wide the gaps are that scars cut between patches";

  private static final int HEIGHT = 620;
  private static final int TICKS = 6;
  private static final double HEADROOM = 1.16;

  /** Keeps the paper behind a label off its bar. */
  private static final double LABEL_LIFT = 0.008;

  private GapChart() {}

  static Picture of(AssessedSurvey assessed) {
    List<Gap> gaps = assessed.measurement().gaps();
    if (gaps.isEmpty()) {
      JFreeChart empty = ChartStyle.empty(TITLE, "No gaps: no scar separates two patches.");
      return new Picture(NAME, empty, ChartStyle.WIDTH, ChartStyle.EMPTY_HEIGHT);
    }
    GapBins bins = GapBins.of(gaps.stream().mapToDouble(Gap::minimumWidthMetres).toArray());
    XYPlot plot = plot(bins, assessed.measurement().whole().fragmentation().gaps());
    String subtitle =
        Figures.count(gaps.size(), "gap", "gaps")
            + "; a gap is one scar and one pair of patches that it separates."
            + beyond(gaps, bins);
    return new Picture(NAME, ChartStyle.numeric(TITLE, subtitle, plot), ChartStyle.WIDTH, HEIGHT);
  }

  private static String beyond(List<Gap> gaps, GapBins bins) {
    if (bins.beyond() == 0) {
      return "";
    }
    double widest = gaps.stream().mapToDouble(Gap::minimumWidthMetres).max().orElseThrow();
    return " The last bar, not to scale across, holds "
        + Figures.count(bins.beyond())
        + " wider than "
        + Figures.length(bins.endMetres())
        + ", up to "
        + Figures.length(widest)
        + ".";
  }

  private static XYPlot plot(GapBins bins, LengthDistribution widths) {
    XYIntervalSeries within = new XYIntervalSeries("gaps");
    XYIntervalSeries beyond = new XYIntervalSeries("wider gaps");
    XYIntervalSeriesCollection data = new XYIntervalSeriesCollection();
    data.addSeries(within);
    data.addSeries(beyond);
    NumberAxis across = ChartStyle.valueAxis("gap width (m)");
    NumberAxis up = ChartStyle.valueAxis("gaps");
    XYBarRenderer renderer = new XYBarRenderer(0.06);
    renderer.setBarPainter(new StandardXYBarPainter());
    renderer.setShadowVisible(false);
    renderer.setDrawBarOutline(false);
    renderer.setSeriesPaint(0, ChartStyle.WATER);
    renderer.setSeriesPaint(1, ChartStyle.ACCENT);
    XYPlot plot = new XYPlot(data, across, up, renderer);

    double bin = bins.binMetres();
    int highest = Math.max(bins.beyond(), Arrays.stream(bins.counts()).max().orElse(0));
    double lift = highest * LABEL_LIFT;
    for (int i = 0; i < bins.counts().length; i++) {
      int count = bins.counts()[i];
      double start = i * bin;
      within.add(start + bin / 2, start, start + bin, count, 0, count);
      if (count > 0) {
        addCount(plot, count, start + bin / 2, lift, ChartStyle.INK);
      }
    }
    double end = bins.endMetres();
    double right = end + bin / 4;
    if (bins.beyond() > 0) {
      double start = end + bin;
      beyond.add(start + bin / 2, start, start + bin, bins.beyond(), 0, bins.beyond());
      addCount(plot, bins.beyond(), start + bin / 2, lift, ChartStyle.ACCENT);
      right = start + bin + bin / 4;
    }
    across.setRange(-bin / 4, right);
    across.setTickUnit(new NumberTickUnit(bin * (bins.counts().length > 10 ? 2 : 1)));
    across.setNumberFormatOverride(new UpTo(end + bin / 2));
    up.setRange(0, highest * HEADROOM);
    up.setTickUnit(new NumberTickUnit(Math.max(1, GapBins.niceStep((double) highest / TICKS))));
    widths.medianMetres().ifPresent(median -> addMedian(plot, median, end));
    return plot;
  }

  private static void addMedian(XYPlot plot, double median, double end) {
    if (median > end) {
      return;
    }
    ValueMarker marker = new ValueMarker(median);
    marker.setPaint(ChartStyle.INK);
    marker.setStroke(new BasicStroke(1.5f, BasicStroke.CAP_BUTT, 0, 1, new float[] {6, 5}, 0));
    marker.setLabel("  median " + Figures.length(median) + "  ");
    marker.setLabelFont(ChartStyle.font(Font.PLAIN, 15));
    marker.setLabelPaint(ChartStyle.INK);
    boolean onTheLeft = median > end / 2;
    marker.setLabelAnchor(onTheLeft ? RectangleAnchor.TOP_LEFT : RectangleAnchor.TOP_RIGHT);
    marker.setLabelTextAnchor(onTheLeft ? TextAnchor.TOP_RIGHT : TextAnchor.TOP_LEFT);
    marker.setLabelBackgroundColor(new Color(0, 0, 0, 0));
    plot.addDomainMarker(marker);
  }

  private static void addCount(XYPlot plot, int count, double x, double lift, Color ink) {
    XYTextAnnotation label = new XYTextAnnotation(Figures.count(count), x, count + lift);
    label.setFont(ChartStyle.font(Font.PLAIN, 14));
    label.setPaint(ink);
    label.setBackgroundPaint(ChartStyle.PAPER);
    label.setTextAnchor(TextAnchor.BOTTOM_CENTER);
    plot.addAnnotation(label);
  }
}
