package org.meadowmark.core.measure;

import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.Scar;

/**
 * Makes footprints: a line buffered by half its ground width with flat ends, a polygon as it is,
 * both clipped to the surveyed area.
 *
 * <p>A straight line of length L and width w has a footprint of exactly L·w. Bends are joined by
 * arcs of eight chords a quarter circle.
 */
final class FootprintBuilder {
  private static final BufferParameters FLAT_ENDS = flatEnds();

  private static BufferParameters flatEnds() {
    BufferParameters parameters =
        new BufferParameters(8, BufferParameters.CAP_FLAT, BufferParameters.JOIN_ROUND, 5);
    // By default vertices within 1 % of the half width are dropped, which costs area at every bend.
    parameters.setSimplifyFactor(0);
    return parameters;
  }

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
      area = BufferOp.bufferOp(geometry, scar.widthMetres() * factor / 2, FLAT_ENDS);
    } else {
      line = geometry.getFactory().createLineString();
      area = geometry;
    }
    return new Footprint(
        index,
        scar,
        surveyed.part(line),
        surveyed.part(area),
        factor,
        line.getLength(),
        area.getArea());
  }
}
