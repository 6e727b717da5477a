package org.meadowmark.core.write.proposal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;

class GridPlacesTest {
  private final GridPlaces places = GridPlaces.of(InventedSheets.UTM_21N_WKT).orElseThrow();

  /** Source: PROJ through gdaltransform, GDAL 3.6.2, EPSG:32621 to EPSG:4326. */
  @Test
  void degreesAgreeWithAnotherLibrary() {
    assertDegrees(690_900, 3_321_315, -55.0207291909283, 30.0079433395674);
    assertDegrees(691_500, 3_320_965, -55.0145743261408, 30.0046929555511);
    assertThat(places.datum()).isEqualTo("WGS 84");
  }

  private void assertDegrees(double x, double y, double longitude, double latitude) {
    GridPlaces.Degrees degrees = places.at(x, y);
    assertThat(degrees.longitude()).isCloseTo(longitude, within(1e-8));
    assertThat(degrees.latitude()).isCloseTo(latitude, within(1e-8));
  }

  /**
   * Source: tan γ = tan(λ − λ₀) sin φ, Snyder (1987), Map Projections: A Working Manual, USGS
   * Professional Paper 1395, for the sphere (from memory); the ellipsoid changes the third decimal.
   */
  @Test
  void gridNorthTurnsAsTheFormulaSays() {
    for (double x : new double[] {300_000, 500_000, 690_900}) {
      GridPlaces.Degrees at = places.at(x, 3_321_315);
      double expected =
          Math.toDegrees(
              Math.atan(
                  Math.tan(Math.toRadians(at.longitude() + 57))
                      * Math.sin(Math.toRadians(at.latitude()))));
      assertThat(places.gridNorthBearing(x, 3_321_315)).isCloseTo(expected, within(0.002));
    }
  }

  @Test
  void aGridThatIsNowhereHasNoPlaces() {
    assertThat(GridPlaces.of("")).isEmpty();
    assertThat(GridPlaces.of("LOCAL_CS[\"quarry\", UNIT[\"metre\",1]]")).isEmpty();
    assertThat(GridPlaces.of("no text of a system")).isEmpty();
  }

  @Test
  void ticksAreAtRoundMinutesWhereTheyAreDrawn() {
    Envelope window = new Envelope(690_500, 691_900, 3_320_600, 3_321_700);
    Graticule graticule = Graticule.of(window, places);
    assertThat(graticule.decimals()).isEqualTo(1);
    assertThat(graticule.meridians()).hasSizeBetween(2, 12);
    assertThat(graticule.parallels()).hasSizeBetween(2, 12);
    for (Graticule.Line line : graticule.meridians()) {
      assertThat(places.at(line.start(), window.getMinY()).longitude())
          .isCloseTo(line.degrees(), within(1e-9));
      assertThat(places.at(line.end(), window.getMaxY()).longitude())
          .isCloseTo(line.degrees(), within(1e-9));
      assertThat(line.degrees() * 600).isCloseTo(Math.rint(line.degrees() * 600), within(1e-6));
    }
    for (Graticule.Line line : graticule.parallels()) {
      assertThat(places.at(window.getMinX(), line.start()).latitude())
          .isCloseTo(line.degrees(), within(1e-9));
      assertThat(places.at(window.getMaxX(), line.end()).latitude())
          .isCloseTo(line.degrees(), within(1e-9));
    }
  }
}
