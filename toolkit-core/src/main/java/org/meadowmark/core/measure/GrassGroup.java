package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.noding.snap.SnappingNoder;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.meadowmark.core.model.Bed;

/**
 * Beds that touch, joined: what an animal or a plant sees as one meadow.
 *
 * @param beds members
 * @param geometry their union; digitising slivers up to the tolerance are closed where they would
 *     part it
 */
record GrassGroup(List<Bed> beds, Geometry geometry) {
  private static final double[] SNAP_PARTS = {1, 0.99, 0.95, 0.9, 0.75, 0.5};

  /** Joins touching beds. Time n log n in vertices plus the number of neighbouring pairs. */
  static List<GrassGroup> of(List<Bed> beds, double toleranceMetres) {
    STRtree index = StrTreeQuery.positions(beds.stream().map(Bed::geometry).toList());
    List<int[]> pairs =
        IntStream.range(0, beds.size())
            .parallel()
            .boxed()
            .flatMap(i -> touching(i, beds, index, toleranceMetres).stream())
            .toList();
    ConnectedSets sets = new ConnectedSets(beds.size());
    pairs.forEach(pair -> sets.join(pair[0], pair[1]));
    return sets.members().parallelStream()
        .map(
            members -> {
              List<Bed> together = members.stream().map(beds::get).toList();
              return new GrassGroup(together, unite(together, toleranceMetres));
            })
        .toList();
  }

  private static List<int[]> touching(int i, List<Bed> beds, STRtree index, double tolerance) {
    Geometry bed = beds.get(i).geometry();
    Envelope around = new Envelope(bed.getEnvelopeInternal());
    around.expandBy(tolerance);
    List<int[]> found = new ArrayList<>();
    IndexedFacetDistance distance = null;
    for (int j : StrTreeQuery.<Integer>items(index, around)) {
      if (j > i) {
        if (distance == null) {
          distance = new IndexedFacetDistance(bed);
        }
        if (distance.isWithinDistance(beds.get(j).geometry(), tolerance)
            || isInside(beds.get(j).geometry(), bed)
            || isInside(bed, beds.get(j).geometry())) {
          found.add(new int[] {i, j});
        }
      }
    }
    return found;
  }

  /** Whether a bed whose outline is not near that of another lies in it, not in a hole of it. */
  private static boolean isInside(Geometry inner, Geometry outer) {
    return outer.getEnvelopeInternal().contains(inner.getEnvelopeInternal())
        && SimplePointInAreaLocator.locate(inner.getCoordinate(), outer) == Location.INTERIOR;
  }

  private static Geometry unite(List<Bed> beds, double tolerance) {
    if (beds.size() == 1) {
      return beds.get(0).geometry();
    }
    List<Geometry> parts = beds.stream().map(Bed::geometry).toList();
    Geometry plain = UnaryUnionOp.union(parts);
    boolean alreadyOne = plain instanceof Polygon;
    return tolerance <= 0 || alreadyOne
        ? plain
        : PairwiseUnion.of(parts, (left, right) -> snapped(left, right, tolerance));
  }

  /**
   * Snapping can fold a ring onto itself in a way that no polygon can be built from. That depends
   * on the distance, so a little less is tried, and in the end nothing but rounding is snapped.
   */
  private static Geometry snapped(Geometry left, Geometry right, double tolerance) {
    for (double part : SNAP_PARTS) {
      try {
        return OverlayNG.overlay(left, right, OverlayNG.UNION, new SnappingNoder(part * tolerance));
      } catch (TopologyException e) {
        continue;
      }
    }
    return OverlayNGRobust.overlay(left, right, OverlayNG.UNION);
  }
}
