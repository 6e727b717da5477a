package org.meadowmark.core.measure;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.ToDoubleBiFunction;
import org.locationtech.jts.geom.Coordinate;

/**
 * The nearest piece straight beside a scar.
 *
 * @param piece its position
 * @param distance how far its edge is from the middle of the scar, on the grid
 */
record Across(int piece, double distance) {
  /**
   * Looks beside a scar; empty where there is no piece near.
   *
   * @param from middle of a step of the scar
   * @param x direction to look in, a unit vector
   * @param y direction to look in
   * @param halfWidth half the scar's width, on the grid
   * @param pieceAt piece that a point lies in
   * @param firstEdge distance along a way to where the bare ground ends
   */
  static Optional<Across> find(
      Coordinate from,
      double x,
      double y,
      double halfWidth,
      Function<Coordinate, OptionalInt> pieceAt,
      ToDoubleBiFunction<Coordinate, Coordinate> firstEdge) {
    OptionalInt beside =
        pieceAt.apply(GapFinder.beyond(from, x, y, halfWidth + GapFinder.EDGE_METRES));
    if (beside.isPresent()) {
      return Optional.of(new Across(beside.getAsInt(), halfWidth));
    }
    double edge =
        firstEdge.applyAsDouble(from, GapFinder.beyond(from, x, y, GapFinder.reach(halfWidth)));
    if (GapFinder.isNoGap(edge, halfWidth)) {
      return Optional.empty();
    }
    OptionalInt behind = pieceAt.apply(GapFinder.beyond(from, x, y, edge + GapFinder.EDGE_METRES));
    return behind.isPresent() ? Optional.of(new Across(behind.getAsInt(), edge)) : Optional.empty();
  }
}
