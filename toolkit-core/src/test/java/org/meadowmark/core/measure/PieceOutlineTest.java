package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

class PieceOutlineTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private static Polygon star(Random random, double x, double y, int corners) {
    Coordinate[] ring = new Coordinate[corners + 1];
    for (int i = 0; i < corners; i++) {
      double angle = 2 * Math.PI * i / corners;
      double radius = 1 + 3 * random.nextDouble();
      ring[i] = new Coordinate(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
    }
    ring[corners] = ring[0].copy();
    return FACTORY.createPolygon(ring);
  }

  /** The general distance of JTS is the reference; few corners go another way than many. */
  @ParameterizedTest
  @ValueSource(ints = {3, 8, 23, 40})
  void distancesAreThoseOfTheGeometryLibrary(int corners) {
    Random random = new Random(corners);
    for (int i = 0; i < 200; i++) {
      Polygon a = star(random, 330_000, 3_060_000, corners);
      Polygon b = star(random, 330_009 + 20 * random.nextDouble(), 3_060_000, 12);
      double expected = a.distance(b);
      assertThat(new PieceOutline(a).distance(new PieceOutline(b)))
          .isCloseTo(expected, within(1e-9));
      assertThat(new PieceOutline(a).distanceUpTo(expected + 1e-6, new PieceOutline(b)))
          .hasValueCloseTo(expected, within(1e-9));
      assertThat(new PieceOutline(a).distanceUpTo(expected - 1e-6, new PieceOutline(b))).isEmpty();
    }
  }
}
