package org.meadowmark.core.write.chart;

import java.awt.Color;
import java.awt.Font;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.XYPlot;
import org.meadowmark.core.measure.Connectedness;
import org.meadowmark.core.measure.Fragmentation.Crossing;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Figures;

/** Equivalent connected area against the crossing distance, with and without scars. */
final class ConnectivityChart {
  static final String NAME = "connected-area";
  static final String TITLE = "How much grass hangs together, by how far an animal crosses gaps";

  private static final int HEIGHT = 620;
  private static final int TICKS = 5;
  private static final double HEADROOM = 1.12;
  private static final double LABEL_ROOM = 0.3;
  private static final double LEAST_LABEL_GAP = 0.05;

  private ConnectivityChart() {}

  static Picture of(AssessedSurvey assessed) {
    List<Crossing> crossings =
        assessed.measurement().whole().fragmentation().crossings().stream()
            .filter(each -> each.before().isPresent() && each.after().isPresent())
            .sorted(Comparator.comparingDouble(Crossing::distanceMetres))
            .toList();
    if (crossings.isEmpty()) {
      JFreeChart empty = ChartStyle.empty(TITLE, "No grass to cross gaps between.");
      return new Picture(NAME, empty, ChartStyle.WIDTH, ChartStyle.EMPTY_HEIGHT);
    }
    String subtitle =
        "Equivalent connected area of the mapped grass: the one patch that would give the same"
            + " probability of connectivity, where a gap as wide as the distance is crossed half the"
            + " time.";
    XYPlot plot = plot(crossings, assessed.definition().parameters().crossingDistanceMetres());
    return new Picture(NAME, ChartStyle.numeric(TITLE, subtitle, plot), ChartStyle.WIDTH, HEIGHT);
  }

  private static XYPlot plot(List<Crossing> crossings, double headlineMetres) {
    CurvePlot<Crossing> curves =
        CurvePlot.between(
            crossings,
            Crossing::distanceMetres,
            "crossing distance (m)",
            "equivalent connected area (ha)");
    curves.addLine("without scars", each -> hectares(each, Crossing::before), ChartStyle.WATER);
    curves.addLine("with scars", each -> hectares(each, Crossing::after), ChartStyle.ACCENT);
    double highest =
        HEADROOM
            * crossings.stream()
                .mapToDouble(
                    each ->
                        Math.max(hectares(each, Crossing::before), hectares(each, Crossing::after)))
                .max()
                .orElseThrow();
    Crossing last = crossings.get(crossings.size() - 1);
    label(curves, last, highest);
    XYPlot plot = curves.plot();
    scaleAcross(plot, crossings);
    NumberAxis up = (NumberAxis) plot.getRangeAxis();
    double top = highest > 0 ? highest : 1;
    up.setRange(0, top);
    up.setTickUnit(new NumberTickUnit(GapBins.niceStep(top / TICKS)));
    crossings.stream()
        .filter(each -> each.distanceMetres() == headlineMetres)
        .findFirst()
        .ifPresent(each -> mark(curves, each, last));
    return plot;
  }

  /** Distances span orders of magnitude, unless 0 is among them. */
  private static void scaleAcross(XYPlot plot, List<Crossing> crossings) {
    double first = crossings.get(0).distanceMetres();
    double last = crossings.get(crossings.size() - 1).distanceMetres();
    if (first > 0 && last > first) {
      double reach = Math.log10(last / first);
      DistanceAxis axis =
          new DistanceAxis(
              plot.getDomainAxis().getLabel(),
              crossings.stream().mapToDouble(Crossing::distanceMetres).toArray());
      axis.setRange(
          first / Math.pow(10, reach * 0.03),
          last * Math.pow(10, Math.max(0.2, reach * LABEL_ROOM)));
      plot.setDomainAxis(axis);
      return;
    }
    NumberAxis axis = (NumberAxis) plot.getDomainAxis();
    double end = last > 0 ? last : 1;
    axis.setRange(0, end * (1 + LABEL_ROOM));
    axis.setTickUnit(new NumberTickUnit(GapBins.niceStep(end / TICKS)));
    axis.setNumberFormatOverride(new UpTo(end * 1.01));
  }

  private static void mark(CurvePlot<Crossing> curves, Crossing headline, Crossing last) {
    double before = hectares(headline, Crossing::before);
    String kept =
        before > 0
            ? ": scars leave " + Figures.percent(hectares(headline, Crossing::after) / before)
            : "";
    curves.mark(
        headline.distanceMetres(),
        Figures.chosenLength(headline.distanceMetres()) + kept,
        headline.distanceMetres() > last.distanceMetres() / 2);
  }

  /** Names at the right ends of the curves, moved apart where these are close. */
  private static void label(CurvePlot<Crossing> curves, Crossing last, double highest) {
    double before = hectares(last, Crossing::before);
    double after = hectares(last, Crossing::after);
    double lack = Math.max(0, highest * LEAST_LABEL_GAP - Math.abs(before - after)) / 2;
    boolean beforeAbove = before >= after;
    add(curves, last, "without scars", before, beforeAbove ? lack : -lack, ChartStyle.WATER);
    add(curves, last, "with scars", after, beforeAbove ? -lack : lack, ChartStyle.ACCENT);
  }

  private static void add(
      CurvePlot<Crossing> curves,
      Crossing last,
      String name,
      double hectares,
      double shift,
      Color ink) {
    curves.addText(
        "\u2002" + name + " " + Figures.number(hectares) + Figures.UNIT_SPACE + "ha",
        last.distanceMetres(),
        hectares + shift,
        Font.PLAIN,
        ink);
  }

  private static double hectares(
      Crossing crossing, Function<Crossing, Optional<Connectedness>> side) {
    return side.apply(crossing).orElseThrow().equivalentAreaHectares();
  }
}
