package org.meadowmark.core.measure;

import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.meadowmark.core.model.FlatSequence;

/**
 * Polygons with their coordinates in one array of numbers a ring: a third of the memory, for the
 * surveys that leave millions of them.
 */
final class CompactPolygons {
  private static final GeometryFactory FACTORY =
      new GeometryFactory(new PrecisionModel(), 0, FlatSequence.FACTORY);

  private CompactPolygons() {}

  /** A polygonal geometry; others as they are. */
  static Geometry of(Geometry geometry) {
    if (geometry instanceof Polygon polygon) {
      return of(polygon);
    }
    return geometry instanceof MultiPolygon
        ? FACTORY.createMultiPolygon(of(Scarring.polygonsOf(geometry)).toArray(Polygon[]::new))
        : geometry;
  }

  static List<Polygon> of(List<Polygon> polygons) {
    return polygons.stream().map(CompactPolygons::of).toList();
  }

  static Polygon of(Polygon polygon) {
    return FACTORY.createPolygon(
        ring(polygon.getExteriorRing()),
        IntStream.range(0, polygon.getNumInteriorRing())
            .mapToObj(i -> ring(polygon.getInteriorRingN(i)))
            .toArray(LinearRing[]::new));
  }

  private static LinearRing ring(LinearRing ring) {
    return FACTORY.createLinearRing(FlatSequence.FACTORY.create(ring.getCoordinateSequence()));
  }
}
