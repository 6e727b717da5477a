package org.meadowmark.core.write.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.meadowmark.core.write.Vision;

/**
 * Colours that stand beside each other can be told apart by everybody. The limit of 15 is our own.
 */
class PaletteTest {
  private static final double LIMIT = 15;

  @ParameterizedTest
  @EnumSource
  void causesCanBeToldApart(Vision vision) {
    List<Color> colours = new ArrayList<>();
    IntStream.range(0, 6).forEach(i -> colours.add(ChartStyle.cause(i)));
    colours.add(ChartStyle.noCause());
    assertThat(vision.smallestDifference(colours)).isGreaterThan(LIMIT);
  }

  @ParameterizedTest
  @EnumSource
  void severityClassesCanBeToldApartAndGetDarker(Vision vision) {
    List<Color> colours = IntStream.range(0, 4).mapToObj(i -> ChartStyle.severity(i, 4)).toList();
    assertThat(vision.smallestDifference(colours)).isGreaterThan(LIMIT);
    assertThat(colours.stream().map(colour -> -vision.lightness(colour)).toList()).isSorted();
  }
}
