package org.meadowmark.core.write.chart;

import java.awt.BasicStroke;
import java.awt.Paint;
import java.awt.Stroke;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.CategoryLineAnnotation;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.data.category.DefaultCategoryDataset;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.statistics.EmpiricalBayes;
import org.meadowmark.core.rank.statistics.ShrunkenRate;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Figures;
import org.meadowmark.core.write.SegmentLabel;

/** The channel segments with the highest scores: their damage rates by cause, with intervals. */
final class SegmentChart {
  static final String NAME = "ranked-segments";
  static final String TITLE = "Channel segments that lead the ranking, with their damage rates";
  static final int MOST_BARS = 20;

  private static final Stroke LINE = new BasicStroke(2);
  private static final Stroke DOT =
      new BasicStroke(9, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);

  private SegmentChart() {}

  static Picture of(AssessedSurvey assessed) {
    List<RankedSegment> leading = leading(assessed.ranking().segments());
    if (leading.isEmpty()) {
      String message =
          assessed.ranking().segments().isEmpty()
              ? "No channel was given, so there is no segment to rank."
              : "No segment to rank: no scar lies within reach of a channel beside enough bed.";
      JFreeChart empty = ChartStyle.empty(TITLE, message);
      return new Picture(NAME, empty, ChartStyle.WIDTH, ChartStyle.EMPTY_HEIGHT);
    }
    List<String> causes = causes(leading, assessed.references());
    DefaultCategoryDataset data = new DefaultCategoryDataset();
    List<RowKey> bars = new ArrayList<>();
    for (RankedSegment segment : leading) {
      RowKey bar = new RowKey(bars.size(), label(segment));
      bars.add(bar);
      for (String cause : causes) {
        double metres = segment.scarLengthMetresByCause().getOrDefault(cause, 0.0);
        data.addValue(
            metres / segment.exposureHectares(), causeLabel(cause, assessed.references()), bar);
      }
    }
    List<Paint> paints = new ArrayList<>();
    for (String cause : causes) {
      paints.add(paint(cause, causes, assessed.references()));
    }
    JFreeChart chart =
        ChartStyle.stackedBars(
            TITLE,
            "Highest score first. Bar: scar length nearest to the segment, for each hectare of surveyed"
                + " bed within "
                + Figures.chosenLength(assessed.definition().parameters().channelReachMetres())
                + " of it. Dot and line: smoothed rate with its "
                + Figures.chosenPercent(EmpiricalBayes.INTERVAL_SHARE)
                + " interval.",
            data,
            paints,
            "damage rate (m of scar per ha of bed)");
    CategoryPlot plot = chart.getCategoryPlot();
    double longest = 0;
    for (int i = 0; i < leading.size(); i++) {
      RankedSegment segment = leading.get(i);
      double rate = segment.ratePerHectare().orElseThrow();
      double end = Math.max(rate, segment.statistics().rate().high().orElse(rate));
      longest = Math.max(longest, end);
      addInterval(plot, bars.get(i), segment.statistics().rate());
      BarLabels.add(
          plot,
          bars.get(i),
          end,
          Figures.rate(rate) + " (" + Figures.length(segment.scarLengthMetres()) + ")");
    }
    BarLabels.fit(plot, longest);
    return new Picture(NAME, chart, ChartStyle.WIDTH, ChartStyle.barChartHeight(leading.size()));
  }

  private static void addInterval(CategoryPlot plot, RowKey bar, ShrunkenRate rate) {
    if (rate.estimate().isEmpty() || rate.low().isEmpty() || rate.high().isEmpty()) {
      return;
    }
    double middle = rate.estimate().getAsDouble();
    plot.addAnnotation(
        new CategoryLineAnnotation(
            bar, rate.low().getAsDouble(), bar, rate.high().getAsDouble(), ChartStyle.INK, LINE));
    plot.addAnnotation(new CategoryLineAnnotation(bar, middle, bar, middle, ChartStyle.INK, DOT));
  }

  private static List<RankedSegment> leading(List<RankedSegment> segments) {
    return segments.stream()
        .filter(segment -> segment.rank().isPresent())
        .filter(segment -> segment.ratePerHectare().orElse(0) > 0)
        .sorted(
            Comparator.<RankedSegment>comparingInt(segment -> segment.rank().getAsInt())
                .thenComparing(segment -> segment.segment().id(), Ids.ORDER))
        .limit(MOST_BARS)
        .toList();
  }

  private static List<String> causes(List<RankedSegment> segments, ReferenceTables references) {
    Set<String> present = new TreeSet<>();
    segments.forEach(
        segment ->
            segment
                .scarLengthMetresByCause()
                .forEach(
                    (cause, metres) -> {
                      if (metres > 0) {
                        present.add(cause);
                      }
                    }));
    Set<String> ordered = new LinkedHashSet<>(references.causes().keySet());
    ordered.retainAll(present);
    ordered.addAll(present);
    return List.copyOf(ordered);
  }

  /** A cause keeps its colour whatever other causes occur. */
  private static Paint paint(String cause, List<String> causes, ReferenceTables references) {
    if (cause.equals(ReferenceTables.UNKNOWN_CAUSE)) {
      return ChartStyle.noCause();
    }
    int known = List.copyOf(references.causes().keySet()).indexOf(cause);
    return ChartStyle.cause(
        known >= 0 ? known : references.causes().size() + causes.indexOf(cause));
  }

  private static String causeLabel(String cause, ReferenceTables references) {
    ScarCause known = references.causes().get(cause);
    return known == null ? cause : known.label();
  }

  private static String label(RankedSegment segment) {
    return segment.rank().getAsInt()
        + ". "
        + ChartStyle.shortened(SegmentLabel.of(segment.segment()));
  }
}
