package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.meadowmark.core.TestSurvey.box;
import static org.meadowmark.core.TestSurvey.wkt;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

class BareStretchTest {
  private static final Coordinate ORIGIN = new Coordinate(0, 0);
  private static final Coordinate EAST = new Coordinate(10, 0);

  private static double edge(String... scars) {
    List<Geometry> geometries = new ArrayList<>();
    for (String scar : scars) {
      geometries.add(wkt(scar));
    }
    return BareStretch.firstEdge(ORIGIN, EAST, geometries);
  }

  @Test
  void bareGroundEndsWhereTheLastOfTouchingScarsDoes() {
    assertThat(edge(box(-1, -1, 3, 1))).isEqualTo(3);
    assertThat(edge(box(-1, -1, 3, 1), box(2, -1, 5, 1))).isEqualTo(5);
    assertThat(edge(box(3, -1, 5, 1), box(-1, -1, 3, 1))).isEqualTo(5);
    assertThat(edge(box(-1, -1, 3, 1), box(3.1, -1, 5, 1))).isEqualTo(3);
  }

  @Test
  void outsideEveryScarTheFirstEdgeIsThatOfTheNextScar() {
    assertThat(edge(box(4, -1, 5, 1))).isEqualTo(4);
    assertThat(edge(box(4, 2, 5, 3))).isInfinite();
    assertThat(edge()).isInfinite();
    assertThat(edge(box(-1, -1, 30, 1))).isInfinite();
  }

  @Test
  void holesEndBareGround() {
    assertThat(
            edge(
                "POLYGON ((-1 -1, 9 -1, 9 1, -1 1, -1 -1), (2 -0.5, 3 -0.5, 3 0.5, 2 0.5, 2 -0.5))"))
        .isEqualTo(2);
  }

  /** The same as to unite the scars with JTS and look for the outline. */
  @Test
  void agreesWithTheOutlineOfTheUnion() {
    Random random = new Random(11);
    for (int round = 0; round < 300; round++) {
      List<Geometry> scars = new ArrayList<>();
      for (int i = 0; i < 1 + random.nextInt(8); i++) {
        double x = 12 * random.nextDouble() - 1;
        double y = 4 * random.nextDouble() - 2;
        double angle = Math.PI * random.nextDouble();
        scars.add(
            wkt("LINESTRING (%s %s, %s %s)"
                    .formatted(x, y, x + 5 * Math.cos(angle), y + 5 * Math.sin(angle)))
                .buffer(0.2 + random.nextDouble() / 2));
      }
      double expected = new OutlineIndex(OverlayNGRobust.union(scars)).firstCrossing(ORIGIN, EAST);
      double found = BareStretch.firstEdge(ORIGIN, EAST, scars);
      if (Double.isInfinite(expected)) {
        assertThat(found).isInfinite();
      } else {
        assertThat(found).isCloseTo(expected, within(1e-9));
      }
    }
  }
}
