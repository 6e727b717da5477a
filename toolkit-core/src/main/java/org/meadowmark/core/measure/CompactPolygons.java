package org.meadowmark.core.measure;

import java.util.List;
import java.util.stream.IntStream;
import org.geotools.geometry.jts.LiteCoordinateSequenceFactory;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;

/**
 * Polygons with their coordinates in one array of numbers a ring: a third of the memory, for the
 * surveys that leave millions of them.
 */
final class CompactPolygons {
  private static final LiteCoordinateSequenceFactory SEQUENCES =
      new LiteCoordinateSequenceFactory();
  private static final GeometryFactory FACTORY =
      new GeometryFactory(new PrecisionModel(), 0, SEQUENCES);

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
    CoordinateSequence from = ring.getCoordinateSequence();
    CoordinateSequence to = SEQUENCES.create(from.size(), 2, 0);
    for (int i = 0; i < from.size(); i++) {
      to.setOrdinate(i, CoordinateSequence.X, from.getX(i));
      to.setOrdinate(i, CoordinateSequence.Y, from.getY(i));
    }
    return FACTORY.createLinearRing(to);
  }
}
