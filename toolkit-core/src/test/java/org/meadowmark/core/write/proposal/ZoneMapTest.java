package org.meadowmark.core.write.proposal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.TestSurvey;

class ZoneMapTest {
  private static final MapWindow WINDOW =
      new MapWindow(new Envelope(1000, 1100, 500, 550), 10, 20, 200, 100);

  @ParameterizedTest
  @CsvSource({
    "0.7, 0.5",
    "1, 1",
    "1.99, 1",
    "2, 2",
    "4.9, 2",
    "5, 5",
    "9.99, 5",
    "10, 10",
    "730, 500"
  })
  void stepsAreRound(double value, double step) {
    assertThat(RoundSteps.atMost(value)).isCloseTo(step, within(1e-12));
  }

  @Test
  void theBarIsAsLongAsItSays() {
    SvgWriter svg = new SvgWriter().open("g");
    double units = ScaleBar.draw(svg, 0, 0, 300, 1.25);
    assertThat(units).isEqualTo(160);
    assertThat(svg.finished()).contains(">200\u00A0m<");
    assertThat(ScaleBar.length(2000)).isEqualTo("2\u00A0km");
  }

  @Test
  void aWindowHasTheShapeOfItsPlaceAndHoldsTheZone() {
    Envelope zone = new Envelope(0, 10, 0, 900);
    MapWindow window = MapWindow.around(zone, 0.2, 300, 0, 0, 700, 500);
    assertThat(window.grid().contains(zone)).isTrue();
    assertThat(window.grid().getWidth() / window.grid().getHeight()).isCloseTo(1.4, within(1e-9));
    assertThat(window.grid().getHeight()).isCloseTo(900 + 2 * 0.2 * 900, within(1e-9));
    assertThat(
            MapWindow.around(new Envelope(new Coordinate(5, 5)), 0.2, 300, 0, 0, 700, 500)
                .grid()
                .getHeight())
        .isCloseTo(300, within(1e-9));
  }

  @Test
  void pathsAreCutToTheWindowAndTurnedDown() {
    assertThat(path("LINESTRING (1000 500, 1050 525)")).isEqualTo("M10 120L110 70");
    assertThat(path("LINESTRING (0 0, 10 10)")).isEmpty();
    String cut = path("LINESTRING (-100000 525, 100000 525)");
    assertThat(cut).isEqualTo("M-2 70L222 70");
    assertThat(path("POLYGON ((1010 510, 1020 510, 1020 520, 1010 520, 1010 510))"))
        .isEqualTo("M30 100L50 100L50 80L30 80Z");
  }

  @Test
  void whatIsTooSmallToSeeIsADotOrNothing() {
    var speck = new GeometryFactory().toGeometry(new Envelope(1050, 1050.01, 525, 525.01));
    assertThat(new MapPath(WINDOW).add(speck).commands()).isEmpty();
    assertThat(new MapPath(WINDOW).addOrDot(speck).commands()).isEqualTo("M110 70h0.1");
  }

  private static String path(String wkt) {
    return new MapPath(WINDOW).add(TestSurvey.wkt(wkt)).commands();
  }
}
