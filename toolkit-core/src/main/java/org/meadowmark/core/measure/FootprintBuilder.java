package org.meadowmark.core.measure;

import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.Scar;

/**
 * Makes footprints: a line buffered by half its ground width with flat ends, a polygon as it is,
 * both clipped to the surveyed area.
 *
 * <p>A straight line of length L and width w has a footprint of exactly L·w. Bends are joined by
 * arcs.
 */
final class FootprintBuilder {
  private final GroundScale scale;
  private final SurveyedArea surveyed;

  FootprintBuilder(GroundScale scale, SurveyedArea surveyed) {
    this.scale = scale;
    this.surveyed = surveyed;
  }

  List<Footprint> buildAll(List<Scar> scars) {
    return IntStream.range(0, scars.size())
        .parallel()
        .mapToObj(i -> build(i, scars.get(i)))
        .toList();
  }

  private Footprint build(int index, Scar scar) {
    Geometry geometry = scar.geometry();
    var middle = geometry.getEnvelopeInternal().centre();
    double factor = scale.lengthFactor(middle.x, middle.y);
    Geometry line;
    Geometry area;
    if (scar.isLine()) {
      line = geometry;
      area = ScarOutline.of(scar, factor);
    } else {
      line = geometry.getFactory().createLineString();
      area = geometry;
    }
    return new Footprint(
        index,
        scar,
        surveyed.part(line),
        CompactPolygons.of(surveyed.part(area)),
        factor,
        line.getLength(),
        area.getArea());
  }
}
