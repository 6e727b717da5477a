package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.IntPredicate;
import org.locationtech.jts.algorithm.locate.PointOnGeometryLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.hprtree.HPRtree;
import org.meadowmark.core.model.PointLocators;

/** Finds which piece a point lies in. Safe for use by several threads. */
final class PieceLocator {
  private final List<Polygon> pieces;
  private final HPRtree index = new HPRtree();
  private final PointOnGeometryLocator[] locators;

  PieceLocator(List<Polygon> pieces) {
    this.pieces = pieces;
    for (int i = 0; i < pieces.size(); i++) {
      index.insert(pieces.get(i).getEnvelopeInternal(), i);
    }
    index.build();
    locators = new PointOnGeometryLocator[pieces.size()];
  }

  /** Pieces whose envelope meets an envelope, by position. */
  List<Integer> near(Envelope envelope) {
    List<Integer> near = new ArrayList<>();
    index.query(envelope, piece -> near.add((Integer) piece));
    return near;
  }

  /** A piece that has the point inside or on its outline: the first one. */
  OptionalInt at(Coordinate point) {
    return find(point, location -> location != Location.EXTERIOR);
  }

  /** The piece that has the point inside. */
  OptionalInt around(Coordinate point) {
    return find(point, location -> location == Location.INTERIOR);
  }

  private OptionalInt find(Coordinate point, IntPredicate wanted) {
    int[] first = {Integer.MAX_VALUE};
    index.query(
        new Envelope(point),
        item -> {
          int piece = (Integer) item;
          if (piece < first[0] && wanted.test(locator(piece).locate(point))) {
            first[0] = piece;
          }
        });
    return first[0] == Integer.MAX_VALUE ? OptionalInt.empty() : OptionalInt.of(first[0]);
  }

  private PointOnGeometryLocator locator(int i) {
    PointOnGeometryLocator locator = locators[i];
    if (locator == null) {
      locator = PointLocators.of(pieces.get(i));
      locators[i] = locator;
    }
    return locator;
  }
}
