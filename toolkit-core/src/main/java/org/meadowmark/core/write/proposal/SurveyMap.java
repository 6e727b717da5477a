package org.meadowmark.core.write.proposal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.write.Figures;

/** The map of a whole survey for paper: beds, scars, channels, zones, scale, north, grid, signs. */
final class SurveyMap {
  static final double WIDTH = 1000;
  static final int MOST_SCARS = 6_000;

  private static final double FRAME_HEIGHT = 504;
  private static final double MARGIN_SHARE = 0.03;
  private static final double LEAST_METRES = 500;
  private static final double ROW = 19;
  private static final int ROWS = 5;
  private static final double COLUMN = 190;

  private final MapLayers layers;
  private final List<Zone> zones;
  private final SheetText text;
  private final MapWindow window;
  private final SvgWriter svg = new SvgWriter();
  private final GroundDrawing ground;

  private record Sign(String words, String colour, boolean line) {}

  private SurveyMap(MapLayers layers, List<Zone> zones, SheetText text) {
    this.layers = layers;
    this.zones = zones;
    this.text = text;
    this.window =
        MapWindow.around(
            layers.extent(), MARGIN_SHARE, LEAST_METRES, 2, 2, WIDTH - 4, FRAME_HEIGHT);
    this.ground = new GroundDrawing(svg, layers, window);
  }

  static MapDrawing draw(MapLayers layers, List<Zone> zones, SheetText text) {
    return new SurveyMap(layers, zones, text).draw();
  }

  private MapDrawing draw() {
    List<Bed> beds = layers.beds(window.grid());
    List<MapArea> barriers = layers.barriers(window.grid());
    MapLayers.Scars scars = layers.scars(window.grid(), MOST_SCARS);
    double height = window.bottom() + 78 + ROWS * ROW;
    svg.picture(
        "survey-map",
        WIDTH,
        height,
        "map",
        text.get("hearingMapTitle"),
        text.get(
            "hearingMapDescription",
            Figures.count(beds.size()),
            Figures.count(scars.inView()),
            Figures.count(zones.size())));
    svg.open("defs").open("clipPath", "id", "survey-window");
    svg.rectangle(window.left(), window.top(), window.width(), window.height()).close().close();
    svg.open("g", "clip-path", "url(#survey-window)");
    svg.rectangle(
        window.left(), window.top(), window.width(), window.height(), "fill", MapColours.WATER);
    ground.beds(beds, "0.6");
    drawBarriers(barriers);
    drawChannels();
    drawScars(scars.drawn());
    drawZones();
    svg.close();
    svg.rectangle(
        window.left(),
        window.top(),
        window.width(),
        window.height(),
        "fill",
        "none",
        "stroke",
        MapColours.INK,
        "stroke-width",
        "1.6");
    drawFoot();
    drawSigns(beds, scars.drawn(), barriers);
    svg.close();
    return new MapDrawing(svg.finished(), height, scars.drawn().size(), scars.inView());
  }

  private void drawBarriers(List<MapArea> barriers) {
    MapPath lines = ground.barriers(barriers, "1");
    svg.path(lines.commands(), line(MapColours.LAND_EDGE, "2"));
  }

  private void drawChannels() {
    MapPath path = new MapPath(window);
    for (Channel channel : layers.channels(window.grid())) {
      path.add(channel.geometry());
    }
    svg.path(path.commands(), line(MapColours.CHANNEL, "1.6"));
  }

  private void drawScars(List<Scar> scars) {
    Map<Integer, MapPath> byCause = new TreeMap<>();
    for (Scar scar : scars) {
      byCause
          .computeIfAbsent(layers.causePlace(scar.cause()), key -> new MapPath(window))
          .addOrDot(scar.geometry());
    }
    byCause.forEach((place, path) -> svg.path(path.commands(), line(MapColours.scar(place), "1")));
  }

