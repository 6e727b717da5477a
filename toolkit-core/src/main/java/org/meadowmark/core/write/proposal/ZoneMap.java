package org.meadowmark.core.write.proposal;

import static org.meadowmark.core.write.proposal.SvgWriter.number;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Point;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.rank.zone.Marker;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.write.Figures;

/**
 * The map of a zone: what lies in its window, the zone and its markers, a frame with degrees, and
 * beside it where the window is, how north lies, and what the signs mean. Grid north is up.
 */
final class ZoneMap {
  static final double WIDTH = 1000;
  static final int MOST_SCARS = 2_500;

  private static final double FRAME_LEFT = 26;
  private static final double FRAME_TOP = 4;
  private static final double FRAME_WIDTH = 700;
  private static final double FRAME_HEIGHT = 450;
  private static final double FOOT_HEIGHT = 82;
  private static final double MARGIN_SHARE = 0.22;
  private static final double LEAST_METRES = 300;
  private static final double SYMBOL_RADIUS = 13;
  private static final double MANY_MARKERS = 12;
  private static final double TICK = 6;

  /** Room that the label of a tick takes along the frame. */
  private static final double LABEL_ROOM = 118;

  private static final int MANY_SCARS = 1_000;

  private final MapLayers layers;
  private final Zone zone;
  private final String channel;
  private final SheetText text;
  private final MapWindow window;
  private final SvgWriter svg = new SvgWriter();
  private final GroundDrawing ground;
  private final double gridNorth;

  private ZoneMap(MapLayers layers, ZoneSheet sheet, SheetText text) {
    this.layers = layers;
    this.zone = sheet.zone();
    this.channel = sheet.channel();
    this.text = text;
    Envelope core = new Envelope(zone.geometry().getEnvelopeInternal());
    zone.markers().forEach(marker -> core.expandToInclude(marker.geometry().getCoordinate()));
    this.window =
        MapWindow.around(
            core, MARGIN_SHARE, LEAST_METRES, FRAME_LEFT, FRAME_TOP, FRAME_WIDTH, FRAME_HEIGHT);
    this.ground = new GroundDrawing(svg, layers, window);
    this.gridNorth =
        layers
            .gridPlaces()
            .map(p -> p.gridNorthBearing(window.grid().centre().x, window.grid().centre().y))
            .orElse(0.0);
  }

  /** Draws the map of a sheet. */
  static MapDrawing draw(MapLayers layers, ZoneSheet sheet, SheetText text) {
    return new ZoneMap(layers, sheet, text).draw();
  }

  private MapDrawing draw() {
    List<Bed> beds = layers.beds(window.grid());
    List<MapArea> barriers = layers.barriers(window.grid());
    MapLayers.Scars scars = layers.scars(window.grid(), MOST_SCARS);
    MapLegend legend = new MapLegend(layers, zone, beds, scars.drawn(), barriers, text);
    double side = window.right() + 24;
    double legendTop = 182;
    double height = Math.max(window.bottom() + FOOT_HEIGHT, legendTop + legend.height() + TICK);

    svg.picture(
        zone.id() + "-map",
        WIDTH,
        height,
        "map",
        text.get("mapTitle", zone.id()),
        text.get(
            "mapDescription",
            channel,
            Figures.length(zone.lengthMetres()),
            Figures.count(zone.markers().size()),
            Figures.count(scars.inView())));
    String clip = zone.id() + "-window";
    svg.open("defs").open("clipPath", "id", clip);
    svg.rectangle(window.left(), window.top(), window.width(), window.height()).close().close();

    svg.open("g", "clip-path", "url(#" + clip + ")");
    svg.rectangle(
        window.left(), window.top(), window.width(), window.height(), "fill", MapColours.WATER);
    Optional<Graticule> graticule =
        layers.gridPlaces().map(places -> Graticule.of(window.grid(), places));
    ground.beds(beds, "0.8");
    drawBarriers(barriers);
    graticule.ifPresent(this::drawLines);
    drawChannels();
    drawScars(scars.drawn());
    drawZoneLine();
    svg.close();
    drawMarkers();
    drawFrame();
    graticule.ifPresent(this::drawDegrees);
    drawFoot();

    new InsetMap(layers, zone, window, text).draw(svg, side, FRAME_TOP, WIDTH - side - 2, 150);
    NorthArrows.draw(
        svg,
        window.right() - 200,
        window.bottom() + 33,
        layers.gridPlaces().map(p -> gridNorth),
        text);
    legend.draw(svg, side, legendTop);
    svg.close();
    return new MapDrawing(svg.finished(), height, scars.drawn().size(), scars.inView());
  }

  private void drawBarriers(List<MapArea> barriers) {
    MapPath lines = ground.barriers(barriers, "1.4");
    svg.path(lines.commands(), "fill", "none", "stroke", MapColours.LAND_EDGE, "stroke-width", "3");
  }

  private void drawLines(Graticule graticule) {
    String[] thin = {"stroke", MapColours.GRATICULE, "stroke-width", "0.7"};
    for (Graticule.Line line : graticule.meridians()) {
      svg.line(window.x(line.start()), window.bottom(), window.x(line.end()), window.top(), thin);
    }
    for (Graticule.Line line : graticule.parallels()) {
      svg.line(window.left(), window.y(line.start()), window.right(), window.y(line.end()), thin);
    }
  }

