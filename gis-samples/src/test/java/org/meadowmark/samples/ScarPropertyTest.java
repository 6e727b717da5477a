package org.meadowmark.samples;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.locationtech.jts.coverage.CoverageValidator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/** What holds whatever the seed is. */
class ScarPropertyTest {
  @Property(tries = 8, seed = "42")
  void everySeedGivesSoundGeometries(
      @ForAll long seed,
      @ForAll @IntRange(min = 100, max = 180) int beds,
      @ForAll @IntRange(max = 12) int hotSpots) {
    Estuary estuary =
        EstuaryGenerator.generate(
            EstuarySettings.SAMPLE.withSeed(seed).withSize(400, beds).withHotSpots(hotSpots, 6));
    assertThat(estuary.beds()).isNotEmpty();
    assertThat(
            CoverageValidator.isValid(
                estuary.beds().stream().map(bed -> bed.geometry()).toArray(Geometry[]::new)))
        .isTrue();
    assertThat(estuary.plantedHotSpots().size()).isLessThanOrEqualTo(hotSpots);
    for (int season = 0; season < 2; season++) {
      estuary
          .scars(season)
          .forEach(
              scar -> {
                assertThat(scar.geometry().isValid()).isTrue();
                assertThat(scar.geometry().isEmpty()).isFalse();
                assertThat(scar.geometry().getLength()).isGreaterThan(0);
                for (Coordinate c : scar.geometry().getCoordinates()) {
                  assertThat(Double.isFinite(c.x) && Double.isFinite(c.y)).isTrue();
                }
                scar.widthMetres().ifPresent(width -> assertThat(width).isBetween(0.05, 6.0));
              });
    }
  }
}