  private void drawZones() {
    for (Zone zone : zones) {
      String path = new MapPath(window).addOrDot(zone.geometry()).commands();
      String[] wide = line(MapColours.ZONE, "10");
      svg.open("g", "stroke-opacity", "0.6").path(path, wide).close();
      svg.path(path, line(MapColours.ZONE_LINE, "2.2"));
      svg.plate(
          window.x(zone.geometry().getEnvelopeInternal().centre().x),
          window.y(zone.geometry().getEnvelopeInternal().centre().y) - 10,
          18,
          zone.id(),
          SvgWriter.boldType("17", "middle", MapColours.INK));
    }
  }

  private void drawFoot() {
    double x = window.grid().centre().x;
    double y = window.grid().centre().y;
    double factor = layers.survey().map().scale().lengthFactor(x, y);
    double top = window.bottom() + 20;
    double bar =
        ScaleBar.draw(
            svg, window.left() + 2, top, window.width() / 4, window.metresPerUnit() / factor);
    String grid = layers.survey().map().gridLabel();
    svg.label(
        window.left() + bar + 70,
        top + 10,
        layers
            .gridPlaces()
            .map(places -> text.get("hearingMapGrid", grid, places.datum()))
            .orElseGet(() -> text.get("mapGridOnly", grid)),
        SvgWriter.type("14", "start", MapColours.SOFT_INK));
    NorthArrows.draw(
        svg,
        window.right() - 200,
        window.bottom() + 7,
        layers.gridPlaces().map(places -> places.gridNorthBearing(x, y)),
        text);
  }

  private void drawSigns(List<Bed> beds, List<Scar> scars, List<MapArea> barriers) {
    List<Sign> signs = new ArrayList<>();
    List<SeverityClass> classes = layers.survey().references().severityClasses();
    for (int place = 0; place < classes.size(); place++) {
      signs.add(
          new Sign(
              text.get("hearingBed", classes.get(place).label()),
              MapColours.bed(place, classes.size()),
              false));
    }
    if (beds.stream().anyMatch(bed -> layers.severityPlace(bed.id()).isEmpty())) {
      signs.add(new Sign(text.get("hearingBedUnknown"), MapColours.BED_UNKNOWN, false));
    }
    List<ScarCause> causes = List.copyOf(layers.survey().references().causes().values());
    Map<Integer, String> found = new LinkedHashMap<>();
    TreeSet<Integer> places = new TreeSet<>();
    scars.forEach(scar -> places.add(layers.causePlace(scar.cause())));
    places.forEach(
        place ->
            found.put(
                place,
                place < causes.size() ? causes.get(place).label() : text.get("legendOther")));
    found.forEach(
        (place, words) ->
            signs.add(new Sign(text.get("hearingScar", words), MapColours.scar(place), true)));
    signs.add(new Sign(text.get("legendChannel"), MapColours.CHANNEL, true));
    if (!zones.isEmpty()) {
      signs.add(new Sign(text.get("legendZone"), MapColours.ZONE, true));
    }
    if (!barriers.isEmpty()) {
      signs.add(new Sign(text.get("legendLand"), MapColours.LAND, false));
    }
    for (int i = 0; i < signs.size(); i++) {
      double left = window.left() + 2 + COLUMN * (i / ROWS);
      drawSign(signs.get(i), left, window.bottom() + 76 + ROW * (i % ROWS));
    }
  }

  private void drawSign(Sign sign, double x, double y) {
    if (sign.line()) {
      svg.line(x, y, x + 26, y, "stroke", sign.colour(), "stroke-width", "3");
    } else {
      svg.rectangle(
          x,
          y - 6,
          26,
          12,
          "fill",
          sign.colour(),
          "stroke",
          MapColours.BED_EDGE,
          "stroke-width",
          "0.8");
    }
    svg.label(x + 34, y + 5, sign.words(), SvgWriter.type("14", "start", MapColours.INK));
  }

  private static String[] line(String colour, String width) {
    return new String[] {
      "fill",
      "none",
      "stroke",
      colour,
      "stroke-width",
      width,
      "stroke-linecap",
      "round",
      "stroke-linejoin",
      "round"
    };
  }
}
