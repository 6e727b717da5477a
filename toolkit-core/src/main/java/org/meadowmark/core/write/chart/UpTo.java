package org.meadowmark.core.write.chart;

import java.text.FieldPosition;
import java.text.NumberFormat;
import java.text.ParsePosition;

/** Numbers of an axis up to a limit; beyond it, where bars are not to scale, there are none. */
final class UpTo extends NumberFormat {
  private static final long serialVersionUID = 1L;

  private final double limit;
  private final NumberFormat format = ChartStyle.axisFormat();

  UpTo(double limit) {
    this.limit = limit;
  }

  @Override
  public StringBuffer format(double number, StringBuffer to, FieldPosition position) {
    return number > limit ? to : format.format(number, to, position);
  }

  @Override
  public StringBuffer format(long number, StringBuffer to, FieldPosition position) {
    return format((double) number, to, position);
  }

  @Override
  public Number parse(String source, ParsePosition position) {
    return format.parse(source, position);
  }
}
