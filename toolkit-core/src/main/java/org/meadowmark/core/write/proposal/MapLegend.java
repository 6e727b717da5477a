package org.meadowmark.core.write.proposal;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.rank.zone.MarkShape;
import org.meadowmark.core.rank.zone.Marker;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.write.Figures;

/** What the signs of a map mean: only signs that are on it. */
final class MapLegend {
  private static final double ROW = 20;
  private static final double HEAD_GAP = 6;
  private static final double SAMPLE = 30;

  private final List<Row> rows = new ArrayList<>();

  /** Draws the sample of a row around a point. */
  private interface Sample {
    void draw(SvgWriter svg, double x, double y);
  }

  private record Row(String words, boolean head, Sample sample) {}

  MapLegend(
      MapLayers layers,
      Zone zone,
      List<Bed> beds,
      List<Scar> scars,
      List<MapArea> barriers,
      SheetText text) {
    row(text.get("legendZone"), MapLegend::zoneSample);
    row(text.get("legendChannel"), MapLegend::channelSample);
    Set<MarkShape> shapes = new TreeSet<>();
    zone.markers().stream().map(Marker::shape).forEach(shapes::add);
    for (MarkShape shape : shapes) {
      row(
          text.get("legendMarker." + shape.name()),
          (svg, x, y) -> MarkDrawing.symbol(svg, shape, x, y, 10));
    }
    if (!barriers.isEmpty()) {
      row(text.get("legendLand"), swatch(MapColours.LAND, MapColours.LAND_EDGE));
    }
    addBeds(layers, beds, text);
    addScars(layers, scars, text);
  }

  /** Colour of a bed. */
  static String bedColour(MapLayers layers, Bed bed) {
    return layers
        .severityPlace(bed.id())
        .map(place -> MapColours.bed(place, layers.severityClasses()))
        .orElse(MapColours.BED_UNKNOWN);
  }

  double height() {
    return rows.stream().mapToDouble(row -> ROW + (row.head() ? HEAD_GAP : 0)).sum();
  }

  void draw(SvgWriter svg, double x, double top) {
    double y = top;
    for (Row row : rows) {
      y += row.head() ? HEAD_GAP : 0;
      double middle = y + ROW / 2;
      if (row.head()) {
        svg.label(x, middle + 5, row.words(), SvgWriter.boldType("15", "start", MapColours.INK));
      } else {
        row.sample().draw(svg, x + SAMPLE / 2, middle);
        svg.label(
            x + SAMPLE + 9, middle + 5, row.words(), SvgWriter.type("15", "start", MapColours.INK));
      }
      y += ROW;
    }
  }

  private void addBeds(MapLayers layers, List<Bed> beds, SheetText text) {
    if (beds.isEmpty()) {
      return;
    }
    rows.add(new Row(text.get("legendBeds"), true, null));
    List<SeverityClass> classes = layers.survey().references().severityClasses();
    for (int place = 0; place < classes.size(); place++) {
      row(
          words(classes.get(place)),
          swatch(MapColours.bed(place, classes.size()), MapColours.BED_EDGE));
    }
    if (beds.stream().anyMatch(bed -> layers.severityPlace(bed.id()).isEmpty())) {
      row(text.get("legendBedUnknown"), swatch(MapColours.BED_UNKNOWN, MapColours.BED_EDGE));
    }
  }

  private void addScars(MapLayers layers, List<Scar> scars, SheetText text) {
    if (scars.isEmpty()) {
      return;
    }
    rows.add(new Row(text.get("legendScars"), true, null));
    List<ScarCause> causes = List.copyOf(layers.survey().references().causes().values());
    Set<Integer> places = new TreeSet<>();
    scars.forEach(scar -> places.add(layers.causePlace(scar.cause())));
    for (int place : places) {
      String name = place < causes.size() ? causes.get(place).label() : text.get("legendOther");
      row(name, line(MapColours.scar(place)));
    }
  }

  private static String words(SeverityClass severity) {
    if (severity.lowestShare() == severity.highestShare()) {
      return severity.label();
    }
    String low = percent(severity.lowestShare());
    String high = percent(severity.highestShare());
    return severity.label() + ", " + low + "–" + high + Figures.UNIT_SPACE + "%";
  }

  private static String percent(double share) {
    return Figures.number(Math.round(share * 1000) / 10.0).replaceAll("\\.0+$", "");
  }

  private void row(String words, Sample sample) {
    rows.add(new Row(words, false, sample));
  }

  private static Sample swatch(String fill, String edge) {
    return (svg, x, y) ->
        svg.rectangle(
            x - SAMPLE / 2, y - 7, SAMPLE, 14, "fill", fill, "stroke", edge, "stroke-width", "1");
  }

  private static Sample line(String colour) {
    return (svg, x, y) ->
        svg.line(
            x - SAMPLE / 2,
            y + 4,
            x + SAMPLE / 2,
            y - 4,
            "stroke",
            colour,
            "stroke-width",
            "2.4",
            "stroke-linecap",
            "round");
  }

  private static void zoneSample(SvgWriter svg, double x, double y) {
    svg.line(
        x - SAMPLE / 2 + 6,
        y,
        x + SAMPLE / 2 - 6,
        y,
        "stroke",
        MapColours.ZONE,
        "stroke-width",
        "14",
        "stroke-opacity",
        "0.55",
        "stroke-linecap",
        "round");
    svg.line(
        x - SAMPLE / 2,
        y,
        x + SAMPLE / 2,
        y,
        "stroke",
        MapColours.ZONE_LINE,
        "stroke-width",
        "2.6");
  }

  private static void channelSample(SvgWriter svg, double x, double y) {
    svg.line(
        x - SAMPLE / 2,
        y,
        x + SAMPLE / 2,
        y,
        "stroke",
        MapColours.CHANNEL,
        "stroke-width",
        "2",
        "stroke-dasharray",
        "9 5");
  }
}
