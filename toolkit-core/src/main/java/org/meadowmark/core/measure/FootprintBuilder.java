package org.meadowmark.core.measure;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.MetricSurvey;
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
  private final Optional<Geometry> surveyed;
  private final Optional<PreparedGeometry> preparedSurveyed;

  FootprintBuilder(MetricSurvey survey) {
    scale = survey.scale();
    surveyed = surveyedArea(survey.surveyedArea());
    preparedSurveyed = surveyed.map(PreparedGeometryFactory::prepare);
  }

  /** Union of the surveyed polygons; empty where everything was surveyed. */
  static Optional<Geometry> surveyedArea(List<MapArea> parts) {
    return parts.isEmpty()
        ? Optional.empty()
        : Optional.of(UnaryUnionOp.union(parts.stream().map(MapArea::geometry).toList()));
  }

  Optional<Geometry> surveyedArea() {
    return surveyed;
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
        index, scar, inSurvey(line), inSurvey(area), factor, line.getLength(), area.getArea());
  }

  private Geometry inSurvey(Geometry geometry) {
    if (surveyed.isEmpty() || geometry.isEmpty() || preparedSurveyed.get().contains(geometry)) {
      return geometry;
    }
    if (!preparedSurveyed.get().intersects(geometry)) {
      return geometry.getFactory().createEmpty(geometry.getDimension());
    }
    return OverlayNGRobust.overlay(geometry, surveyed.get(), OverlayNG.INTERSECTION);
  }
}
