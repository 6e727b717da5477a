package org.meadowmark.core.measure;

import java.util.OptionalDouble;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.Coordinate;
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
  private double[] corners;

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
    double[] from = corners();
    double[] to = other.corners();
    double smallest = Math.nextUp(limit);
    for (int i = 0; i + 3 < from.length; i += 2) {
      double minX = Math.min(from[i], from[i + 2]);
      double maxX = Math.max(from[i], from[i + 2]);
      double minY = Math.min(from[i + 1], from[i + 3]);
      double maxY = Math.max(from[i + 1], from[i + 3]);
      for (int j = 0; j + 3 < to.length; j += 2) {
        double dx = apart(minX, maxX, to[j], to[j + 2]);
        double dy = apart(minY, maxY, to[j + 1], to[j + 3]);
        if (dx < smallest && dy < smallest && dx * dx + dy * dy < smallest * smallest) {
          smallest =
              Math.min(
                  smallest,
                  Distance.segmentToSegment(
                      corner(from, i), corner(from, i + 2), corner(to, j), corner(to, j + 2)));
        }
      }
    }
    return smallest;
  }

  private static double apart(double min, double max, double a, double b) {
    return Math.max(0, Math.max(Math.min(a, b) - max, min - Math.max(a, b)));
  }

  private static Coordinate corner(double[] corners, int place) {
    return new Coordinate(corners[place], corners[place + 1]);
  }

  /** East and north of each corner, one after the other. */
  private double[] corners() {
    if (corners == null) {
      CoordinateSequence ring = piece.getExteriorRing().getCoordinateSequence();
      double[] all = new double[2 * ring.size()];
      for (int i = 0; i < ring.size(); i++) {
        all[2 * i] = ring.getX(i);
        all[2 * i + 1] = ring.getY(i);
      }
      corners = all;
    }
    return corners;
  }
}
