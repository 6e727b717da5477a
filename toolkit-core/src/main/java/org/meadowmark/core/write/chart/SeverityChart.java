package org.meadowmark.core.write.chart;

import java.awt.Paint;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.data.category.DefaultCategoryDataset;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.measure.AreaMeasure.SeverityGrass;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Figures;

/** Hectares of bed by severity class for each management area. */
final class SeverityChart {
  static final String NAME = "severity-by-area";
  static final String TITLE = "How badly the beds are scarred, by management area";
  static final int MOST_BARS = 40;

  private static final String UNKNOWN = "unknown";

  private SeverityChart() {}

  static Picture of(AssessedSurvey assessed) {
    List<AreaMeasure> areas = areasWithGrass(assessed.measurement().areas());
    if (areas.isEmpty()) {
      JFreeChart empty = ChartStyle.empty(TITLE, "No bed was mapped in this survey.");
      return new Picture(NAME, empty, ChartStyle.WIDTH, ChartStyle.EMPTY_HEIGHT);
    }
    List<AreaMeasure> shown = largest(areas);
    List<SeverityClass> classes = assessed.references().severityClasses();
    DefaultCategoryDataset data = new DefaultCategoryDataset();
    List<RowKey> bars = new ArrayList<>();
    for (AreaMeasure area : shown) {
      RowKey bar = new RowKey(bars.size(), ChartStyle.shortened(area.label()));
      bars.add(bar);
      for (SeverityClass severity : classes) {
        data.addValue(hectares(area, severity.key()), severity.label(), bar);
      }
      data.addValue(hectares(area, UNKNOWN), "not surveyed: unknown", bar);
    }
    List<Paint> paints = new ArrayList<>();
    for (int place = 0; place < classes.size(); place++) {
      paints.add(ChartStyle.severity(place, classes.size()));
    }
    paints.add(ChartStyle.unknown());
    JFreeChart chart =
        ChartStyle.stackedBars(
            TITLE, subtitle(assessed, shown, areas.size()), data, paints, "mapped bed (ha)");
    CategoryPlot plot = chart.getCategoryPlot();
    double longest = 0;
    for (int i = 0; i < shown.size(); i++) {
      double grass = shown.get(i).damage().grassSquareMetres();
      longest = Math.max(longest, Figures.hectareValue(grass));
      BarLabels.add(plot, bars.get(i), Figures.hectareValue(grass), label(shown.get(i).damage()));
    }
    BarLabels.fit(plot, longest);
    return new Picture(NAME, chart, ChartStyle.WIDTH, ChartStyle.barChartHeight(shown.size()));
  }

  private static List<AreaMeasure> areasWithGrass(List<AreaMeasure> areas) {
    boolean divided = areas.stream().anyMatch(area -> area.kind() == Kind.MANAGEMENT_AREA);
    return areas.stream()
        .filter(area -> divided ^ (area.kind() == Kind.WHOLE_SURVEY))
        .filter(area -> area.damage().grassSquareMetres() > 0)
        .sorted(
            Comparator.comparing(AreaMeasure::kind)
                .thenComparing(area -> area.area().map(MapArea::id).orElse(""), Ids.ORDER))
        .toList();
  }

  /** The areas with most grass where there are too many to draw, in their usual order. */
  private static List<AreaMeasure> largest(List<AreaMeasure> areas) {
    if (areas.size() <= MOST_BARS) {
      return areas;
    }
    List<AreaMeasure> kept =
        areas.stream()
            .sorted(Comparator.comparing(area -> -area.damage().grassSquareMetres()))
            .limit(MOST_BARS)
            .toList();
    return areas.stream().filter(kept::contains).toList();
  }

  private static double hectares(AreaMeasure area, String severityKey) {
    return area.bySeverity().stream()
        .filter(grass -> grass.severityKey().equals(severityKey))
        .mapToDouble(SeverityGrass::grassSquareMetres)
        .map(Figures::hectareValue)
        .sum();
  }

  private static String label(Damage damage) {
    String share =
        damage.share().isPresent() ? Figures.percent(damage.share()) + " scarred" : "not surveyed";
    return Figures.area(damage.grassSquareMetres()) + ", " + share;
  }

  private static String subtitle(AssessedSurvey assessed, List<AreaMeasure> shown, int all) {
    String left =
        shown.size() == all
            ? ""
            : " The " + shown.size() + " of " + all + " areas with most bed are shown.";
    return "Class of each bed as a whole, from scarred area divided by "
        + denominator(assessed)
        + "."
        + left;
  }

  private static String denominator(AssessedSurvey assessed) {
    return switch (assessed.definition().parameters().severityDenominator()) {
      case BED -> "the surveyed area of the bed";
      case SCAR_GROUP -> "the area inside outlines around groups of scars";
    };
  }
}
