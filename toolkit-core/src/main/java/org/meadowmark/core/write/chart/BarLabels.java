package org.meadowmark.core.write.chart;

import java.awt.Font;
import org.jfree.chart.annotations.CategoryTextAnnotation;
import org.jfree.chart.axis.CategoryAnchor;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.ui.TextAnchor;

/** Text at the end of a horizontal bar. */
final class BarLabels {
  /** Share of the plot's width that is kept free for the text of the longest bar. */
  private static final double ROOM = 0.28;

  private BarLabels() {}

  static void add(CategoryPlot plot, RowKey bar, double end, String text) {
    CategoryTextAnnotation label = new CategoryTextAnnotation("\u2002" + text, bar, end);
    label.setCategoryAnchor(CategoryAnchor.MIDDLE);
    label.setTextAnchor(TextAnchor.CENTER_LEFT);
    label.setFont(ChartStyle.font(Font.PLAIN, 14));
    label.setPaint(ChartStyle.INK);
    plot.addAnnotation(label);
  }

  /** Sets the axis so that the label of the longest bar fits. */
  static void fit(CategoryPlot plot, double longest) {
    plot.getRangeAxis().setRange(0, longest / (1 - ROOM));
  }
}
