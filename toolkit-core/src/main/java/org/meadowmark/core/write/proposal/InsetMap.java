package org.meadowmark.core.write.proposal;

import org.locationtech.jts.geom.Envelope;
import org.meadowmark.core.rank.zone.Zone;

/** A small map of the whole survey that shows where the zone's window lies. */
final class InsetMap {
  private static final double MARGIN_SHARE = 0.05;
  private static final double LEAST_METRES = 500;
  private static final double LEAST_BOX = 9;

  private final MapLayers layers;
  private final Zone zone;
  private final MapWindow shown;
  private final SheetText text;

  InsetMap(MapLayers layers, Zone zone, MapWindow shown, SheetText text) {
    this.layers = layers;
    this.zone = zone;
    this.shown = shown;
    this.text = text;
  }

  void draw(SvgWriter svg, double left, double top, double width, double height) {
    Envelope extent = layers.extent();
    extent.expandToInclude(shown.grid().centre());
    MapWindow inset =
        MapWindow.around(extent, MARGIN_SHARE, LEAST_METRES, left, top, width, height);
    String clip = zone.id() + "-inset";
    svg.open("defs").open("clipPath", "id", clip);
    svg.rectangle(left, top, width, height).close().close();
    svg.open("g", "clip-path", "url(#" + clip + ")");
    svg.rectangle(left, top, width, height, "fill", MapColours.WATER);
    svg.path(beds(inset), "fill", MapColours.bed(2, 4), "fill-rule", "evenodd");
    svg.path(
        land(inset),
        "fill",
        MapColours.LAND,
        "fill-rule",
        "evenodd",
        "stroke",
        MapColours.LAND_EDGE,
        "stroke-width",
        "0.8");
    svg.path(channels(inset), "fill", "none", "stroke", MapColours.CHANNEL, "stroke-width", "1.2");
    String zoneLine = new MapPath(inset).addOrDot(zone.geometry()).commands();
    svg.path(
        zoneLine,
        "fill",
        "none",
        "stroke",
        MapColours.ZONE,
        "stroke-width",
        "6",
        "stroke-linecap",
        "round");
    svg.path(zoneLine, "fill", "none", "stroke", MapColours.ZONE_LINE, "stroke-width", "1.6");
    drawBox(svg, inset);
    svg.close();
    svg.rectangle(
        left,
        top,
        width,
        height,
        "fill",
        "none",
        "stroke",
        MapColours.SOFT_INK,
        "stroke-width",
        "1");
    svg.label(
        left,
        top + height + 17,
        text.get("insetCaption"),
        SvgWriter.type("14", "start", MapColours.SOFT_INK));
  }

  private String beds(MapWindow inset) {
    MapPath path = new MapPath(inset);
    layers.beds(inset.grid()).forEach(bed -> path.add(bed.geometry()));
    return path.commands();
  }

  private String land(MapWindow inset) {
    MapPath path = new MapPath(inset);
    layers.barriers(inset.grid()).stream()
        .filter(barrier -> barrier.geometry().getDimension() == 2)
        .forEach(barrier -> path.add(barrier.geometry()));
    return path.commands();
  }

  private String channels(MapWindow inset) {
    MapPath path = new MapPath(inset);
    layers.channels(inset.grid()).forEach(channel -> path.add(channel.geometry()));
    return path.commands();
  }

  private void drawBox(SvgWriter svg, MapWindow inset) {
    Envelope box = shown.grid();
    double width = Math.max(LEAST_BOX, box.getWidth() / inset.metresPerUnit());
    double height = Math.max(LEAST_BOX, box.getHeight() / inset.metresPerUnit());
    svg.rectangle(
        inset.x(box.centre().x) - width / 2,
        inset.y(box.centre().y) - height / 2,
        width,
        height,
        "fill",
        "none",
        "stroke",
        MapColours.INK,
        "stroke-width",
        "2");
  }
}
