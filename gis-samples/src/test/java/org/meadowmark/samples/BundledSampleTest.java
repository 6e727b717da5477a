package org.meadowmark.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.read.SourceFeature;

/** The committed sample is what the generator makes. */
class BundledSampleTest {
  private static final Path BUNDLED =
      Path.of(System.getProperty("meadowmark.root"), "gis-samples", "data", "quillmere-sound");
  private static final String README = "README.md";

  /** A ten-thousandth of a metre on the grid, less in degrees: the last digit of an ordinate. */
  private static final double TOLERANCE = 1e-8;

  @TempDir static Path folder;
  private static Path fresh;

  @BeforeAll
  static void makeSample() {
    fresh = folder.resolve("fresh");
    SampleProgram.writeSample(fresh, SampleEstuary.MADE);
  }

  private static List<Path> files(Path root) throws IOException {
    try (Stream<Path> walk = Files.walk(root)) {
      return walk.filter(Files::isRegularFile)
          .map(root::relativize)
          .filter(file -> !file.toString().equals(README))
          .sorted()
          .toList();
    }
  }

  @Test
  void hasTheSameFilesAndIsSmall() throws IOException {
    List<Path> bundled = files(BUNDLED);
    assertThat(bundled).isEqualTo(files(fresh)).hasSize(20);
    long bytes = 0;
    for (Path file : bundled) {
      bytes += Files.size(BUNDLED.resolve(file));
    }
    assertThat(bytes).isLessThan(4_200_000);
  }

  @Test
  void textsAreEqualByteForByte() throws IOException {
    int compared = 0;
    for (Path file : files(BUNDLED)) {
      if (file.toString().matches(".*\\.(toml|asc|prj|csv)")) {
        assertThat(BUNDLED.resolve(file)).hasSameBinaryContentAs(fresh.resolve(file));
        compared++;
      }
    }
    assertThat(compared).isEqualTo(7);
  }

  /** Other formats may differ in bytes between versions of a library, not in what they say. */
  @Test
  void layersAreEqualFeatureByFeature() throws IOException {
    int compared = 0;
    for (Path file : files(BUNDLED)) {
      if (file.toString().matches(".*\\.(gpkg|geojson)")) {
        List<SourceFeature> bundled = features(BUNDLED.resolve(file));
        List<SourceFeature> made = features(fresh.resolve(file));
        assertThat(bundled).as(file.toString()).hasSameSizeAs(made).isNotEmpty();
        for (int i = 0; i < made.size(); i++) {
          assertThat(bundled.get(i).attributes()).isEqualTo(made.get(i).attributes());
          Geometry one = bundled.get(i).geometry().orElse(null);
          Geometry other = made.get(i).geometry().orElse(null);
          assertThat(one == null ? other == null : one.equalsExact(other, TOLERANCE))
              .as(file + " feature " + i)
              .isTrue();
        }
        compared++;
      }
    }
    assertThat(compared).isEqualTo(13);
  }

  private static List<SourceFeature> features(Path file) {
    return GeoFiles.read(file, LayerRole.SCARS).features();
  }
}
