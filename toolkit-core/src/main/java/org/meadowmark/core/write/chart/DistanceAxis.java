package org.meadowmark.core.write.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.LogAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/** A logarithmic axis with a tick at each of some values, where there is room for its label. */
final class DistanceAxis extends LogAxis {
  private static final long serialVersionUID = 1L;
  private static final double ROOM = 0.04;

  private final double[] values;

  DistanceAxis(String label, double[] values) {
    super(label);
    this.values = values.clone();
    ChartStyle.style(this);
    setMinorTickMarksVisible(false);
  }

  @Override
  @SuppressWarnings("rawtypes")
  public List refreshTicks(
      Graphics2D g2, AxisState state, Rectangle2D dataArea, RectangleEdge edge) {
    double apart = ROOM * Math.log(getUpperBound() / getLowerBound());
    List<NumberTick> ticks = new ArrayList<>();
    double last = 0;
    for (double value : values) {
      if (last == 0 || Math.log(value / last) >= apart) {
        String label = ChartStyle.axisFormat().format(value);
        ticks.add(new NumberTick(value, label, TextAnchor.TOP_CENTER, TextAnchor.CENTER, 0));
        last = value;
      }
    }
    return ticks;
  }
}
