package org.meadowmark.core.write.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.meadowmark.core.write.Vision;

/**
 * The page can be read by everybody, by day and by night. Limits of colour differences are our own;
 * those of contrast are from W3C, <i>Web Content Accessibility Guidelines 2.2</i>, 1.4.3 (4.5 for
 * text) and 1.4.11 (3 for what has to be seen), with the contrast ratio defined there.
 */
class ReportPaletteTest {
  private static final double TEXT = 4.5;
  private static final double SEEN = 3;

  static Stream<Arguments> everySight() {
    return Stream.of(ReportPalette.DAY, ReportPalette.NIGHT)
        .flatMap(palette -> Stream.of(Vision.values()).map(v -> Arguments.of(palette, v)));
  }

  static Stream<ReportPalette> palettes() {
    return Stream.of(ReportPalette.DAY, ReportPalette.NIGHT);
  }

  private static List<Color> row(ReportPalette palette, String name, int count) {
    return IntStream.range(0, count).mapToObj(i -> colour(palette, name + i)).toList();
  }

  private static Color colour(ReportPalette palette, String name) {
    return Color.decode(palette.colour(name));
  }

  @ParameterizedTest
  @MethodSource("everySight")
  void causesCanBeToldApartAndFromTheGround(ReportPalette palette, Vision vision) {
    List<Color> scars = row(palette, "scar-", ReportPalette.SCARS);
    assertThat(vision.smallestDifference(scars)).isGreaterThan(15);
    List<Color> grounds = new ArrayList<>(row(palette, "bed-", ReportPalette.BEDS));
    Stream.of("water", "land", "bed-unknown").map(n -> colour(palette, n)).forEach(grounds::add);
    for (Color scar : scars) {
      for (Color ground : grounds) {
        assertThat(vision.difference(scar, ground)).isGreaterThan(20);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("everySight")
  void bedsGoAwayFromTheWaterWithSeverity(ReportPalette palette, Vision vision) {
    List<Color> beds = row(palette, "bed-", ReportPalette.BEDS);
    assertThat(vision.smallestDifference(beds)).isGreaterThan(8);
    double water = vision.lightness(colour(palette, "water"));
    assertThat(beds.stream().map(bed -> Math.abs(vision.lightness(bed) - water)).toList())
        .isSorted();
  }

  /** Ranks differ in width too; colour is the second sign. */
  @ParameterizedTest
  @MethodSource("everySight")
  void ranksAndSignsStandOut(ReportPalette palette, Vision vision) {
    Color first = colour(palette, "segment-first");
    Color next = colour(palette, "segment-next");
    assertThat(vision.difference(first, next)).isGreaterThan(15);
    for (String name : List.of("segment-first", "zone-line", "repair", "mark", "gap", "chosen")) {
      assertThat(vision.difference(colour(palette, name), colour(palette, "water")))
          .as(name)
          .isGreaterThan(30);
    }
  }

  @ParameterizedTest
  @MethodSource("palettes")
  void textHasContrast(ReportPalette palette) {
    for (String ground : List.of("page", "paper", "mark-row")) {
      for (String ink : List.of("ink", "soft", "accent")) {
        assertThat(contrast(palette, ink, ground)).as(ink + " on " + ground).isGreaterThan(TEXT);
      }
    }
    assertThat(contrast(palette, "paper", "accent")).isGreaterThan(TEXT);
    assertThat(contrast(palette, "ink", "water")).isGreaterThan(TEXT);
    assertThat(contrast(palette, "ink", "land")).isGreaterThan(TEXT);
    assertThat(contrast(palette, "soft", "paper")).isGreaterThan(TEXT);
    assertThat(contrast(palette, "zone-line", "paper")).isGreaterThan(TEXT);
  }

  @ParameterizedTest
  @MethodSource("palettes")
  void signsHaveContrast(ReportPalette palette) {
    for (String name : List.of("segment-first", "segment-next", "zone-line", "chosen", "gap")) {
      assertThat(contrast(palette, name, "water")).as(name).isGreaterThan(SEEN);
    }
    assertThat(contrast(palette, "repair", "repair-case")).isGreaterThan(SEEN);
    assertThat(contrast(palette, "mark", "mark-case")).isGreaterThan(SEEN);
    assertThat(contrast(palette, "accent", "page")).as("focus").isGreaterThan(SEEN);
  }

  private static double contrast(ReportPalette palette, String one, String other) {
    double a = luminance(colour(palette, one));
    double b = luminance(colour(palette, other));
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  private static double luminance(Color colour) {
    return 0.2126 * linear(colour.getRed())
        + 0.7152 * linear(colour.getGreen())
        + 0.0722 * linear(colour.getBlue());
  }

  private static double linear(int component) {
    double c = component / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }
}
