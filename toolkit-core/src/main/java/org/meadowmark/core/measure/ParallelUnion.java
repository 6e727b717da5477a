package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.locationtech.jts.shape.fractal.HilbertCode;

/**
 * Union of very many polygons: neighbours along a Hilbert curve are united in blocks, then blocks
 * in pairs, round by round, each round in parallel. The order is that of the curve, so the result
 * does not depend on threads.
 *
 * <p>Time O(v log n) for v vertices of n polygons.
 */
final class ParallelUnion {
  private static final int BLOCK = 128;
  private static final int CURVE_LEVEL = 12;

  private ParallelUnion() {}

  static Geometry of(List<Geometry> polygons) {
    if (polygons.size() <= 2 * BLOCK) {
      return UnaryUnionOp.union(polygons);
    }
    List<Geometry> ordered = alongCurve(polygons);
    int blocks = (ordered.size() + BLOCK - 1) / BLOCK;
    List<Geometry> round =
        IntStream.range(0, blocks)
            .parallel()
            .mapToObj(
                i ->
                    UnaryUnionOp.union(
                        ordered.subList(i * BLOCK, Math.min(ordered.size(), (i + 1) * BLOCK))))
            .toList();
    while (round.size() > 1) {
      List<Geometry> last = round;
      round =
          IntStream.range(0, (last.size() + 1) / 2)
              .parallel()
              .mapToObj(i -> pair(last, 2 * i))
              .toList();
    }
    return round.get(0);
  }

  private static Geometry pair(List<Geometry> parts, int first) {
    return first + 1 < parts.size()
        ? OverlayNGRobust.overlay(parts.get(first), parts.get(first + 1), OverlayNG.UNION)
        : parts.get(first);
  }

  private static List<Geometry> alongCurve(List<Geometry> polygons) {
    Envelope all = new Envelope();
    polygons.forEach(polygon -> all.expandToInclude(polygon.getEnvelopeInternal()));
    double cell = Math.max(all.getWidth(), all.getHeight()) / (1 << CURVE_LEVEL);
    record Placed(int code, Geometry polygon) {}
    List<Placed> placed = new ArrayList<>(polygons.size());
    for (Geometry polygon : polygons) {
      var centre = polygon.getEnvelopeInternal().centre();
      int last = (1 << CURVE_LEVEL) - 1;
      int x = Math.min(last, (int) ((centre.x - all.getMinX()) / cell));
      int y = Math.min(last, (int) ((centre.y - all.getMinY()) / cell));
      placed.add(new Placed(HilbertCode.encode(CURVE_LEVEL, x, y), polygon));
    }
    placed.sort(Comparator.comparingInt(Placed::code));
    return placed.stream().map(Placed::polygon).toList();
  }
}
