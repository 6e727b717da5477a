package org.meadowmark.core.change.match;

import java.util.Arrays;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Holds one scar against another: which metres of each lie within the tolerance of the other and
 * run the same way. Not for use by several threads.
 */
final class PairReader {
  /** Less of the shorter scar than this is not followed up. */
  private static final double LEAST_SHARE = 0.05;

  /** Drawn lengths of the same course differ by no more than this. */
  private static final double MOST_PACE = 1.25;

  private static final double LEAST_CLOSENESS = 0.01;

  private final double toleranceMetres;
  private final double leastCosine;
  private final TraceBand band = new TraceBand();
  private final RunReader runs = new RunReader();

  /** Accepted stretches of one scar with what was read along them. */
  private record Covered(double[] spans, double length, double meanSquare, double pace) {}

  PairReader(double toleranceMetres, double directionDegrees) {
    this.toleranceMetres = toleranceMetres;
    this.leastCosine = Math.cos(Math.toRadians(directionDegrees));
  }

  /** The pair, unless the two have next to nothing in common. */
  Optional<Pair> read(
      int earlierIndex, ComparedTrace earlier, int laterIndex, ComparedTrace later) {
    return earlier.trace().isLine() && later.trace().isLine()
        ? lines(earlierIndex, earlier, laterIndex, later)
        : shapes(earlierIndex, earlier, laterIndex, later);
  }

  private Optional<Pair> lines(
      int earlierIndex, ComparedTrace earlier, int laterIndex, ComparedTrace later) {
    double factor = earlier.trace().lengthFactor();
    double tolerance = toleranceMetres * factor;
    double least = LEAST_SHARE * Math.min(earlier.gridMetres(), later.gridMetres());
    Covered there = covered(earlier, later, tolerance, least);
    if (there.length < least || there.length == 0) {
      return Optional.empty();
    }
    Covered back = covered(later, earlier, tolerance, least);
    if (back.length < least || back.length == 0) {
      return Optional.empty();
    }
    double meanSquare = (there.meanSquare + back.meanSquare) / 2;
    double pace = Math.sqrt(there.pace / back.pace);
    return Optional.of(
        new Pair(
            earlierIndex,
            laterIndex,
            there.spans,
            back.spans,
            there.length / factor,
            back.length / later.trace().lengthFactor(),
            closeness(meanSquare / (tolerance * tolerance)),
            meanSquare / (factor * factor),
            Double.isNaN(pace) ? 1 : Math.max(1 / MOST_PACE, Math.min(MOST_PACE, pace))));
  }

  private static double closeness(double squareOfShare) {
    return Math.max(LEAST_CLOSENESS, 1 - squareOfShare);
  }

  private Covered covered(
      ComparedTrace line, ComparedTrace other, double tolerance, double leastLength) {
    double[] near = Spans.common(band.of(line.trace(), other.trace(), tolerance), line.spans());
    if (near.length == 0) {
      return new Covered(near, 0, 0, 1);
    }
    double[] accepted = new double[near.length];
    int size = 0;
    double length = 0;
    double squares = 0;
    double paces = 0;
    double paced = 0;
    for (int i = 0; i < near.length; i += 2) {
      double run = near[i + 1] - near[i];
      if (run < leastLength) {
        continue;
      }
      RunReader.Reading reading =
          runs.read(line.trace(), near[i], near[i + 1], other.trace(), tolerance);
      if (reading.agreement() < leastCosine) {
        continue;
      }
      accepted[size++] = near[i];
      accepted[size++] = near[i + 1];
      length += run;
      squares += run * reading.meanSquare();
      if (!Double.isNaN(reading.pace())) {
        paces += run * reading.pace();
        paced += run;
      }
    }
    return new Covered(
        size == near.length ? near : Arrays.copyOf(accepted, size),
        length,
        length > 0 ? squares / length : 0,
        paced > 0 ? paces / paced : Double.NaN);
  }

