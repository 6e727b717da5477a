package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.hprtree.HilbertEncoder;

/** Pieces that lie together, in small groups. Time n log n. */
final class PieceGroups {
  private static final int MOST_PIECES = 64;
  private static final int ORDER_OF_CURVE = 15;

  private PieceGroups() {}

  /**
   * Groups pieces along a curve that fills the plane.
   *
   * @param pieces all pieces
   * @param from first position to group
   * @param to position after the last one
   * @param mostMetres longest side of a group's extent, but for single pieces
   * @return positions; each from the range is in one group
   */
  static List<int[]> of(List<Polygon> pieces, int from, int to, double mostMetres) {
    Envelope all = new Envelope();
    for (int i = from; i < to; i++) {
      all.expandToInclude(pieces.get(i).getEnvelopeInternal());
    }
    // The curve keeps together what lies near on both axes only if both have one scale.
    double side = Math.max(all.getWidth(), all.getHeight());
    all.expandToInclude(all.getMinX() + side, all.getMinY() + side);
    HilbertEncoder encoder = new HilbertEncoder(ORDER_OF_CURVE, all);
    int[] codes =
        IntStream.range(from, to)
            .map(i -> encoder.encode(pieces.get(i).getEnvelopeInternal()))
            .toArray();
    int[] order =
        IntStream.range(from, to)
            .boxed()
            .sorted(Comparator.comparingInt(i -> codes[i - from]))
            .mapToInt(Integer::intValue)
            .toArray();
    List<int[]> groups = new ArrayList<>();
    Envelope extent = new Envelope();
    int start = 0;
    for (int place = 0; place < order.length; place++) {
      Envelope with = new Envelope(extent);
      with.expandToInclude(pieces.get(order[place]).getEnvelopeInternal());
      boolean full =
          place - start == MOST_PIECES || Math.max(with.getWidth(), with.getHeight()) > mostMetres;
      if (full && place > start) {
        groups.add(Arrays.copyOfRange(order, start, place));
        start = place;
        with = new Envelope(pieces.get(order[place]).getEnvelopeInternal());
      }
      extent = with;
    }
    if (start < order.length) {
      groups.add(Arrays.copyOfRange(order, start, order.length));
    }
    return groups;
  }
}
