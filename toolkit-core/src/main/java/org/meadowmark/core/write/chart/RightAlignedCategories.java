package org.meadowmark.core.write.chart;

import java.awt.Graphics2D;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.text.TextBlock;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleEdge;

/** A category axis whose wrapped labels end at the bars. */
final class RightAlignedCategories extends CategoryAxis {
  private static final long serialVersionUID = 1L;

  @Override
  @SuppressWarnings("rawtypes")
  protected TextBlock createLabel(
      Comparable category, float width, RectangleEdge edge, Graphics2D g2) {
    TextBlock label = super.createLabel(category, width, edge, g2);
    label.setLineAlignment(HorizontalAlignment.RIGHT);
    return label;
  }
}
