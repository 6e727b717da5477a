package org.meadowmark.core.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.Located;

/**
 * Finds features drawn over each other: same kind of geometry, same length, and every vertex of
 * each within a tolerance of the other's line, whichever direction the lines run and however
 * densely they are drawn.
 *
 * <p>Keeps the first of each group in buckets by the lower left corner of its envelope, so that
 * each feature meets only those that begin where it begins. Expected time O(n) in features; a pair
 * with the same envelope but other vertices costs the square of their vertices.
 */
final class DuplicateFinder<T extends Located> {
  /**
   * Coordinates rounded to seven decimals of a degree are within 6 mm of each other; copies that
   * went through two file formats or two projections are within a few. Common practice, no source.
   */
  static final double TOLERANCE_METRES = 0.05;

  private static final double CELL_METRES = 1;

  private record Cell(long column, long row) {}

  private final Map<Cell, List<T>> firsts = new HashMap<>();

  /** The remembered feature that this one copies; where there is none, this one is remembered. */
  Optional<T> findOrRemember(T feature) {
    Optional<T> found = find(feature);
    if (found.isEmpty()) {
      Envelope envelope = feature.geometry().getEnvelopeInternal();
      Cell cell = new Cell(cell(envelope.getMinX()), cell(envelope.getMinY()));
      firsts.computeIfAbsent(cell, k -> new ArrayList<>(1)).add(feature);
    }
    return found;
  }

  /** The remembered feature that this one copies. */
  Optional<T> find(Located feature) {
    Envelope envelope = feature.geometry().getEnvelopeInternal();
    long lowColumn = cell(envelope.getMinX() - TOLERANCE_METRES);
    long highColumn = cell(envelope.getMinX() + TOLERANCE_METRES);
    long lowRow = cell(envelope.getMinY() - TOLERANCE_METRES);
    long highRow = cell(envelope.getMinY() + TOLERANCE_METRES);
    for (long column = lowColumn; column <= highColumn; column++) {
      for (long row = lowRow; row <= highRow; row++) {
        for (T first : firsts.getOrDefault(new Cell(column, row), List.of())) {
          if (isCopy(first.geometry(), feature.geometry())) {
            return Optional.of(first);
          }
        }
      }
    }
    return Optional.empty();
  }

  static boolean isCopy(Geometry one, Geometry other) {
    if (one.getDimension() != other.getDimension()
        || !isClose(one.getEnvelopeInternal(), other.getEnvelopeInternal())) {
      return false;
    }
    // Almost all copies have the same vertices; the distance below takes time by their square.
    if (one.equalsExact(other, TOLERANCE_METRES)
        || one.equalsExact(other.reverse(), TOLERANCE_METRES)) {
      return true;
    }
    int vertices = Math.max(one.getNumPoints(), other.getNumPoints());
    return Math.abs(one.getLength() - other.getLength()) <= 2 * TOLERANCE_METRES * vertices
        && DiscreteHausdorffDistance.distance(one, other) <= TOLERANCE_METRES;
  }

  private static boolean isClose(Envelope one, Envelope other) {
    return Math.abs(one.getMinX() - other.getMinX()) <= TOLERANCE_METRES
        && Math.abs(one.getMinY() - other.getMinY()) <= TOLERANCE_METRES
        && Math.abs(one.getMaxX() - other.getMaxX()) <= TOLERANCE_METRES
        && Math.abs(one.getMaxY() - other.getMaxY()) <= TOLERANCE_METRES;
  }

  private static long cell(double ordinate) {
    return (long) Math.floor(ordinate / CELL_METRES);
  }
}
