package org.meadowmark.core.write.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Envelope;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.write.InventedSurvey;
import org.meadowmark.core.write.proposal.GridPlaces;

class GridFitTest {
  private static final Optional<GridPlaces> PLACES = GridPlaces.of(InventedSurvey.UTM_17N_WKT);

  /** A bay, a coast, a state: a thousandth of a minute is 17 of these. */
  @ParameterizedTest
  @CsvSource({"330000, 3050000, 4000", "300000, 2900000, 60000", "250000, 2750000, 400000"})
  void degreesAreThoseOfTheProjection(double west, double south, double side) {
    Envelope extent = new Envelope(west, west + side, south, south + 0.7 * side);
    GridFit fit = GridFit.of(extent, PLACES, GroundScale.NONE);
    Random random = new Random(3);
    for (int i = 0; i < 300; i++) {
      double x = west + (3 * random.nextDouble() - 1) * side;
      double y = south + (3 * random.nextDouble() - 1) * side;
      GridPlaces.Degrees right = PLACES.orElseThrow().at(x, y);
      assertThat(fit.interpolated(fit.latitudes(), x, y))
          .isCloseTo(right.latitude(), within(2 * GridFit.MOST_DEGREES));
      assertThat(fit.interpolated(fit.longitudes(), x, y))
          .isCloseTo(right.longitude(), within(2 * GridFit.MOST_DEGREES));
    }
  }

  /** Interpolation reproduces a polynomial of a degree below the number of nodes. */
  @Test
  void factorIsInterpolated() {
    GroundScale scale =
        new GroundScale() {
          @Override
          public double lengthFactor(double x, double y) {
            return 1 + 1e-12 * x * x - 1e-9 * y;
          }

          @Override
          public double areaFactor(double x, double y) {
            return 1;
          }
        };
    GridFit fit = GridFit.of(new Envelope(0, 5_000, 0, 3_000), Optional.empty(), scale);
    assertThat(fit.latitudes()).isEmpty();
    assertThat(fit.interpolated(fit.factors(), 1_234, 2_345))
        .isCloseTo(scale.lengthFactor(1_234, 2_345), within(1e-12));
  }

  @Test
  void aSinglePlaceHasAnArea() {
    GridFit fit = GridFit.of(new Envelope(500_000, 500_000, 3e6, 3e6), PLACES, GroundScale.NONE);
    assertThat(fit.interpolated(fit.longitudes(), 500_000, 3e6)).isCloseTo(-81, within(1e-9));
  }
}
