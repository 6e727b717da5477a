package org.meadowmark.core.measure;

import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.ItemDistance;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.distance.FacetSequence;
import org.locationtech.jts.operation.distance.FacetSequenceTreeBuilder;

/**
 * Edge of a piece for distances to others. A piece with many vertices keeps a tree of its facets;
 * of two with few, all edges are compared, which is faster than to build trees and takes no memory.
 */
final class PieceOutline {
  private static final int FEW_VERTICES = 24;

  private static final ItemDistance FACET_DISTANCE =
      (a, b) -> ((FacetSequence) a.getItem()).distance((FacetSequence) b.getItem());

  private final Polygon piece;
  private STRtree tree;

  PieceOutline(Polygon piece) {
    this.piece = piece;
  }

  static boolean hasFewVertices(Polygon piece) {
    return piece.getNumInteriorRing() == 0 && piece.getNumPoints() <= FEW_VERTICES;
  }

  private boolean hasFewVertices() {
    return hasFewVertices(piece);
  }

  private synchronized STRtree tree() {
    if (tree == null) {
      tree = FacetSequenceTreeBuilder.build(piece);
    }
    return tree;
  }

  /** Whether another piece is no farther than a distance, on the grid. */
  boolean isWithin(PieceOutline other, double distance) {
    return hasFewVertices() && other.hasFewVertices()
        ? distance(other) <= distance
        : tree().isWithinDistance(other.tree(), FACET_DISTANCE, distance);
  }

  /** Distance to another piece that it does not overlap, on the grid. */
  double distance(PieceOutline other) {
    if (hasFewVertices() && other.hasFewVertices()) {
      return edgeByEdge(piece, other.piece);
    }
    Object[] nearest = tree().nearestNeighbour(other.tree(), FACET_DISTANCE);
    return ((FacetSequence) nearest[0]).distance((FacetSequence) nearest[1]);
  }

  private static double edgeByEdge(Polygon a, Polygon b) {
    Coordinate[] from = a.getExteriorRing().getCoordinates();
    Coordinate[] to = b.getExteriorRing().getCoordinates();
    double smallest = Double.POSITIVE_INFINITY;
    for (int i = 0; i + 1 < from.length; i++) {
      Envelope edge = new Envelope(from[i], from[i + 1]);
      for (int j = 0; j + 1 < to.length; j++) {
        if (edge.distance(new Envelope(to[j], to[j + 1])) < smallest) {
          smallest =
              Math.min(smallest, Distance.segmentToSegment(from[i], from[i + 1], to[j], to[j + 1]));
        }
      }
    }
    return smallest;
  }
}
