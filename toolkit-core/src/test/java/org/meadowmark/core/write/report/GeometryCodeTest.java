package org.meadowmark.core.write.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

class GeometryCodeTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Coordinate ORIGIN = new Coordinate(400_000, 3_000_000);
  private static final long ANY = Long.MAX_VALUE;

  /** A part as the page reads it: an independent reading of the format. */
  private record Part(boolean ring, List<Coordinate> points) {}

  private static List<List<Part>> read(GeometryCode code, int features) {
    byte[] bytes = Base64.getDecoder().decode(code.base64());
    int[] at = {0};
    long[] last = {0, 0};
    List<List<Part>> all = new ArrayList<>();
    for (int feature = 0; feature < features; feature++) {
      List<Part> parts = new ArrayList<>();
      for (long part = number(bytes, at); part > 0; part--) {
        long head = number(bytes, at);
        List<Coordinate> points = new ArrayList<>();
        for (long vertex = head / 2; vertex > 0; vertex--) {
          last[0] += step(number(bytes, at));
          last[1] += step(number(bytes, at));
          points.add(new Coordinate(ORIGIN.x + last[0] / 10.0, ORIGIN.y + last[1] / 10.0));
        }
        parts.add(new Part(head % 2 == 1, points));
      }
      all.add(parts);
    }
    assertThat(at[0]).as("every byte was read").isEqualTo(bytes.length);
    return all;
  }

  private static long number(byte[] bytes, int[] at) {
    long value = 0;
    int shift = 0;
    int next;
    do {
      next = bytes[at[0]++];
      value |= (long) (next & 127) << shift;
      shift += 7;
    } while ((next & 128) != 0);
    return value;
  }

  private static long step(long number) {
    return number % 2 == 0 ? number / 2 : -(number + 1) / 2;
  }

  private static Geometry wkt(String text) {
    try {
      return new WKTReader().read(text);
    } catch (ParseException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void shellsRunClockwiseAndHolesTheOtherWay() {
    Geometry polygon =
        wkt(
            "POLYGON ((400000 3000000, 400100 3000000, 400100 3000100, 400000 3000100, 400000"
                + " 3000000), (400010 3000010, 400020 3000010, 400020 3000020, 400010 3000020,"
                + " 400010 3000010))");
    for (Geometry each : List.of(polygon, polygon.reverse(), polygon.norm())) {
      List<Part> parts = read(GeometryCode.of(List.of(each), ORIGIN, ANY), 1).get(0);
      assertThat(parts).hasSize(2).allMatch(Part::ring);
      assertThat(closed(parts.get(0)).getArea()).isEqualTo(10_000);
      assertThat(Orientation.isCCW(closed(parts.get(0)).getCoordinates())).isFalse();
      assertThat(Orientation.isCCW(closed(parts.get(1)).getCoordinates())).isTrue();
    }
  }

  private static Geometry closed(Part part) {
    List<Coordinate> points = new ArrayList<>(part.points());
    points.add(points.get(0));
    return FACTORY.createPolygon(points.toArray(Coordinate[]::new));
  }

  @Test
  void pointsAndSeveralPartsKeepTheirPlace() {
    List<Geometry> mapped =
        List.of(
            wkt("POINT (399999.96 2999000.04)"),
            wkt(
                "MULTILINESTRING ((400001 3000001, 400002 3000005), (400009 3000009, 400000 3000000))"));
    List<List<Part>> read = read(GeometryCode.of(mapped, ORIGIN, ANY), 2);
    assertThat(read.get(0).get(0).points().get(0).distance(new Coordinate(400_000, 2_999_000)))
        .isLessThan(1e-6);
    assertThat(read.get(1)).hasSize(2).noneMatch(Part::ring);
    assertThat(read.get(1).get(1).points().get(1).distance(ORIGIN)).isLessThan(1e-6);
  }

  /** A ring smaller than the tolerance is written as it is, not dropped. */
  @Test
  void smallRingStays() {
    Geometry small =
        wkt(
            "POLYGON ((400000 3000000, 400000.3 3000000, 400000.3 3000000.3, 400000 3000000.3, 400000 3000000))");
    List<Geometry> many = new ArrayList<>();
    for (int i = 0; i < 100; i++) {
      many.add(small);
    }
    GeometryCode code = GeometryCode.of(many, ORIGIN, 10);
    assertThat(code.toleranceMetres()).isGreaterThan(10);
    assertThat(read(code, 100)).allMatch(parts -> parts.get(0).points().size() == 4);
  }

  /** No drawn line is farther from the mapped one than is said. */
  @ParameterizedTest
  @ValueSource(longs = {Long.MAX_VALUE, 2_000, 400, 100})
  void lineStaysWithinTheTolerance(long mostVertices) {
    Random random = new Random(5);
    Coordinate[] points = new Coordinate[3_000];
    double x = 400_000;
    double y = 3_000_000;
    double heading = 0;
    for (int i = 0; i < points.length; i++) {
      heading += random.nextGaussian() * 0.2;
      x += 1.5 * Math.cos(heading);
      y += 1.5 * Math.sin(heading);
      points[i] = new Coordinate(x, y);
    }
    Geometry line = FACTORY.createLineString(points);
    GeometryCode code = GeometryCode.of(List.of(line), ORIGIN, mostVertices);
    Part part = read(code, 1).get(0).get(0);
    Geometry drawn = FACTORY.createLineString(part.points().toArray(Coordinate[]::new));
    double rounding = GeometryCode.UNIT_METRES * Math.sqrt(0.5);
    for (Coordinate mapped : points) {
      assertThat(drawn.distance(FACTORY.createPoint(mapped)))
          .isLessThanOrEqualTo(code.toleranceMetres() + rounding);
    }
    assertThat(DiscreteHausdorffDistance.distance(drawn, line, 0.5))
        .isLessThan(code.toleranceMetres() + rounding + 1.5);
    assertThat(code.keptVertices())
        .isLessThanOrEqualTo(mostVertices)
        .isEqualTo(part.points().size());
    assertThat(code.vertices()).isEqualTo(3_000);
  }
}
