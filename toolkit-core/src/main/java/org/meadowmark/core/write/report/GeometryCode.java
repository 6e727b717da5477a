package org.meadowmark.core.write.report;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/**
 * Geometry packed for the page: simplified, put on a grid of {@value #UNIT_METRES} m, and written
 * as steps from vertex to vertex.
 *
 * <p>Lines and rings are simplified by Douglas, D. H. and Peucker, T. K. (1973), <i>Algorithms for
 * the reduction of the number of points required to represent a digitized line or its
 * caricature</i>, Cartographica 10:112–122. A ring that would collapse stays as it was. The format:
 * for each feature the number of its parts, for each part twice its number of vertices, plus 1 if
 * it is a ring (written without its last vertex), then the steps in x and y. Numbers take seven
 * bits a byte, low ones first, the high bit set where more follow; steps have their sign in the
 * lowest bit. Shells run clockwise, holes the other way. Time n log n in vertices, as a rule.
 *
 * @param base64 the bytes
 * @param toleranceMetres no simplified line is farther than this from what was mapped, apart from
 *     the {@value #UNIT_METRES} m of the grid
 * @param vertices vertices that were mapped
 * @param keptVertices vertices that were written
 */
record GeometryCode(String base64, double toleranceMetres, long vertices, long keptVertices) {
  /** Grid that vertices are put on. */
  static final double UNIT_METRES = 0.1;

  private static final double FIRST_TOLERANCE_METRES = 0.1;
  private static final double COARSEST_METRES = 100;
  private static final int SAMPLE = 1_000;
  private static final int SMALLEST_RING = 4;
  private static final int BITS = 7;
  private static final int MORE = 1 << BITS;

  /**
   * Packs geometries with the finest tolerance, doubled from {@value #FIRST_TOLERANCE_METRES} m,
   * that keeps their vertices within a number.
   *
   * @param origin place that steps start from
   * @param mostVertices vertices to aim for; a layer of many small features can have more
   */
  static GeometryCode of(List<Geometry> geometries, Coordinate origin, long mostVertices) {
    double tolerance = guess(geometries, origin, mostVertices);
    GeometryCode code = new Packer(origin, tolerance).pack(geometries);
    while (code.keptVertices > mostVertices && 2 * tolerance <= COARSEST_METRES) {
      tolerance *= 2;
      code = new Packer(origin, tolerance).pack(geometries);
    }
    return code;
  }

  /** A tolerance that is enough as far as a part of the geometries tells: saves whole rounds. */
  private static double guess(List<Geometry> geometries, Coordinate origin, long mostVertices) {
    int stride = Math.max(1, geometries.size() / SAMPLE);
    List<Geometry> sample =
        IntStream.iterate(0, i -> i < geometries.size(), i -> i + stride)
            .mapToObj(geometries::get)
            .toList();
    double tolerance = FIRST_TOLERANCE_METRES;
    if (stride == 1) {
      return tolerance;
    }
    long most = mostVertices / stride;
    while (new Packer(origin, tolerance).pack(sample).keptVertices > most
        && 2 * tolerance <= COARSEST_METRES) {
      tolerance *= 2;
    }
    return tolerance;
  }

  private static final class Packer {
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final Coordinate origin;
    private final double tolerance;
    private long x;
    private long y;
    private long vertices;
    private long kept;

    Packer(Coordinate origin, double tolerance) {
      this.origin = origin;
      this.tolerance = tolerance;
    }

    GeometryCode pack(List<Geometry> geometries) {
      geometries.forEach(this::add);
      return new GeometryCode(
          Base64.getEncoder().encodeToString(bytes.toByteArray()), tolerance, vertices, kept);
    }

    private void add(Geometry geometry) {
      int parts = 0;
      for (int i = 0; i < geometry.getNumGeometries(); i++) {
        parts +=
            geometry.getGeometryN(i) instanceof Polygon polygon
                ? 1 + polygon.getNumInteriorRing()
                : 1;
      }
      write(parts);
      for (int i = 0; i < geometry.getNumGeometries(); i++) {
        Geometry part = geometry.getGeometryN(i);
        if (part instanceof Polygon polygon) {
          addRing(polygon.getExteriorRing(), true);
          for (int hole = 0; hole < polygon.getNumInteriorRing(); hole++) {
            addRing(polygon.getInteriorRingN(hole), false);
          }
        } else if (part instanceof LineString line) {
          addPart(simplified(line), line.getNumPoints(), false);
        } else if (part instanceof Point point) {
          addPart(point.getCoordinates(), 1, false);
        } else {
          throw new IllegalArgumentException("no part of a map: " + part.getGeometryType());
        }
      }
    }

    private void addRing(LinearRing ring, boolean shell) {
      Coordinate[] mapped = ring.getCoordinates();
      Coordinate[] points = simplified(ring);
      if (points.length < SMALLEST_RING) {
        points = mapped;
      }
      if (Orientation.isCCW(mapped) == shell) {
        points = reversed(points);
      }
      addPart(Arrays.copyOf(points, points.length - 1), mapped.length, true);
    }

    /** A ring is taken as a line, which keeps its first vertex. */
    private Coordinate[] simplified(LineString line) {
      LineString open = line.getFactory().createLineString(line.getCoordinateSequence());
      return DouglasPeuckerSimplifier.simplify(open, tolerance).getCoordinates();
    }

    private static Coordinate[] reversed(Coordinate[] points) {
      Coordinate[] turned = new Coordinate[points.length];
      for (int i = 0; i < points.length; i++) {
        turned[i] = points[points.length - 1 - i];
      }
      return turned;
    }

    private void addPart(Coordinate[] points, int mapped, boolean ring) {
      vertices += mapped;
      kept += points.length;
      write(2L * points.length + (ring ? 1 : 0));
      for (Coordinate point : points) {
        long nextX = Math.round((point.x - origin.x) / UNIT_METRES);
        long nextY = Math.round((point.y - origin.y) / UNIT_METRES);
        writeStep(nextX - x);
        writeStep(nextY - y);
        x = nextX;
        y = nextY;
      }
    }

    private void writeStep(long step) {
      write(step << 1 ^ step >> Long.SIZE - 1);
    }

    private void write(long number) {
      long rest = number;
      while (rest >= MORE) {
        bytes.write((int) (rest & MORE - 1 | MORE));
        rest >>>= BITS;
      }
      bytes.write((int) rest);
    }
  }
}
