package org.meadowmark.core.measure;

import java.util.List;
import java.util.function.Supplier;
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
  /** Footprints of more scars than this take more memory than making them anew takes time. */
  private static final int MOST_HELD = 300_000;

  private final GroundScale scale;
  private final SurveyedArea surveyed;

  FootprintBuilder(GroundScale scale, SurveyedArea surveyed) {
    this.scale = scale;
    this.surveyed = surveyed;
  }

  List<Footprint> buildAll(List<Scar> scars) {
    boolean held = scars.size() <= MOST_HELD;
    return IntStream.range(0, scars.size())
        .parallel()
        .mapToObj(i -> build(i, scars.get(i), held))
        .toList();
  }

  private Footprint build(int index, Scar scar, boolean held) {
    Geometry geometry = scar.geometry();
    var middle = geometry.getEnvelopeInternal().centre();
    double factor = scale.lengthFactor(middle.x, middle.y);
    Geometry line = scar.isLine() ? geometry : geometry.getFactory().createLineString();
    Geometry whole = ScarOutline.of(scar, factor);
    return new Footprint(
        index,
        scar,
        surveyed.part(line),
        held ? held(surveyed.part(whole)) : () -> surveyed.part(ScarOutline.of(scar, factor)),
        factor,
        line.getLength(),
        whole.getArea());
  }

  private static Supplier<Geometry> held(Geometry area) {
    Geometry compact = CompactPolygons.of(area);
    return () -> compact;
  }
}
