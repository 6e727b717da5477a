package org.meadowmark.core.write.proposal;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.MapArea;

/** Beds and land, drawn the same on the map of a zone and on that of the whole survey. */
final class GroundDrawing {
  private final SvgWriter svg;
  private final MapLayers layers;
  private final MapWindow window;

  GroundDrawing(SvgWriter svg, MapLayers layers, MapWindow window) {
    this.svg = svg;
    this.layers = layers;
    this.window = window;
  }

  void beds(List<Bed> beds, String edgeWidth) {
    Map<String, MapPath> byColour = new TreeMap<>();
    for (Bed bed : beds) {
      byColour
          .computeIfAbsent(MapLegend.bedColour(layers, bed), key -> new MapPath(window))
          .add(bed.geometry());
    }
    byColour.forEach((colour, path) -> area(path, colour, MapColours.BED_EDGE, edgeWidth));
  }

  /** What is drawn of barriers that are lines, such as jetties, is left to the caller. */
  MapPath barriers(List<MapArea> barriers, String edgeWidth) {
    MapPath areas = new MapPath(window);
    MapPath lines = new MapPath(window);
    for (MapArea barrier : barriers) {
      (barrier.geometry().getDimension() == 2 ? areas : lines).add(barrier.geometry());
    }
    area(areas, MapColours.LAND, MapColours.LAND_EDGE, edgeWidth);
    return lines;
  }

  private void area(MapPath path, String colour, String edge, String edgeWidth) {
    svg.path(
        path.commands(),
        "fill",
        colour,
        "fill-rule",
        "evenodd",
        "stroke",
        edge,
        "stroke-width",
        edgeWidth);
  }
}
