package org.meadowmark.core.write.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Paint;
import java.awt.RenderingHints;
import java.awt.TexturePaint;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.axis.CategoryLabelPositions;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.category.StackedBarRenderer;
import org.jfree.chart.renderer.category.StandardBarPainter;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.category.CategoryDataset;
import org.meadowmark.core.write.Figures;

/**
 * The look of every chart: colours of a sea chart, large type, no frame, grid lines only across the
 * measured axis. Only logical fonts are used, so that any Java runtime draws it.
 */
final class ChartStyle {
  static final int WIDTH = 1200;
  static final int EMPTY_HEIGHT = 300;
  static final int ROW_HEIGHT = 44;

  static final Color PAPER = new Color(0xFCFBF7);
  static final Color INK = new Color(0x1D3344);
  static final Color SOFT_INK = new Color(0x536875);
  static final Color GRID = new Color(0xDCE5E6);
  static final Color WATER = new Color(0x3C7F9B);
  static final Color ACCENT = new Color(0xB4532A);

  /** From untouched to severe: darker is worse, so that the order survives without colour. */
  private static final List<Color> SEVERITY =
      List.of(new Color(0xD3E6DE), new Color(0x86BDB6), new Color(0xDB8B3F), new Color(0x6E1836));

  /** Causes: told apart with each common kind of colour blindness. */
  private static final List<Color> CAUSES =
      List.of(
          new Color(0x1F4E79),
          new Color(0xE07B4F),
          new Color(0x4FA79B),
          new Color(0x8E2F4C),
          new Color(0xF2D27A),
          new Color(0xA9C8EA));

  private static final Color NO_CAUSE = new Color(0xDADDDD);

  private static final int HEAD_HEIGHT = 190;
  static final int HATCH = 8;
  static final Color HATCH_GROUND = Color.WHITE;
  static final Color HATCH_LINE = new Color(0x9AA8AF);

  private static final double LABEL_SHARE = 0.36;
  private static final int LABEL_LINES = 3;
  private static final int MOST_LETTERS = 66;
  private static final double BAR_GAP = 0.3;

  private ChartStyle() {}

  /** A name short enough for two lines beside a bar: its start and its end where it is longer. */
  static String shortened(String name) {
    if (name.length() <= MOST_LETTERS) {
      return name;
    }
    int tailLength = MOST_LETTERS / 3;
    String head = name.substring(0, MOST_LETTERS - tailLength);
    String tail = name.substring(name.length() - tailLength);
    int headEnd = head.lastIndexOf(' ');
    int tailStart = tail.indexOf(' ');
    return (headEnd > tailLength ? head.substring(0, headEnd) : head)
        + " … "
        + (tailStart >= 0 ? tail.substring(tailStart + 1) : tail);
  }

  /** Height of a chart of horizontal bars. */
  static int barChartHeight(int rows) {
    return HEAD_HEIGHT + ROW_HEIGHT * Math.max(1, rows);
  }

  static Font font(int style, float size) {
    return new Font(Font.SANS_SERIF, style, 1).deriveFont(size);
  }

  static Font labelFont() {
    return font(Font.PLAIN, 15);
  }

  /** Colour of a severity class by its place among the classes, lightest first. */
  static Color severity(int place, int classes) {
    double position =
        classes <= 1 ? 0 : (double) place * (SEVERITY.size() - 1) / (double) (classes - 1);
    int below = Math.min((int) Math.floor(position), SEVERITY.size() - 1);
    int above = Math.min(below + 1, SEVERITY.size() - 1);
    return mix(SEVERITY.get(below), SEVERITY.get(above), position - below);
  }

  /** Colour of a cause by its place among the known causes. */
  static Color cause(int place) {
    return CAUSES.get(place % CAUSES.size());
  }

  /** Colour of scars whose cause is not known. */
  static Color noCause() {
    return NO_CAUSE;
  }

  /** A colour as a style sheet writes it. */
  static String css(Color color) {
    return String.format(Locale.ROOT, "#%06X", color.getRGB() & 0xFFFFFF);
  }

