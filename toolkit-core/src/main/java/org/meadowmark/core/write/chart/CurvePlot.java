package org.meadowmark.core.write.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * Curves with names and a place marked: from 0, where they show what can be had for what is spent,
 * or from the first of their points.
 *
 * @param <P> point of a curve
 */
final class CurvePlot<P> {
  private static final int FONT_SIZE = 15;
  private static final BasicStroke LINE = new BasicStroke(2.4f);
  private static final BasicStroke DASHED =
      new BasicStroke(1.8f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {6, 5}, 0);

  private final List<P> curve;
  private final ToDoubleFunction<P> spent;
  private final XYSeriesCollection data = new XYSeriesCollection();
  private final XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, true);
  private final XYPlot plot;
  private final boolean fromZero;

  CurvePlot(List<P> curve, ToDoubleFunction<P> spent, String acrossLabel, String upLabel) {
    this(curve, spent, acrossLabel, upLabel, true);
  }

  private CurvePlot(
      List<P> curve,
      ToDoubleFunction<P> spent,
      String acrossLabel,
      String upLabel,
      boolean fromZero) {
    this.fromZero = fromZero;
    this.curve = curve;
    this.spent = spent;
    plot =
        new XYPlot(
            data, ChartStyle.valueAxis(acrossLabel), ChartStyle.valueAxis(upLabel), renderer);
  }

  /** Curves from their first point to their last. */
  static <P> CurvePlot<P> between(
      List<P> curve, ToDoubleFunction<P> across, String acrossLabel, String upLabel) {
    return new CurvePlot<>(curve, across, acrossLabel, upLabel, false);
  }

  XYPlot plot() {
    return plot;
  }

  void addLine(String name, ToDoubleFunction<P> value, Color ink) {
    add(name, value, ink, LINE, true);
  }

  void addBound(String name, ToDoubleFunction<P> value, Color ink) {
    add(name, value, ink, DASHED, false);
  }

  private void add(
      String name, ToDoubleFunction<P> value, Color ink, BasicStroke stroke, boolean points) {
    XYSeries series = new XYSeries(name);
    if (fromZero) {
      series.add(0, 0);
    }
    curve.forEach(point -> series.add(spent.applyAsDouble(point), value.applyAsDouble(point)));
    int place = data.getSeriesCount();
    data.addSeries(series);
    renderer.setSeriesPaint(place, ink);
    renderer.setSeriesStroke(place, stroke);
    renderer.setSeriesShape(place, new Ellipse2D.Double(-4, -4, 8, 8));
    renderer.setSeriesShapesVisible(place, points);
  }

  /** Text that starts at a point. */
  void addText(String words, double x, double y, int fontStyle, Color ink) {
    XYTextAnnotation label = new XYTextAnnotation(words, x, y);
    label.setFont(ChartStyle.font(fontStyle, FONT_SIZE));
    label.setPaint(ink);
    label.setTextAnchor(TextAnchor.CENTER_LEFT);
    plot.addAnnotation(label);
  }

  /** A dashed upright line with its label at the foot, to the left or to the right of it. */
  void mark(double x, String label, boolean labelLeft) {
    ValueMarker marker = new ValueMarker(x);
    marker.setPaint(ChartStyle.INK);
    marker.setStroke(DASHED);
    marker.setLabel("  " + label + "  ");
    marker.setLabelFont(ChartStyle.font(Font.PLAIN, FONT_SIZE));
    marker.setLabelPaint(ChartStyle.INK);
    marker.setLabelAnchor(labelLeft ? RectangleAnchor.BOTTOM_LEFT : RectangleAnchor.BOTTOM_RIGHT);
    marker.setLabelTextAnchor(labelLeft ? TextAnchor.BOTTOM_RIGHT : TextAnchor.BOTTOM_LEFT);
    marker.setLabelBackgroundColor(new Color(0, 0, 0, 0));
    plot.addDomainMarker(marker);
  }
}
