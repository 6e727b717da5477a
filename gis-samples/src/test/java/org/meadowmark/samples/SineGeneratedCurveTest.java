package org.meadowmark.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

class SineGeneratedCurveTest {
  /**
   * The path of θ = ω sin(2πs/M) is 1/J₀(ω) times as long as its axis, because the mean of cos(ω
   * sin t) over a period is J₀(ω) (Abramowitz &amp; Stegun 9.1.18). J₀ from their table 9.1.
   */
  @ParameterizedTest
  @CsvSource({"0.5, 0.9384698072", "1.0, 0.7651976866", "1.5, 0.5118276717"})
  void sinuosityIsTheReciprocalOfBesselsFunction(double angle, double bessel) {
    SineGeneratedCurve curve = new SineGeneratedCurve(500, angle, 5, 0);
    Coordinate[] points =
        curve.along(
            List.of(new Coordinate(100, 200), new Coordinate(5_100, 200)), Draws.of(1, 1, 1));
    double length = new GeometryFactory().createLineString(points).getLength();
    assertThat(length / 5_000).isCloseTo(1 / bessel, within(0.002 / bessel));
  }

  @ParameterizedTest
  @CsvSource({"0.3, 900", "0.9, 600", "1.2, 1500"})
  void endsAreExactAndStepsEven(double angle, double wavelength) {
    Coordinate from = new Coordinate(10, 20);
    Coordinate to = new Coordinate(2_345, 1_234);
    Coordinate[] points =
        SineGeneratedCurve.natural(wavelength, angle, 10)
            .along(List.of(from, to), Draws.of(9, 9, 9));
    assertThat(points[0]).isEqualTo(from);
    assertThat(points[points.length - 1]).isEqualTo(to);
    for (int i = 1; i < points.length; i++) {
      assertThat(points[i].distance(points[i - 1])).isBetween(3.0, 25.0);
    }
  }
}