  /** At least one is a polygon: shares of areas and lengths inside the other, widened. */
  private Optional<Pair> shapes(
      int earlierIndex, ComparedTrace earlier, int laterIndex, ComparedTrace later) {
    double tolerance = toleranceMetres * earlier.trace().lengthFactor();
    double[] earlierSpans = spansInside(earlier, later, tolerance);
    double[] laterSpans = spansInside(later, earlier, tolerance);
    double there = gridMetresInside(earlier, earlierSpans, later, tolerance);
    double back = gridMetresInside(later, laterSpans, earlier, tolerance);
    double least = LEAST_SHARE * Math.min(earlier.gridMetres(), later.gridMetres());
    if (there < least || back < least || there == 0 || back == 0) {
      return Optional.empty();
    }
    double shares =
        Math.sqrt(
            Math.min(1, there / earlier.gridMetres()) * Math.min(1, back / later.gridMetres()));
    return Optional.of(
        new Pair(
            earlierIndex,
            laterIndex,
            earlierSpans,
            laterSpans,
            there / earlier.trace().lengthFactor(),
            back / later.trace().lengthFactor(),
            closeness(1 - shares),
            Double.NaN,
            1));
  }

  private double[] spansInside(ComparedTrace line, ComparedTrace shape, double tolerance) {
    Trace trace = line.trace();
    if (!trace.isLine()) {
      return Spans.NONE;
    }
    GeometryFactory factory = trace.scar().geometry().getFactory();
    PreparedGeometry widened = PreparedGeometryFactory.prepare(widened(shape, tolerance));
    double[] from = new double[8];
    double[] to = new double[8];
    int count = 0;
    for (int v = 1; v < trace.vertices(); v++) {
      if (!trace.endsEdge(v)) {
        continue;
      }
      Coordinate start = new Coordinate(trace.x(v - 1), trace.y(v - 1));
      Geometry edge =
          factory.createLineString(
              new Coordinate[] {start, new Coordinate(trace.x(v), trace.y(v))});
      if (!widened.intersects(edge)) {
        continue;
      }
      Geometry inside =
          widened.contains(edge)
              ? edge
              : OverlayNGRobust.overlay(widened.getGeometry(), edge, OverlayNG.INTERSECTION);
      for (int i = 0; i < inside.getNumGeometries(); i++) {
        Coordinate[] ends = inside.getGeometryN(i).getCoordinates();
        if (inside.getGeometryN(i).getDimension() < 1) {
          continue;
        }
        double one = start.distance(ends[0]);
        double two = start.distance(ends[ends.length - 1]);
        if (count == from.length) {
          from = Arrays.copyOf(from, 2 * count);
          to = Arrays.copyOf(to, 2 * count);
        }
        double edgeLength = trace.at(v) - trace.at(v - 1);
        from[count] = trace.at(v - 1) + Math.min(edgeLength, Math.min(one, two));
        double last = Math.min(edgeLength, Math.max(one, two));
        to[count++] = last == edgeLength ? trace.at(v) : trace.at(v - 1) + last;
      }
    }
    return Spans.common(Spans.joined(from, to, count), line.spans());
  }

  private double gridMetresInside(
      ComparedTrace scar, double[] spans, ComparedTrace other, double tolerance) {
    if (scar.trace().isLine()) {
      return Spans.length(spans);
    }
    Geometry outline = scar.trace().scar().geometry();
    double area = outline.getArea();
    double inside =
        area > 0
            ? OverlayNGRobust.overlay(outline, widened(other, tolerance), OverlayNG.INTERSECTION)
                .getArea()
            : 0;
    return area > 0 ? Math.min(scar.gridMetres(), inside / area * scar.trace().length()) : 0;
  }

  private static Geometry widened(ComparedTrace scar, double tolerance) {
    Trace trace = scar.trace();
    double half =
        trace.isLine()
            ? trace.scar().widthMetres() * trace.lengthFactor() / 2 + tolerance
            : tolerance;
    return trace.scar().geometry().buffer(half);
  }
}
