package org.meadowmark.core.measure.recovery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.core.TestSurvey;

/** Inward offsets against the formulas of a strip, a rectangle, a circle and a ring. */
class ScarShapeTest {
  private static final double RADIUS = 6.2317;

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.03, 0.1, 0.149, 0.15, 0.2})
  void stripLosesItsWidthAndItsEnds(double offset) {
    ScarShape strip = new StripShape(0.3, List.of(12.0));
    double exact = offset >= 0.15 ? 0 : (12 - 2 * offset) * (0.3 - 2 * offset);
    assertThat(strip.bareSquareMetres(offset)).isCloseTo(exact, within(1e-12));
    assertThat(strip.closingOffsetMetres()).isEqualTo(0.15);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.2, 0.77, 1.3, 1.95, 2, 3})
  void rectangle(double offset) {
    ScarShape shape = new OutlineShape(TestSurvey.wkt(TestSurvey.box(0, 0, 9, 4)), 1);
    double exact = offset >= 2 ? 0 : (9 - 2 * offset) * (4 - 2 * offset);
    assertThat(shape.closingOffsetMetres()).isCloseTo(2, within(1e-3));
    assertThat(shape.bareSquareMetres(offset)).isCloseTo(exact, within(0.01));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.5, 2.2, 4.9, 6})
  void circle(double offset) {
    ScarShape shape = new OutlineShape(disc(RADIUS), 1);
    double left = RADIUS - offset;
    assertThat(shape.closingOffsetMetres()).isCloseTo(RADIUS, within(2e-3));
    assertThat(shape.bareSquareMetres(offset)).isCloseTo(Math.PI * left * left, within(0.03));
  }

  /** Grass inside a ring closes it from within: π((R − d)² − (r + d)²). */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.4, 1, 1.4})
  void ringClosesFromBothSides(double offset) {
    GeometryFactory factory = new GeometryFactory();
    Polygon ring =
        factory.createPolygon(
            disc(6).getExteriorRing(),
            new org.locationtech.jts.geom.LinearRing[] {disc(3).getExteriorRing()});
    ScarShape shape = new OutlineShape(ring, 1);
    double exact = Math.PI * (Math.pow(6 - offset, 2) - Math.pow(3 + offset, 2));
    assertThat(shape.closingOffsetMetres()).isCloseTo(1.5, within(2e-3));
    assertThat(shape.bareSquareMetres(offset)).isCloseTo(exact, within(0.15));
  }

  @Test
  void gridLengthsAreTakenToTheGround() {
    ScarShape shape = new OutlineShape(TestSurvey.wkt(TestSurvey.box(0, 0, 20, 10)), 2);
    assertThat(shape.areaSquareMetres()).isEqualTo(50);
    assertThat(shape.closingOffsetMetres()).isCloseTo(2.5, within(1e-3));
    assertThat(shape.bareSquareMetres(1)).isCloseTo(8 * 3, within(0.02));
  }

  @Test
  void widthZeroIsClosedFromTheStart() {
    ScarShape strip = new StripShape(0, List.of(12.0));
    assertThat(strip.areaSquareMetres()).isZero();
    assertThat(strip.closingOffsetMetres()).isZero();
  }

  static Polygon disc(double radius) {
    int corners = 2000;
    Coordinate[] ring = new Coordinate[corners + 1];
    for (int i = 0; i < corners; i++) {
      double angle = 2 * Math.PI * i / corners;
      ring[i] = new Coordinate(radius * Math.cos(angle), radius * Math.sin(angle));
    }
    ring[corners] = ring[0];
    return new GeometryFactory().createPolygon(ring);
  }
}
