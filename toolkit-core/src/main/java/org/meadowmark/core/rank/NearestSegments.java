package org.meadowmark.core.rank;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.index.strtree.STRtree;
import org.meadowmark.core.measure.Barriers;
import org.meadowmark.core.measure.StrTreeQuery;
import org.meadowmark.core.model.Ids;

/**
 * Finds the nearest channel segment over water. Equally near segments: the lower id.
 *
 * <p>The tree is asked once for all points in a box; of its answers only segments whose own box is
 * nearer than the best so far are measured. Thread-safe once built; a {@link Search} is not.
 */
final class NearestSegments {
  static final int OUT_OF_REACH = -1;
  static final int BLOCKED = -2;
  private static final double EQUAL_METRES = 1e-9;

  /**
   * The nearest segment of a point.
   *
   * @param segment position of the segment, or a negative code
   * @param gridMetres distance on the grid
   * @param edge the edge of its line that is nearest; the first of equally near ones
   */
  record Nearest(int segment, double gridMetres, int edge) {}

  private final Coordinate[][] lines;
  private final Envelope[] boxes;
  private final int[] idOrder;
  private final STRtree index = new STRtree();
  private final Barriers barriers;

  NearestSegments(List<ChannelSegment> segments, Barriers barriers) {
    this.barriers = barriers;
    lines = new Coordinate[segments.size()][];
    boxes = new Envelope[segments.size()];
    idOrder = new int[segments.size()];
    for (int i = 0; i < lines.length; i++) {
      lines[i] = segments.get(i).geometry().getCoordinates();
      boxes[i] = segments.get(i).geometry().getEnvelopeInternal();
      index.insert(boxes[i], i);
    }
    index.build();
    List<Integer> byId =
        IntStream.range(0, lines.length)
            .boxed()
            .sorted(Comparator.comparing(i -> segments.get(i).id(), Ids.ORDER))
            .toList();
    for (int place = 0; place < lines.length; place++) {
      idOrder[byId.get(place)] = place;
    }
  }

  /** The vertices of a segment; not to be changed. */
  Coordinate[] line(int segment) {
    return lines[segment];
  }

  /** Prepares the search for points inside a box. */
  Search within(Envelope box, double reachGridMetres) {
    return new Search(box, reachGridMetres);
  }

  /** A search for points inside a box. */
  final class Search {
    private final Envelope box;
    private final double reach;
    private final int[] candidates;
    private final double[] distances;
    private int lastFound;

    private Search(Envelope box, double reach) {
      this.box = new Envelope(box);
      this.reach = reach;
      Envelope around = new Envelope(box);
      around.expandBy(reach);
      candidates =
          StrTreeQuery.<Integer>items(index, around).stream().mapToInt(Integer::intValue).toArray();
      distances = new double[candidates.length];
    }

    boolean covers(Coordinate from, Coordinate to) {
      return box.covers(from) && box.covers(to);
    }

    Nearest nearest(Coordinate point) {
      if (candidates.length == 0) {
        return new Nearest(OUT_OF_REACH, Double.POSITIVE_INFINITY, -1);
      }
      double best = measure(lastFound, point, reach);
      for (int c = 0; c < candidates.length; c++) {
        if (c != lastFound) {
          best = Math.min(best, measure(c, point, best));
        }
      }
      if (!(best <= reach)) {
        return new Nearest(OUT_OF_REACH, Double.POSITIVE_INFINITY, -1);
      }
      int found = lowestId(best);
      Nearest nearest = at(found, point);
      if (!barriers.block(point, closestPoint(nearest, point))) {
        lastFound = found;
        return nearest;
      }
      return nearestInSight(point);
    }

    /** Distance of a candidate, or infinity where it is farther than a bound. */
    private double measure(int candidate, Coordinate point, double bound) {
      int segment = candidates[candidate];
      double distance = Double.POSITIVE_INFINITY;
      if (toBox(boxes[segment], point) <= Math.min(bound, reach) + EQUAL_METRES) {
        double exact = Distance.pointToSegmentString(point, lines[segment]);
        distance = exact <= reach ? exact : Double.POSITIVE_INFINITY;
      }
      distances[candidate] = distance;
      return distance;
    }

    private int lowestId(double best) {
      int found = -1;
      for (int c = 0; c < candidates.length; c++) {
        if (distances[c] <= best + EQUAL_METRES
            && (found < 0 || idOrder[candidates[c]] < idOrder[candidates[found]])) {
          found = c;
        }
      }
      return found;
    }

    private Nearest at(int candidate, Coordinate point) {
      int segment = candidates[candidate];
      return new Nearest(segment, distances[candidate], nearestEdge(lines[segment], point));
    }

    private Nearest nearestInSight(Coordinate point) {
      List<Integer> left = new ArrayList<>();
      for (int c = 0; c < candidates.length; c++) {
        if (measure(c, point, reach) <= reach) {
          left.add(c);
        }
      }
      while (!left.isEmpty()) {
        double best = left.stream().mapToDouble(c -> distances[c]).min().orElseThrow();
        int found = lowestId(best);
        Nearest nearest = at(found, point);
        if (!barriers.block(point, closestPoint(nearest, point))) {
          return nearest;
        }
        distances[found] = Double.POSITIVE_INFINITY;
        left.remove((Integer) found);
      }
      return new Nearest(BLOCKED, Double.POSITIVE_INFINITY, -1);
    }
  }

  private Coordinate closestPoint(Nearest nearest, Coordinate point) {
    Coordinate[] line = lines[nearest.segment];
    return new LineSegment(line[nearest.edge], line[nearest.edge + 1]).closestPoint(point);
  }

  private static int nearestEdge(Coordinate[] line, Coordinate point) {
    int nearest = 0;
    double smallest = Double.POSITIVE_INFINITY;
    for (int edge = 0; edge + 1 < line.length; edge++) {
      double distance = Distance.pointToSegment(point, line[edge], line[edge + 1]);
      if (distance < smallest) {
        smallest = distance;
        nearest = edge;
      }
    }
    return nearest;
  }

  private static double toBox(Envelope box, Coordinate point) {
    double x = Math.max(0, Math.max(box.getMinX() - point.x, point.x - box.getMaxX()));
    double y = Math.max(0, Math.max(box.getMinY() - point.y, point.y - box.getMaxY()));
    return Math.sqrt(x * x + y * y);
  }
}
