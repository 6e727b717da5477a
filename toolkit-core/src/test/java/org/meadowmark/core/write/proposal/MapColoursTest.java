package org.meadowmark.core.write.proposal;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.meadowmark.core.write.Vision;

/** The map can be read by everybody. The limits are our own. */
class MapColoursTest {
  private static final List<Color> BEDS =
      IntStream.range(0, 4).mapToObj(place -> Color.decode(MapColours.bed(place, 4))).toList();
  private static final List<Color> SCARS =
      IntStream.range(0, 6).mapToObj(place -> Color.decode(MapColours.scar(place))).toList();
  private static final List<Color> GROUNDS =
      Stream.concat(BEDS.stream(), Stream.of(MapColours.WATER, MapColours.LAND).map(Color::decode))
          .toList();

  @ParameterizedTest
  @EnumSource
  void causesCanBeToldApart(Vision vision) {
    assertThat(vision.smallestDifference(SCARS)).isGreaterThan(15);
  }

  @ParameterizedTest
  @EnumSource
  void scarsStandOutFromWhatTheyLieOn(Vision vision) {
    for (Color scar : SCARS) {
      for (Color ground : GROUNDS) {
        assertThat(vision.difference(scar, ground)).isGreaterThan(20);
      }
    }
  }

  @ParameterizedTest
  @EnumSource
  void bedsGetDarkerWithSeverity(Vision vision) {
    assertThat(vision.smallestDifference(BEDS)).isGreaterThan(8);
    assertThat(BEDS.stream().map(bed -> -vision.lightness(bed)).toList()).isSorted();
  }
}
