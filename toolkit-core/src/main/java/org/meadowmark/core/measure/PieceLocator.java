package org.meadowmark.core.measure;

import java.util.List;
import java.util.OptionalInt;
import java.util.function.IntPredicate;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.algorithm.locate.PointOnGeometryLocator;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.STRtree;

/** Finds which piece a point lies in. Safe for use by several threads. */
final class PieceLocator {
  private static final int FEW_VERTICES = 40;

  private final List<Polygon> pieces;
  private final STRtree index;
  private final PointOnGeometryLocator[] locators;

  PieceLocator(List<Polygon> pieces) {
    this.pieces = pieces;
    index = StrTreeQuery.positions(pieces);
    locators = new PointOnGeometryLocator[pieces.size()];
  }

  /** Pieces whose envelope meets an envelope, by position. */
  List<Integer> near(Envelope envelope) {
    return StrTreeQuery.items(index, envelope);
  }

  /** A piece that has the point inside or on its outline. */
  OptionalInt at(Coordinate point) {
    return find(point, location -> location != Location.EXTERIOR);
  }

  /** The piece that has the point inside. */
  OptionalInt around(Coordinate point) {
    return find(point, location -> location == Location.INTERIOR);
  }

  private OptionalInt find(Coordinate point, IntPredicate wanted) {
    for (int i : near(new Envelope(point))) {
      if (locators[i] == null) {
        Polygon piece = pieces.get(i);
        locators[i] =
            piece.getNumPoints() <= FEW_VERTICES
                ? new SimplePointInAreaLocator(piece)
                : new IndexedPointInAreaLocator(piece);
      }
      if (wanted.test(locators[i].locate(point))) {
        return OptionalInt.of(i);
      }
    }
    return OptionalInt.empty();
  }
}
