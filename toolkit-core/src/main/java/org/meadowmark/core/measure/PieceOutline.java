package org.meadowmark.core.measure;

import java.util.OptionalDouble;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.CoordinateSequence;
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

  /**
   * Distance to another piece that it does not overlap, on the grid; empty where that is more than
   * a limit.
   */
  OptionalDouble distanceUpTo(double limit, PieceOutline other) {
    if (hasFewVertices() && other.hasFewVertices()) {
      double distance = edgeByEdge(other, limit);
      return distance <= limit ? OptionalDouble.of(distance) : OptionalDouble.empty();
    }
    return tree().isWithinDistance(other.tree(), FACET_DISTANCE, limit)
        ? OptionalDouble.of(distance(other))
        : OptionalDouble.empty();
  }

  /** Distance to another piece that it does not overlap, on the grid. */
  double distance(PieceOutline other) {
    if (hasFewVertices() && other.hasFewVertices()) {
      return edgeByEdge(other, Double.POSITIVE_INFINITY);
    }
    Object[] nearest = tree().nearestNeighbour(other.tree(), FACET_DISTANCE);
    return ((FacetSequence) nearest[0]).distance((FacetSequence) nearest[1]);
  }

  /** The distance, or anything above the limit where it is more than that. */
  private double edgeByEdge(PieceOutline other, double limit) {
    CoordinateSequence from = ring();
    CoordinateSequence to = other.ring();
    double smallest = Math.nextUp(limit);
    for (int i = 0; i + 1 < from.size(); i++) {
      double minX = Math.min(from.getX(i), from.getX(i + 1));
      double maxX = Math.max(from.getX(i), from.getX(i + 1));
      double minY = Math.min(from.getY(i), from.getY(i + 1));
      double maxY = Math.max(from.getY(i), from.getY(i + 1));
      for (int j = 0; j + 1 < to.size(); j++) {
        double dx = apart(minX, maxX, to.getX(j), to.getX(j + 1));
        double dy = apart(minY, maxY, to.getY(j), to.getY(j + 1));
        if (dx < smallest && dy < smallest && dx * dx + dy * dy < smallest * smallest) {
          smallest =
              Math.min(
                  smallest,
                  Distance.segmentToSegment(
                      from.getCoordinate(i),
                      from.getCoordinate(i + 1),
                      to.getCoordinate(j),
                      to.getCoordinate(j + 1)));
        }
      }
    }
    return smallest;
  }

  private CoordinateSequence ring() {
    return piece.getExteriorRing().getCoordinateSequence();
  }

  private static double apart(double min, double max, double a, double b) {
    return Math.max(0, Math.max(Math.min(a, b) - max, min - Math.max(a, b)));
  }
}
