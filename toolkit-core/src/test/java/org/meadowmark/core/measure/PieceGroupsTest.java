package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.core.TestSurvey;

class PieceGroupsTest {
  private static final double MOST_METRES = 15;

  private static List<Polygon> scattered(double width, double height, int count) {
    Random random = new Random(3);
    List<Polygon> pieces = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double x = width * random.nextDouble();
      double y = height * random.nextDouble();
      double size = i % 50 == 0 ? 40 : 1;
      pieces.add((Polygon) TestSurvey.wkt(TestSurvey.box(x, y, x + size, y + size)));
    }
    return pieces;
  }

  @Test
  void eachPieceIsInOneGroupAndGroupsAreSmall() {
    List<Polygon> pieces = scattered(200, 200, 3_000);
    List<int[]> groups = PieceGroups.of(pieces, 100, 2_900, MOST_METRES);
    assertThat(groups.stream().flatMapToInt(Arrays::stream).sorted())
        .containsExactly(IntStream.range(100, 2_900).boxed().toArray(Integer[]::new));
    for (int[] group : groups) {
      assertThat(group.length).isBetween(1, 64);
      Envelope extent = new Envelope();
      Arrays.stream(group)
          .forEach(i -> extent.expandToInclude(pieces.get(i).getEnvelopeInternal()));
      assertThat(group.length == 1 || Math.max(extent.getWidth(), extent.getHeight()) <= 15)
          .isTrue();
    }
  }

  /** A strip of pieces, as a survey sorted by easting has them, is no worse than a square. */
  @Test
  void aLongStripHasGroupsOfSeveral() {
    List<Polygon> strip =
        scattered(20, 5_000, 3_000).stream().filter(piece -> piece.getArea() < 2).toList();
    List<int[]> groups = PieceGroups.of(strip, 0, strip.size(), MOST_METRES);
    assertThat((double) strip.size() / groups.size()).isGreaterThan(3);
  }
}