  /** Hatching for what is not known. */
  static Paint unknown() {
    BufferedImage tile = new BufferedImage(HATCH, HATCH, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = tile.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setPaint(HATCH_GROUND);
    g.fillRect(0, 0, HATCH, HATCH);
    g.setPaint(HATCH_LINE);
    g.setStroke(new BasicStroke(1.2f));
    for (int shift = -HATCH; shift <= HATCH; shift += HATCH) {
      g.drawLine(shift, HATCH, shift + HATCH, 0);
    }
    g.dispose();
    return new TexturePaint(tile, new Rectangle2D.Double(0, 0, HATCH, HATCH));
  }

  /** A chart of stacked horizontal bars; the first category is at the top. */
  static JFreeChart stackedBars(
      String title, String subtitle, CategoryDataset data, List<Paint> paints, String axisLabel) {
    CategoryAxis categories = new RightAlignedCategories();
    categories.setTickLabelFont(labelFont());
    categories.setTickLabelPaint(INK);
    categories.setAxisLineVisible(false);
    categories.setTickMarksVisible(false);
    categories.setMaximumCategoryLabelLines(LABEL_LINES);
    categories.setMaximumCategoryLabelWidthRatio((float) LABEL_SHARE);
    categories.setCategoryLabelPositions(CategoryLabelPositions.STANDARD);
    categories.setCategoryMargin(BAR_GAP);
    categories.setLowerMargin(0.01);
    categories.setUpperMargin(0.01);
    categories.setCategoryLabelPositionOffset(10);

    StackedBarRenderer renderer = new StackedBarRenderer();
    renderer.setBarPainter(new StandardBarPainter());
    renderer.setShadowVisible(false);
    renderer.setDrawBarOutline(false);
    renderer.setMaximumBarWidth(0.4);
    renderer.setDefaultLegendShape(new Rectangle2D.Double(-7, -7, 14, 14));
    for (int series = 0; series < paints.size(); series++) {
      renderer.setSeriesPaint(series, paints.get(series));
    }
    CategoryPlot plot = new CategoryPlot(data, categories, valueAxis(axisLabel), renderer);
    plot.setOrientation(PlotOrientation.HORIZONTAL);
    plot.setRangeAxisLocation(AxisLocation.BOTTOM_OR_LEFT);
    plot.setRangeGridlinePaint(GRID);
    plot.setRangeGridlineStroke(new BasicStroke(1f));
    plot.setDomainGridlinesVisible(false);
    return chart(title, subtitle, plot, true);
  }

  /** A chart over two numeric axes, without a legend. */
  static JFreeChart numeric(String title, String subtitle, XYPlot plot) {
    plot.setRangeGridlinePaint(GRID);
    plot.setRangeGridlineStroke(new BasicStroke(1f));
    plot.setDomainGridlinesVisible(false);
    return chart(title, subtitle, plot, false);
  }

  /** A chart that has nothing to show and says so. */
  static JFreeChart empty(String title, String message) {
    CategoryPlot plot = new CategoryPlot();
    plot.setNoDataMessage(message);
    plot.setNoDataMessageFont(font(Font.PLAIN, 19));
    plot.setNoDataMessagePaint(SOFT_INK);
    return chart(title, "", plot, false);
  }

  /** An axis of amounts, from zero. */
  static NumberAxis valueAxis(String label) {
    NumberAxis axis = new NumberAxis(label);
    style(axis);
    axis.setAutoRangeIncludesZero(true);
    return axis;
  }

  /** Numbers of an axis: thin grouping, as many decimals as the step needs. */
  static DecimalFormat axisFormat() {
    DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
    symbols.setGroupingSeparator(Figures.THIN_SPACE);
    return new DecimalFormat("#,##0.######", symbols);
  }

  static void style(ValueAxis axis) {
    axis.setLabelFont(font(Font.PLAIN, 15));
    axis.setLabelPaint(SOFT_INK);
    axis.setTickLabelFont(font(Font.PLAIN, 14));
    axis.setTickLabelPaint(SOFT_INK);
    axis.setAxisLineVisible(false);
    axis.setTickMarksVisible(false);
    axis.setLabelInsets(new RectangleInsets(8, 4, 4, 4));
    if (axis instanceof NumberAxis number) {
      number.setNumberFormatOverride(axisFormat());
    }
  }

  private static JFreeChart chart(String title, String subtitle, Plot plot, boolean withLegend) {
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setInsets(new RectangleInsets(12, 0, 0, 16));
    JFreeChart chart = new JFreeChart(null, null, plot, false);
    chart.setBackgroundPaint(PAPER);
    chart.setBorderVisible(false);
    chart.setPadding(new RectangleInsets(24, 28, 20, 28));
    chart.setTitle(text(title, font(Font.BOLD, 25), INK, 0));
    if (!subtitle.isEmpty()) {
      chart.addSubtitle(text(subtitle, font(Font.PLAIN, 16), SOFT_INK, 6));
    }
    if (withLegend) {
      LegendTitle legend = new LegendTitle(plot);
      legend.setPosition(RectangleEdge.TOP);
      legend.setHorizontalAlignment(HorizontalAlignment.LEFT);
      legend.setItemFont(labelFont());
      legend.setItemPaint(INK);
      legend.setBackgroundPaint(PAPER);
      legend.setFrame(BlockBorder.NONE);
      legend.setMargin(10, 0, 0, 0);
      legend.setItemLabelPadding(new RectangleInsets(2, 4, 2, 18));
      chart.addSubtitle(legend);
    }
    return chart;
  }

  private static TextTitle text(String words, Font font, Color ink, double above) {
    TextTitle title = new TextTitle(words, font);
    title.setPaint(ink);
    title.setTextAlignment(HorizontalAlignment.LEFT);
    title.setHorizontalAlignment(HorizontalAlignment.LEFT);
    title.setMargin(above, 0, 0, 0);
    return title;
  }

  private static Color mix(Color from, Color to, double share) {
    return new Color(
        mix(from.getRed(), to.getRed(), share),
        mix(from.getGreen(), to.getGreen(), share),
        mix(from.getBlue(), to.getBlue(), share));
  }

  private static int mix(int from, int to, double share) {
    return (int) Math.round(from + (to - from) * share);
  }
}
