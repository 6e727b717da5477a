package org.meadowmark.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.read.SourceFeature;

/** The committed first survey is what the generator makes. */
class FirstSurveyTest {
  private static final Path BUNDLED =
      Path.of(System.getProperty("meadowmark.root"), "gis-samples", "data", "first-survey");

  /** Far below a millimetre on the grid. */
  private static final double TOLERANCE_METRES = 1e-6;

  @TempDir static Path folder;
  private static Path fresh;

  @BeforeAll
  static void make() {
    fresh = folder.resolve("fresh");
    FirstSurveyWriter.write(fresh, SampleEstuary.MADE);
  }

  @Test
  void textsAreEqualByteForByte() {
    for (String name : List.of("tracks.gpx", "channels.geojson")) {
      assertThat(BUNDLED.resolve(name)).hasSameTextualContentAs(fresh.resolve(name));
    }
  }

  @Test
  void theShapefileHoldsTheBedsAndLacksItsReferenceSystem() {
    GeoFiles.Content bundled = GeoFiles.read(BUNDLED.resolve("beds.shp"), LayerRole.BEDS);
    List<SourceFeature> made = GeoFiles.read(fresh.resolve("beds.gpkg"), LayerRole.BEDS).features();

    assertThat(BUNDLED.resolve("beds.prj")).doesNotExist();
    assertThat(bundled.findings()).isEmpty();
    assertThat(bundled.features()).hasSameSizeAs(made).isNotEmpty();
    for (int i = 0; i < made.size(); i++) {
      SourceFeature feature = bundled.features().get(i);
      assertThat(feature.attributes()).isEqualTo(made.get(i).attributes());
      Geometry one = feature.geometry().orElseThrow().norm();
      Geometry other = made.get(i).geometry().orElseThrow().norm();
      assertThat(part(one).equalsExact(part(other), TOLERANCE_METRES)).as("bed " + i).isTrue();
    }
  }

  /** A shapefile does not tell a polygon from a collection of one. */
  private static Geometry part(Geometry geometry) {
    assertThat(geometry.getNumGeometries()).isEqualTo(1);
    return geometry.getGeometryN(0);
  }
}
