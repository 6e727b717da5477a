package org.meadowmark.core.project;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GeodesicTrueNorthTest {
  private static final CrsCatalog CATALOG = new CrsCatalog();

  /**
   * Against the series for the convergence of the transverse Mercator projection, to the fifth
   * power of the longitude difference (Redfearn 1948, Empire Survey Review 9:318–322, from memory).
   */
  @ParameterizedTest
  @CsvSource({
    "EPSG:32617, -81, 25",
    "EPSG:32617, -78.5, 25",
    "EPSG:32617, -83.2, 29.7",
    "EPSG:32633, 17.9, 60",
    "EPSG:32756, 151.2, -33.9"
  })
  void convergenceOfUtm(String code, double longitude, double latitude) throws Exception {
    AnalysisGrid grid = AnalysisGrid.ofCode(code, CATALOG);
    MathTransform toGrid = CRS.findMathTransform(DefaultGeographicCRS.WGS84, grid.crs(), true);
    double[] at = {longitude, latitude};
    toGrid.transform(at, 0, at, 0, 1);
    int zone = Integer.parseInt(code.substring(8));
    double phi = Math.toRadians(latitude);
    double away = Math.toRadians(longitude - (6 * zone - 183));
    double cos2 = Math.cos(phi) * Math.cos(phi);
    double eta2 = 0.00673949674 * cos2;
    double t2 = Math.tan(phi) * Math.tan(phi);
    double series =
        Math.sin(phi)
            * (away
                + Math.pow(away, 3) * cos2 / 3 * (1 + 3 * eta2 + 2 * eta2 * eta2)
                + Math.pow(away, 5) * cos2 * cos2 / 15 * (2 - t2));

    double north = GeodesicTrueNorth.ofWkt(grid.wkt()).gridNorthDegrees(at[0], at[1]);

    assertThat(north).isCloseTo(Math.toDegrees(series), within(1e-6));
  }

  @Test
  void aGridInFeetWorksToo() {
    AnalysisGrid grid = AnalysisGrid.ofCode("EPSG:2236", CATALOG);
    assertThat(GeodesicTrueNorth.ofWkt(grid.wkt()).gridNorthDegrees(300_000, 150_000))
        .isBetween(0.0, 1.0);
  }

  @Test
  void refusesDegrees() {
    assertThatThrownBy(() -> GeodesicTrueNorth.ofWkt(DefaultGeographicCRS.WGS84.toWKT()))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
