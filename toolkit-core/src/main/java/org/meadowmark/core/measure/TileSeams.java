package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.noding.snap.SnappingNoder;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Puts fragments of grass together that tiles cut apart: those that share a stretch of a tile's
 * side are one piece.
 *
 * <p>Time n log n in the edges that lie on sides, plus the union of the fragments that were cut.
 */
final class TileSeams {
  /** Overlays put what they cut on the side itself, but where they have to snap. */
  private static final double NEAR_METRES = 1e-5;

  /** Pieces that meet in a point are separate. */
  private static final double SHORTEST_METRES = 1e-6;

  private record Side(boolean vertical, double at) {}

  private record Edge(double from, double to, int fragment) {
    static final Comparator<Edge> ORDER =
        Comparator.comparingDouble(Edge::from)
            .thenComparingDouble(Edge::to)
            .thenComparingInt(Edge::fragment);
  }

  /** Edges on a side, of fragments below or left of it and of those on the other hand. */
  private record Seam(List<Edge> before, List<Edge> after) {
    Seam() {
      this(new ArrayList<>(), new ArrayList<>());
    }
  }

  private final Map<Side, Seam> seams = new HashMap<>();
  private final List<Polygon> fragments = new ArrayList<>();

  /** Adds the fragments of a tile; they are numbered on in the order in which they come. */
  void add(Envelope box, List<Polygon> inTile) {
    for (Polygon fragment : inTile) {
      addEdges(box, fragment, fragments.size());
      fragments.add(fragment);
    }
  }

  private void addEdges(Envelope box, Polygon fragment, int number) {
    Envelope extent = fragment.getEnvelopeInternal();
    if (extent.getMinX() - box.getMinX() > NEAR_METRES
        && box.getMaxX() - extent.getMaxX() > NEAR_METRES
        && extent.getMinY() - box.getMinY() > NEAR_METRES
        && box.getMaxY() - extent.getMaxY() > NEAR_METRES) {
      return;
    }
    addEdges(box, fragment.getExteriorRing(), number);
    for (int i = 0; i < fragment.getNumInteriorRing(); i++) {
      addEdges(box, fragment.getInteriorRingN(i), number);
    }
  }

  private void addEdges(Envelope box, LinearRing ring, int number) {
    CoordinateSequence c = ring.getCoordinateSequence();
    for (int i = 0; i + 1 < c.size(); i++) {
      double x0 = c.getX(i);
      double x1 = c.getX(i + 1);
      double y0 = c.getY(i);
      double y1 = c.getY(i + 1);
      if (onSide(x0, x1, box.getMaxX())) {
        seam(true, box.getMaxX()).before.add(edge(y0, y1, number));
      } else if (onSide(x0, x1, box.getMinX())) {
        seam(true, box.getMinX()).after.add(edge(y0, y1, number));
      }
      if (onSide(y0, y1, box.getMaxY())) {
        seam(false, box.getMaxY()).before.add(edge(x0, x1, number));
      } else if (onSide(y0, y1, box.getMinY())) {
        seam(false, box.getMinY()).after.add(edge(x0, x1, number));
      }
    }
  }

  private static boolean onSide(double from, double to, double side) {
    return Math.abs(from - side) <= NEAR_METRES && Math.abs(to - side) <= NEAR_METRES;
  }

  private static Edge edge(double from, double to, int fragment) {
    return new Edge(Math.min(from, to), Math.max(from, to), fragment);
  }

  private Seam seam(boolean vertical, double at) {
    return seams.computeIfAbsent(new Side(vertical, at), side -> new Seam());
  }

  int fragmentCount() {
    return fragments.size();
  }

  /**
   * Whole pieces.
   *
   * @param polygons the pieces
   * @param pieceOfFragment piece of each fragment
   */
  record Joined(List<Polygon> polygons, int[] pieceOfFragment) {}

  /** Joins what belongs together; pieces come in order of their first fragment. */
  Joined join() {
    ConnectedSets sets = new ConnectedSets(fragments.size());
    seams.values().forEach(seam -> join(seam, sets));
    int[] numbers = sets.numbers();
    List<List<Polygon>> members = new ArrayList<>();
    for (int i = 0; i < numbers.length; i++) {
      if (numbers[i] == members.size()) {
        members.add(new ArrayList<>(1));
      }
      members.get(numbers[i]).add(fragments.get(i));
    }
    List<Polygon> polygons = members.parallelStream().map(TileSeams::unite).toList();
    return new Joined(polygons, numbers);
  }

  private static void join(Seam seam, ConnectedSets sets) {
    seam.before.sort(Edge.ORDER);
    seam.after.sort(Edge.ORDER);
    int first = 0;
    for (Edge edge : seam.before) {
      while (first < seam.after.size() && seam.after.get(first).to <= edge.from) {
        first++;
      }
      for (int i = first; i < seam.after.size() && seam.after.get(i).from < edge.to; i++) {
        Edge other = seam.after.get(i);
        double shared = Math.min(edge.to, other.to) - Math.max(edge.from, other.from);
        if (shared > SHORTEST_METRES) {
          sets.join(edge.fragment, other.fragment);
        }
      }
    }
  }

  private static Polygon unite(List<Polygon> parts) {
    if (parts.size() == 1) {
      return parts.get(0);
    }
    Geometry united = OverlayNGRobust.union(List.<Geometry>copyOf(parts));
    if (!(united instanceof Polygon)) {
      united = snapped(parts);
    }
    return CompactPolygons.of((Polygon) (united instanceof Polygon ? united : thickened(parts)));
  }

  /** Where an overlay had to snap, sides may be a rounding error apart. */
  private static Geometry snapped(List<Polygon> parts) {
    try {
      return PairwiseUnion.of(
          parts,
          (left, right) ->
              OverlayNG.overlay(left, right, OverlayNG.UNION, new SnappingNoder(2 * NEAR_METRES)));
    } catch (TopologyException e) {
      return thickened(parts);
    }
  }

  /** The last resort: parts that share a side meet for certain once each is a hair larger. */
  private static Geometry thickened(List<Polygon> parts) {
    return OverlayNGRobust.union(parts.stream().map(part -> part.buffer(2 * NEAR_METRES)).toList());
  }
}
