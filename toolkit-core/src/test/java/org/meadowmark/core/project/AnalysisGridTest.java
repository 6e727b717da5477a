package org.meadowmark.core.project;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.geotools.referencing.CRS;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.meadowmark.core.model.SurveyInputException;

class AnalysisGridTest {
  private static final CrsCatalog CATALOG = new CrsCatalog();

  @ParameterizedTest
  @CsvSource({
    "-82.6, 27.9, EPSG:32617",
    "-84, 27.9, EPSG:32617",
    "-84.0001, 27.9, EPSG:32616",
    "0, 0, EPSG:32631",
    "0, -0.0001, EPSG:32731",
    "153.1, -27.4, EPSG:32756",
    "5, 60, EPSG:32631",
    "-180, 10, EPSG:32601",
    "179.9999, -17, EPSG:32760",
    "180, -17, EPSG:32701",
    "277.4, 27.9, EPSG:32617"
  })
  void zoneHoldsThePlace(double longitude, double latitude, String code) {
    assertThat(AnalysisGrid.utmCode(longitude, latitude)).isEqualTo(code);
  }

  @Test
  void noZoneBeyondThePoles() {
    assertThatThrownBy(() -> AnalysisGrid.utm(27.9, -82.6, CATALOG))
        .isInstanceOf(SurveyInputException.class)
        .hasMessageContaining("no UTM zone")
        .hasMessageContaining("order of latitude and longitude");
  }

  @Test
  void degreesCannotBeMeasuredIn() {
    assertThatThrownBy(() -> AnalysisGrid.ofCode("EPSG:4326", CATALOG))
        .isInstanceOf(SurveyInputException.class)
        .hasMessage(
            "analysis_crs: EPSG:4326 is in degrees, which cannot be measured in; give a projected"
                + " one, such as EPSG:32617, or none to take the best UTM zone");
    assertThatThrownBy(() -> AnalysisGrid.ofCode("EPSG:1", CATALOG))
        .isInstanceOf(SurveyInputException.class)
        .hasMessageContaining("'EPSG:1' is not known");
  }

  @Test
  void feetBecomeMetresOnTheSameProjection() throws Exception {
    AnalysisGrid grid = AnalysisGrid.ofCode("EPSG:2882", CATALOG);
    assertThat(grid.label()).isEqualTo("EPSG:2882 in metres");
    double[] feet = {500_000, 1_300_000};
    double[] metres = new double[2];
    CRS.findMathTransform(CRS.decode("EPSG:2882", true), grid.crs(), true)
        .transform(feet, 0, metres, 0, 1);
    double foot = 1200.0 / 3937.0;
    assertThat(metres[0]).isCloseTo(500_000 * foot, within(1e-6));
    assertThat(metres[1]).isCloseTo(1_300_000 * foot, within(1e-6));
    assertThat(CRS.parseWKT(grid.wkt()).getCoordinateSystem().getAxis(0).getUnit().toString())
        .isEqualTo("m");
  }
}