  private void drawChannels() {
    MapPath path = new MapPath(window);
    for (Channel line : layers.channels(window.grid())) {
      path.add(line.geometry());
    }
    MapPath zonePath = new MapPath(window).add(zone.geometry());
    svg.path(path.commands(), stroke(MapColours.WHITE, "5", ""));
    svg.path(
        zonePath.commands(),
        "fill",
        "none",
        "stroke",
        MapColours.ZONE,
        "stroke-width",
        "24",
        "stroke-opacity",
        "0.55",
        "stroke-linecap",
        "round",
        "stroke-linejoin",
        "round");
    svg.path(path.commands(), stroke(MapColours.CHANNEL, "2", "9 5"));
  }

  private void drawScars(List<Scar> scars) {
    String width = scars.size() > MANY_SCARS ? "1" : "1.8";
    Map<Integer, MapPath> lines = new TreeMap<>();
    Map<Integer, MapPath> areas = new TreeMap<>();
    for (Scar scar : scars) {
      (scar.isLine() ? lines : areas)
          .computeIfAbsent(layers.causePlace(scar.cause()), key -> new MapPath(window))
          .addOrDot(scar.geometry());
    }
    areas.forEach(
        (place, path) ->
            svg.path(
                path.commands(),
                "fill",
                MapColours.scar(place),
                "fill-opacity",
                "0.45",
                "stroke",
                MapColours.scar(place),
                "stroke-width",
                width,
                "stroke-linecap",
                "round"));
    lines.forEach(
        (place, path) -> svg.path(path.commands(), stroke(MapColours.scar(place), width, "")));
  }

  private void drawZoneLine() {
    String line = new MapPath(window).add(zone.geometry()).commands();
    svg.path(line, stroke(MapColours.WHITE, "5.5", ""));
    svg.path(line, stroke(MapColours.ZONE_LINE, "2.8", ""));
  }

  private void drawMarkers() {
    double radius = zone.markers().size() > MANY_MARKERS ? SYMBOL_RADIUS * 0.7 : SYMBOL_RADIUS;
    for (Marker marker : zone.markers()) {
      Point place = marker.geometry();
      double x = window.x(place.getX());
      double y = window.y(place.getY());
      double onMap = Math.toRadians(marker.bearingDegrees() - gridNorth);
      double east = Math.sin(onMap);
      double down = -Math.cos(onMap);
      double from = radius;
      double to = radius * 2.3;
      svg.line(
          x + from * east,
          y + from * down,
          x + to * east,
          y + to * down,
          "stroke",
          MapColours.INK,
          "stroke-width",
          "2.4");
      svg.path(
          "M%s %sL%s %sL%s %sZ"
              .formatted(
                  number(x + (to + 8) * east),
                  number(y + (to + 8) * down),
                  number(x + (to - 2) * east - 5 * down),
                  number(y + (to - 2) * down + 5 * east),
                  number(x + (to - 2) * east + 5 * down),
                  number(y + (to - 2) * down - 5 * east)),
          "fill",
          MapColours.INK);
      MarkDrawing.symbol(svg, marker.shape(), x, y, radius);
      svg.plate(
          x - (radius + 18) * east,
          y - (radius + 14) * down + 6,
          18,
          shortId(marker),
          SvgWriter.boldType("18", "middle", MapColours.INK));
    }
  }

  /** The number of a marker without its zone's id. */
  static String shortId(Marker marker) {
    String prefix = marker.zoneId() + "-";
    return marker.id().startsWith(prefix) ? marker.id().substring(prefix.length()) : marker.id();
  }

  private void drawFrame() {
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
  }

  private void drawDegrees(Graticule graticule) {
    String[] tick = {"stroke", MapColours.INK, "stroke-width", "1.4"};
    double labelled = window.left() - LABEL_ROOM / 2;
    for (Graticule.Line line : graticule.meridians()) {
      double x = window.x(line.start());
      svg.line(x, window.bottom(), x, window.bottom() + TICK, tick);
      if (x >= labelled + LABEL_ROOM && x < window.right() - LABEL_ROOM / 3) {
        labelled = x;
        svg.label(
            x,
            window.bottom() + 22,
            DegreesMinutes.longitude(line.degrees(), graticule.decimals()),
            SvgWriter.type("14", "middle", MapColours.INK));
      }
    }
    labelled = window.bottom() + LABEL_ROOM / 2;
    for (Graticule.Line line : graticule.parallels()) {
      double y = window.y(line.start());
      svg.line(window.left() - TICK, y, window.left(), y, tick);
      if (y <= labelled - LABEL_ROOM && y > window.top() + LABEL_ROOM / 3) {
        labelled = y;
        String turned = "rotate(-90 " + number(window.left() - 10) + " " + number(y) + ")";
        svg.open("g", "transform", turned);
        svg.label(
            window.left() - 10,
            y,
            DegreesMinutes.latitude(line.degrees(), graticule.decimals()),
            SvgWriter.type("14", "middle", MapColours.INK));
        svg.close();
      }
    }
  }

  private void drawFoot() {
    double factor =
        layers
            .survey()
            .map()
            .scale()
            .lengthFactor(window.grid().centre().x, window.grid().centre().y);
    double y = window.bottom() + 46;
    double barWidth =
        ScaleBar.draw(svg, window.left(), y, window.width() / 4, window.metresPerUnit() / factor);
    svg.label(
        window.left() + barWidth + 56,
        y + 12,
        gridNote(),
        SvgWriter.type("14", "start", MapColours.SOFT_INK));
  }

  private String gridNote() {
    String grid = layers.survey().map().gridLabel();
    return layers
        .gridPlaces()
        .map(places -> text.get("mapGrid", grid, places.datum()))
        .orElseGet(() -> text.get("mapGridOnly", grid));
  }

  private static String[] stroke(String colour, String width, String dashes) {
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
      "round",
      "stroke-dasharray",
      dashes.isEmpty() ? "none" : dashes
    };
  }
}
