package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.meadowmark.core.TestSurvey.wkt;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.model.Progress;

/** A meadow cut tile by tile is the meadow cut in one go. */
class TiledMeadowTest {
  private static final Offset<Double> NEAR = within(2e-6);
  private static final int SCARS = 1_500;
  private static final int IN_ONE_GO = 1_000_000;

  /** Three touching beds, one with a hole and a ragged edge, one on its own, and two areas. */
  private static TestSurvey survey(long seed, int scars) {
    TestSurvey survey =
        new TestSurvey()
            .bed(
                "west",
                "POLYGON ((0 0, 150 0, 150 200, 60 180, 0 210, 0 0),"
                    + " (40 60, 90 50, 80 120, 45 110, 40 60))")
            .bed("east", "POLYGON ((150 0, 300 10, 280 120, 310 190, 150 200, 150 0))")
            .bed("north", "POLYGON ((0 210, 60 180, 150 200, 140 260, 20 250, 0 210))")
            .bed("apart", "POLYGON ((340 0, 420 0, 420 90, 340 90, 340 0))")
            .area("left", "POLYGON ((-10 -10, 130 -10, 130 300, -10 300, -10 -10))")
            .area("right", "POLYGON ((130 -10, 500 -10, 500 150, 130 150, 130 -10))")
            .ranking("connectivity_detail_patches", 0);
    Random random = new Random(seed);
    for (int i = 0; i < scars; i++) {
      double x = 420 * random.nextDouble();
      double y = 260 * random.nextDouble();
      double heading = 2 * Math.PI * random.nextDouble();
      StringBuilder line = new StringBuilder(point(x, y));
      for (int step = 0; step < 1 + random.nextInt(5); step++) {
        heading += random.nextGaussian() / 4;
        double length = 3 + 10 * random.nextDouble();
        x += length * Math.cos(heading);
        y += length * Math.sin(heading);
        line.append(", ").append(point(x, y));
      }
      survey.scar("s" + i, "LINESTRING (" + line + ")", 0.15 + random.nextDouble() / 2);
    }
    return survey;
  }

  private static String point(double x, double y) {
    return String.format(Locale.ROOT, "%.3f %.3f", x, y);
  }

