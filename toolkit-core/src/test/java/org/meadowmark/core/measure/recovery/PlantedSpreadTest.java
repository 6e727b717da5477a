package org.meadowmark.core.measure.recovery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Closed forms, and the rate equation stepped through. */
class PlantedSpreadTest {
  private static final double SQUARE_METRES_PER_ACRE = 4046.8564224;

  @Test
  void discWithoutNewPatchesGrowsByItsRadius() {
    PlantedSpread spread = new PlantedSpread(Math.PI * 100, 0.5, 0, 1);
    assertThat(spread.squareMetresAfter(4)).isCloseTo(Math.PI * 144, within(1e-9));
  }

  @Test
  void newPatchesAloneGrowExponentially() {
    PlantedSpread spread = new PlantedSpread(200, 0, 0.3, 1);
    assertThat(spread.squareMetresAfter(5)).isCloseTo(200 * Math.exp(1.5), within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"1, 0.26, 0.2", "1.6, 0.7, 0.05", "3, 2.2, 0.4"})
  void solvesTheRateEquation(double shape, double edge, double patches) {
    double area = 500;
    int steps = 200_000;
    double years = 6;
    for (int i = 0; i < steps; i++) {
      double rate = 2 * Math.sqrt(Math.PI * shape * area) * edge + patches * area;
      double middle = area + rate * years / steps / 2;
      area += (2 * Math.sqrt(Math.PI * shape * middle) * edge + patches * middle) * years / steps;
    }
    assertThat(new PlantedSpread(500, edge, patches, shape).squareMetresAfter(years))
        .isCloseTo(area, within(area * 1e-8));
  }

  /** 5.5 acres to 20 (common practice, no source): what an edge alone, or patches, must do. */
  @ParameterizedTest
  @CsvSource({"3, 25.44", "5, 15.26"})
  void plantingOfFiveAndAHalfAcres(double years, double edge) {
    double from = 5.5 * SQUARE_METRES_PER_ACRE;
    double to = 20 * SQUARE_METRES_PER_ACRE;
    assertThat(PlantedSpread.impliedEdgeMetresPerYear(from, to, years, 1))
        .isCloseTo(edge, within(0.01));
    for (double rhizome : new double[] {0.26, 0.69, 2.23}) {
      double patches = PlantedSpread.impliedNewPatchesPerYear(from, to, years, rhizome, 1);
      assertThat(new PlantedSpread(from, rhizome, patches, 1).squareMetresAfter(years))
          .isCloseTo(to, within(1e-3));
      assertThat(patches).isBetween(0.2, Math.log(20 / 5.5) / years);
    }
  }

  @Test
  void edgeThatIsEnoughNeedsNoPatches() {
    assertThat(PlantedSpread.impliedNewPatchesPerYear(100, 110, 5, 3, 1)).isZero();
  }

  @Test
  void nothingSpreadsFromNothing() {
    assertThat(new PlantedSpread(0, 1, 0.3, 1).squareMetresAfter(5)).isZero();
  }
}
