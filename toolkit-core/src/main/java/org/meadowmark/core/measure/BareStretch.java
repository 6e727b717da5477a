package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.util.LinearComponentExtracter;

/** How far bare ground goes on along a straight way across scars, without uniting the scars. */
final class BareStretch {
  /** Footprints that touch leave no grass between them. */
  private static final double TOUCH_METRES = 1e-9;

  private record Covered(double from, double to) {}

  private final Coordinate from;
  private final Coordinate to;
  private final LineSegment way;
  private final double length;

  private BareStretch(Coordinate from, Coordinate to) {
    this.from = from;
    this.to = to;
    way = new LineSegment(from, to);
    length = from.distance(to);
  }

  /**
   * Distance along a way to where it first meets the outline of the union of scars; infinite if it
   * does not.
   *
   * @param from where the way starts
   * @param to where it ends
   * @param scars footprints near it
   */
  static double firstEdge(Coordinate from, Coordinate to, List<Geometry> scars) {
    return new BareStretch(from, to).firstEdge(scars);
  }

  private double firstEdge(List<Geometry> scars) {
    List<Covered> covered = new ArrayList<>();
    scars.forEach(scar -> addCovered(scar, covered));
    covered.sort(Comparator.comparingDouble(Covered::from));
    if (covered.isEmpty()) {
      return Double.POSITIVE_INFINITY;
    }
    if (covered.get(0).from > TOUCH_METRES) {
      return covered.get(0).from;
    }
    double end = 0;
    for (Covered part : covered) {
      if (part.from > end + TOUCH_METRES) {
        break;
      }
      end = Math.max(end, part.to);
    }
    return end >= length - TOUCH_METRES ? Double.POSITIVE_INFINITY : end;
  }

  private void addCovered(Geometry scar, List<Covered> covered) {
    double[] cuts = cuts(scar);
    for (int i = 0; i + 1 < cuts.length; i++) {
      if (cuts[i + 1] > cuts[i]) {
        Coordinate middle = way.pointAlong((cuts[i] + cuts[i + 1]) / (2 * length));
        if (SimplePointInAreaLocator.locate(middle, scar) != Location.EXTERIOR) {
          covered.add(new Covered(cuts[i], cuts[i + 1]));
        }
      }
    }
  }

  /** Where a scar's outline cuts the way, with both its ends, ascending. */
  private double[] cuts(Geometry scar) {
    List<Double> cuts = new ArrayList<>(List.of(0.0, length));
    RobustLineIntersector intersector = new RobustLineIntersector();
    for (Object ring : LinearComponentExtracter.getLines(scar)) {
      CoordinateSequence edge = ((LineString) ring).getCoordinateSequence();
      for (int i = 0; i + 1 < edge.size(); i++) {
        intersector.computeIntersection(from, to, edge.getCoordinate(i), edge.getCoordinate(i + 1));
        for (int k = 0; k < intersector.getIntersectionNum(); k++) {
          cuts.add(from.distance(intersector.getIntersection(k)));
        }
      }
    }
    double[] sorted = cuts.stream().mapToDouble(Double::doubleValue).toArray();
    Arrays.sort(sorted);
    return sorted;
  }
}
