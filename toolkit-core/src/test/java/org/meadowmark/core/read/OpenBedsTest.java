package org.meadowmark.core.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;

/**
 * Reads the open data set of seagrass beds of 1999 (doi:10.5281/zenodo.5507336), where it lies in
 * {@code shared/data} beside the project.
 */
class OpenBedsTest {
  /** One US survey acre is 43,560 square US survey feet. */
  private static final double SQUARE_FEET_PER_ACRE = 43_560;

  @Test
  void beds() {
    ReadLayer layer = ReadLayer.of(dataFile("tampa-bay-seagrass-1999.gpkg"));
    assertThat(layer.findings()).isEmpty();
    assertThat(layer.header().featureCount()).isEqualTo(2_839);
    assertThat(layer.features()).hasSize(2_839);
    assertThat(layer.crsCode()).isEqualTo("EPSG:2882");
    assertThat(
            layer.features().stream()
                .mapToInt(f -> f.geometry().orElseThrow().getNumPoints())
                .sum())
        .isEqualTo(415_824);
    var acres =
        layer.features().stream()
            .collect(
                Collectors.groupingBy(
                    f -> f.attributes().get("FLUCCSCODE").toString(),
                    Collectors.summingDouble(
                        f ->
                            f.geometry().map(Geometry::getArea).orElse(0.0)
                                / SQUARE_FEET_PER_ACRE)));
    // The publisher's polygons as they are, by class: patchy and continuous.
    assertThat(acres.get("9113")).isCloseTo(10_202.59, within(0.005));
    assertThat(acres.get("9116")).isCloseTo(14_637.62, within(0.005));
  }

  @Test
  void baySegments() {
    ReadLayer layer = ReadLayer.of(dataFile("tampa-bay-segments.gpkg"));
    assertThat(layer.header().layer()).isEqualTo("segclp");
    assertThat(layer.features()).hasSize(7);
    assertThat(layer.crsCode()).isEqualTo("EPSG:4326");
  }

  private static Path dataFile(String name) {
    Path file =
        Path.of(System.getProperty("meadowmark.root", ".")).resolve("../shared/data").resolve(name);
    assumeTrue(Files.exists(file), file + " is absent: the open data set is not tested");
    return file;
  }
}
