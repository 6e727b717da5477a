package org.meadowmark.core.measure;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.ItemBoundable;
import org.locationtech.jts.index.strtree.ItemDistance;
import org.locationtech.jts.index.strtree.STRtree;
import org.meadowmark.core.model.GroundScale;

/**
 * Nearest other piece of pieces that have none in their own part of a survey. Outlines are read as
 * they are needed and few are held.
 */
final class NearestAcross {
  private static final int MOST_VERTICES_HELD = 500_000;

  private final GroundScale scale;
  private final List<Envelope> extents;
  private final IntFunction<Polygon> pieces;
  private final STRtree index = new STRtree();
  private final Map<Integer, Held> held = new LinkedHashMap<>(64, 0.75f, true);
  private long vertices;

  private record Held(Polygon piece, PieceOutline outline) {}

  /**
   * Prepares a search.
   *
   * @param extents envelopes of all pieces of the survey
   * @param pieces reads one
   */
  NearestAcross(GroundScale scale, List<Envelope> extents, IntFunction<Polygon> pieces) {
    this.scale = scale;
    this.extents = extents;
    this.pieces = pieces;
    for (int i = 0; i < extents.size(); i++) {
      index.insert(extents.get(i), i);
    }
    index.build();
  }

  /** Nearest other of each of some pieces; there are at least two pieces. */
  List<PieceGraph.Nearest> of(int[] wanted) {
    ItemDistance distance = this::distance;
    return IntStream.of(wanted)
        .parallel()
        .mapToObj(
            i -> {
              int other = (Integer) index.nearestNeighbour(extents.get(i), i, distance);
              return new PieceGraph.Nearest(other, gridDistance(i, other) / factor(i, other));
            })
        .toList();
  }

  private double distance(ItemBoundable left, ItemBoundable right) {
    int i = (Integer) left.getItem();
    int j = (Integer) right.getItem();
    return i == j ? Double.MAX_VALUE : gridDistance(i, j);
  }

  private double gridDistance(int i, int j) {
    return held(i).outline.distance(held(j).outline);
  }

  /** The factor at the piece with fewer vertices, as in {@link PieceGraph}. */
  private double factor(int i, int j) {
    int byVertices =
        Integer.compare(held(i).piece.getNumPoints(), held(j).piece.getNumPoints());
    boolean isBigger = byVertices != 0 ? byVertices > 0 : i > j;
    Coordinate centre = extents.get(isBigger ? j : i).centre();
    return scale.lengthFactor(centre.x, centre.y);
  }

  private synchronized Held held(int i) {
    Held known = held.get(i);
    if (known == null) {
      Polygon piece = pieces.apply(i);
      known = new Held(piece, new PieceOutline(piece));
      held.put(i, known);
      vertices += piece.getNumPoints();
      Iterator<Held> oldest = held.values().iterator();
      while (vertices > MOST_VERTICES_HELD && held.size() > 2) {
        vertices -= oldest.next().piece.getNumPoints();
        oldest.remove();
      }
    }
    return known;
  }
}