  private static Measurement measure(TestSurvey survey, int mostScarsAtOnce) {
    return new SurveyMeasurer(
            survey.build(),
            survey.parameters(),
            TestSurvey.tables(),
            Progress.NONE,
            mostScarsAtOnce)
        .measure();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void tilesGiveTheSamePatchesAndGaps(long seed) {
    TestSurvey survey = survey(seed, SCARS);
    Measurement whole = measure(survey, IN_ONE_GO);
    Measurement tiled = measure(survey, 100);
    assertThat(tiled.scarredGrass().size())
        .as("the meadow was cut in tiles")
        .isGreaterThan(whole.scarredGrass().size());

    assertThat(tiled.patches()).hasSameSizeAs(whole.patches());
    for (int i = 0; i < whole.patches().size(); i++) {
      Patch one = whole.patches().get(i);
      Patch other = tiled.patches().get(i);
      assertThat(other.id()).isEqualTo(one.id());
      assertThat(other.bedIds()).as(one.id()).isEqualTo(one.bedIds());
      assertThat(other.areaSquareMetres()).as(one.id()).isCloseTo(one.areaSquareMetres(), NEAR);
      assertThat(other.perimeterMetres()).as(one.id()).isCloseTo(one.perimeterMetres(), NEAR);
      assertThat(other.nearestDistanceMetres().getAsDouble())
          .isCloseTo(one.nearestDistanceMetres().getAsDouble(), NEAR);
      assertThat(other.groupId()).isEqualTo(one.groupId());
      assertThat(other.geometry().isValid()).as(one.id()).isTrue();
    }

    assertThat(tiled.gaps()).hasSameSizeAs(whole.gaps());
    for (int i = 0; i < whole.gaps().size(); i++) {
      Gap one = whole.gaps().get(i);
      Gap other = tiled.gaps().get(i);
      assertThat(List.of(other.id(), other.scarId(), other.firstPatchId(), other.secondPatchId()))
          .isEqualTo(List.of(one.id(), one.scarId(), one.firstPatchId(), one.secondPatchId()));
      assertThat(other.minimumWidthMetres()).isCloseTo(one.minimumWidthMetres(), NEAR);
      assertThat(other.meanWidthMetres().getAsDouble())
          .isCloseTo(one.meanWidthMetres().getAsDouble(), NEAR);
      assertThat(other.lengthMetres()).isCloseTo(one.lengthMetres(), NEAR);
      assertThat(other.geometry().equalsExact(one.geometry(), 1e-9)).as(one.id()).isTrue();
    }
  }

  @Test
  void tilesGiveTheSameBedsAndAreas() {
    TestSurvey survey = survey(4, SCARS).draws(20);
    Measurement whole = measure(survey, IN_ONE_GO);
    Measurement tiled = measure(survey, 100);
    for (int i = 0; i < whole.beds().size(); i++) {
      BedMeasure one = whole.beds().get(i);
      BedMeasure other = tiled.beds().get(i);
      assertThat(other.bed()).isEqualTo(one.bed());
      same(other.damage(), one.damage());
      same(other.fragmentation(), one.fragmentation());
    }
    for (int i = 0; i < whole.areas().size(); i++) {
      same(tiled.areas().get(i).damage(), whole.areas().get(i).damage());
      same(tiled.areas().get(i).fragmentation(), whole.areas().get(i).fragmentation());
    }
  }

  private static void same(Damage one, Damage other) {
    assertThat(one.scarredSquareMetres()).isCloseTo(other.scarredSquareMetres(), NEAR);
    assertThat(one.scarLengthMetres()).isCloseTo(other.scarLengthMetres(), NEAR);
    assertThat(one.scarCount()).isEqualTo(other.scarCount());
    assertThat(one.severityKey()).isEqualTo(other.severityKey());
    assertThat(one.interval().isPresent()).isEqualTo(other.interval().isPresent());
  }

  private static void same(Fragmentation one, Fragmentation other) {
    assertThat(one.after().patchCount()).isEqualTo(other.after().patchCount());
    assertThat(one.after().edgeMetres()).isCloseTo(other.after().edgeMetres(), within(1e-4));
    assertThat(one.after().mesh().squareMetres().getAsDouble())
        .isCloseTo(other.after().mesh().squareMetres().getAsDouble(), within(1e-5));
    assertThat(one.crumbsAfter()).isEqualTo(other.crumbsAfter());
    assertThat(one.gaps().count()).isEqualTo(other.gaps().count());
    assertThat(one.gapBins()).isEqualTo(other.gapBins());
    for (int i = 0; i < one.crossings().size(); i++) {
      assertThat(one.crossings().get(i).groupsAfter())
          .isEqualTo(other.crossings().get(i).groupsAfter());
      one.crossings()
          .get(i)
          .after()
          .ifPresent(at -> assertThat(at.equivalentAreaHectares()).isGreaterThanOrEqualTo(0));
    }
  }

  /** A thousand scars over one another cannot be told apart by any tile. */
  @Test
  void scarsInOnePlaceDoNotCutForEver() {
    TestSurvey survey = new TestSurvey().bed("b", TestSurvey.box(0, 0, 100, 100));
    for (int i = 0; i < 1_000; i++) {
      survey.scar("s" + i, "LINESTRING (50 -10, 50 " + (110 + i % 7) + ")", 0.4);
    }
    Measurement tiled = measure(survey, 100);
    assertThat(tiled.patches()).hasSize(2);
    assertThat(tiled.whole().damage().scarredSquareMetres()).isCloseTo(40, within(1e-6));
  }

  /** A scar that lies on the side of a tile, and one that ends there. */
  @Test
  void scarsAlongTheSidesOfTilesCutOnce() {
    Geometry bed = wkt(TestSurvey.box(0, 0, 200, 200));
    List<Tile> tiles = List.of();
    for (int round = 0; round < 2; round++) {
      TestSurvey survey = new TestSurvey().bed("b", bed);
      int id = 0;
      for (Tile tile : tiles) {
        double x = tile.box().getMaxX();
        survey.scar("side" + id++, "LINESTRING (%s -5, %s 205)".formatted(x, x), 0.3);
      }
      Random random = new Random(5);
      for (int i = 0; i < 1_000; i++) {
        double x = 200 * random.nextDouble();
        double y = 200 * random.nextDouble();
        survey.scar("s" + i, "LINESTRING (%s %s, %s %s)".formatted(x, y, x + 4, y + 1), 0.3);
      }
      if (round == 1) {
        Measurement whole = measure(survey, IN_ONE_GO);
        Measurement tiled = measure(survey, 100);
        assertThat(tiled.patches()).hasSameSizeAs(whole.patches());
        assertThat(tiled.gaps()).hasSameSizeAs(whole.gaps());
        assertThat(tiled.whole().damage().scarredSquareMetres())
            .isCloseTo(whole.whole().damage().scarredSquareMetres(), NEAR);
      }
      List<Footprint> footprints =
          new FootprintBuilder(survey.build().scale(), new SurveyedArea(List.of()))
              .buildAll(survey.scars());
      int[] all = new int[footprints.size()];
      for (int i = 0; i < all.length; i++) {
        all[i] = i;
      }
      tiles = Tile.of(List.of(bed, bed), all, footprints);
      assertThat(tiles.size()).isGreaterThan(2);
    }
  }

  /** Every point lies in one tile. */
  @Test
  void tilesCoverTheMeadowOnce() {
    TestSurvey survey = survey(6, 1_500);
    Geometry bed = survey.beds().get(0).geometry();
    List<Footprint> footprints =
        new FootprintBuilder(survey.build().scale(), new SurveyedArea(List.of()))
            .buildAll(survey.scars());
    int[] all = new int[footprints.size()];
    for (int i = 0; i < all.length; i++) {
      all[i] = i;
    }
    List<Tile> tiles = Tile.of(List.of(bed), all, footprints);
    double area =
        tiles.stream()
            .flatMap(tile -> tile.parts().stream())
            .mapToDouble(part -> part.geometry().getArea())
            .sum();
    assertThat(area).isCloseTo(bed.getArea(), within(1e-8));
    Random random = new Random(7);
    for (int i = 0; i < 1_000; i++) {
      Coordinate point = new Coordinate(150 * random.nextDouble(), 200 * random.nextDouble());
      if (new GeometryFactory().createPoint(point).within(bed)) {
        assertThat(tiles.stream().filter(tile -> tile.holds(point)).count()).isEqualTo(1);
      }
    }
  }
}
