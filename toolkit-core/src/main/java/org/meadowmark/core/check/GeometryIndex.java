package org.meadowmark.core.check;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/** Prepared geometries by place in a list and by envelope. Safe for use by several threads. */
final class GeometryIndex {
  private final List<PreparedGeometry> prepared;
  private final STRtree tree = new STRtree();
  private final Map<Integer, IndexedFacetDistance> facets = new ConcurrentHashMap<>();

  GeometryIndex(List<? extends Geometry> geometries) {
    prepared = geometries.stream().map(PreparedGeometryFactory::prepare).toList();
    for (int i = 0; i < geometries.size(); i++) {
      tree.insert(geometries.get(i).getEnvelopeInternal(), i);
    }
    tree.build();
  }

  PreparedGeometry get(int i) {
    return prepared.get(i);
  }

  /** Places of geometries whose envelopes come within a distance of another's, ascending. */
  IntStream near(Geometry geometry, double distance) {
    Envelope envelope = geometry.getEnvelopeInternal().copy();
    envelope.expandBy(distance);
    List<?> found = tree.query(envelope);
    return found.stream().mapToInt(Integer.class::cast).sorted();
  }

  /**
   * Distance between two geometries of the index that do not intersect, if it is no more than a
   * limit. Goes through an index of the edges of the larger one, which is kept.
   */
  OptionalDouble distanceWithin(int one, int other, double limit) {
    boolean oneIsLarger =
        get(one).getGeometry().getNumPoints() >= get(other).getGeometry().getNumPoints();
    int larger = oneIsLarger ? one : other;
    Geometry smaller = get(oneIsLarger ? other : one).getGeometry();
    IndexedFacetDistance distance =
        facets.computeIfAbsent(larger, i -> new IndexedFacetDistance(get(i).getGeometry()));
    return distance.isWithinDistance(smaller, limit)
        ? OptionalDouble.of(distance.distance(smaller))
        : OptionalDouble.empty();
  }

  /** Whether any geometry of the index shares a point with another. */
  boolean anyIntersects(Geometry geometry) {
    return near(geometry, 0).anyMatch(i -> get(i).intersects(geometry));
  }

  /** Whether one geometry of the index covers another. */
  boolean anyCovers(Geometry geometry) {
    return near(geometry, 0).anyMatch(i -> get(i).covers(geometry));
  }
}
