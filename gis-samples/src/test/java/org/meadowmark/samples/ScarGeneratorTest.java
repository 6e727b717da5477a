package org.meadowmark.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.meadowmark.core.model.Channel;

class ScarGeneratorTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private static Geometry wkt(String text) {
    try {
      return new WKTReader().read(text);
    } catch (ParseException e) {
      throw new IllegalArgumentException(e);
    }
  }

  private static ScarSettings settings(int scars, int hotSpots) {
    return new ScarSettings(11, scars, hotSpots, 9, 150, 12, LocalDate.of(2026, 6, 14));
  }

  /** A chain of beds with holes, some kilometres long. */
  private static List<Geometry> chain() {
    List<Geometry> beds = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      Point middle =
          FACTORY.createPoint(new Coordinate(500_000 + 400 * i, 3_000_000 + (i % 5) * 300));
      beds.add(middle.buffer(180).difference(middle.buffer(40)));
    }
    return beds;
  }

  private static Point start(SampleScar scar) {
    return FACTORY.createPoint(scar.geometry().getCoordinate());
  }

  @Test
  void scarsAreSpreadByArea() {
    List<Geometry> beds =
        List.of(
            wkt("POLYGON ((0 0, 100 0, 100 100, 0 100, 0 0))"),
            wkt(
                "MULTIPOLYGON (((1000 0, 1100 0, 1100 100, 1000 100, 1000 0)), ((2000 0, 2200 0, 2200 100, 2000 100, 2000 0)))"));
    List<SampleScar> scars = ScarGenerator.on(beds, settings(12_000, 0)).scars().toList();
    assertThat(scars).hasSize(12_000);
    long onFirst =
        scars.stream()
            .filter(s -> s.cause().equals("propeller"))
            .filter(s -> start(s).getX() < 500)
            .count();
    long all = scars.stream().filter(s -> s.cause().equals("propeller")).count();
    // One quarter of the area; twins are not independent, so five standard deviations and more.
    assertThat((double) onFirst / all).isCloseTo(0.25, within(0.03));
  }

  @Test
  void hotSpotsHaveTheElevationThatTheTruthStates() {
    InventedScars invented = ScarGenerator.on(chain(), settings(60_000, 3));
    assertThat(invented.plantedHotSpots()).hasSize(3);
    Geometry beds = UnaryUnionOp.union(chain());
    List<SampleScar> scars = invented.scars().toList();
    Geometry zones = FACTORY.createPolygon();
    for (PlantedHotSpot hotSpot : invented.plantedHotSpots()) {
      zones = zones.union(hotSpot.stretch().buffer(150));
    }
    double inside = zones.intersection(beds).getArea();
    double outside = beds.getArea() - inside;
    Geometry near = zones;
    long hot = scars.stream().filter(s -> near.intersects(start(s))).count();
    double elevation = hot / inside / ((scars.size() - hot) / outside);
    assertThat(elevation).isCloseTo(9, within(0.9));
  }

  @Test
  void threadsDoNotMatterAndNothingIsInvalid() {
    InventedScars invented = ScarGenerator.on(chain(), settings(20_000, 2));
    List<String> inOrder = invented.scars().map(s -> s.geometry().toText()).toList();
    assertThat(invented.scars().parallel().map(s -> s.geometry().toText()).toList())
        .isEqualTo(inOrder);
    assertThat(
            ScarGenerator.on(chain(), settings(20_000, 2)).scars().map(s -> s.geometry().toText()))
        .containsExactlyElementsOf(inOrder);
    assertThat(invented.scars())
        .allMatch(s -> s.geometry().isValid() && s.geometry().getLength() > 1);
  }

  @Test
  void channelsJoinAtNodesOnly() {
    List<Channel> channels = ScarGenerator.on(chain(), settings(1, 0)).channels();
    assertThat(channels.size()).isGreaterThanOrEqualTo(11);
    for (Channel one : channels) {
      boolean isJoined = false;
      for (Channel other : channels) {
        if (one != other && one.geometry().intersects(other.geometry())) {
          isJoined = true;
          assertThat(one.geometry().touches(other.geometry())).isTrue();
        }
      }
      assertThat(isJoined).isTrue();
    }
    Geometry all = UnaryUnionOp.union(channels.stream().map(Channel::geometry).toList());
    assertThat(all.buffer(1).getNumGeometries()).isEqualTo(1);
  }

  @Test
  void oneBedIsEnoughAndABowtieIsRepaired() {
    InventedScars invented =
        ScarGenerator.on(
            List.of(wkt("POLYGON ((0 0, 100 100, 100 0, 0 100, 0 0))")), settings(500, 1));
    assertThat(invented.channels()).isNotEmpty();
    assertThat(invented.scars()).hasSize(500);
  }

  @Test
  void bedsWithoutAreaAreRefused() {
    assertThatThrownBy(() -> ScarGenerator.on(List.of(), settings(1, 0)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("area");
    assertThatThrownBy(
            () -> ScarGenerator.on(List.of(wkt("LINESTRING (0 0, 1 1)")), settings(1, 0)))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
