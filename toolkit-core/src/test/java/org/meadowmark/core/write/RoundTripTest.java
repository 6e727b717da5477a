package org.meadowmark.core.write;

import static org.assertj.core.api.Assertions.assertThat;
import static org.meadowmark.core.write.Tables.FULL;
import static org.meadowmark.core.write.Tables.NOTHING;
import static org.meadowmark.core.write.Tables.row;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.read.ReadLayer;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** What is written is read back equal, by our readers and through GDAL into other formats. */
class RoundTripTest {
  private static final String WGS_84 =
      "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563]],"
          + "PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433],"
          + "AUTHORITY[\"EPSG\",\"4326\"]]";

  private static final ResultTable MIXED =
      Tables.of(
          "mixed",
          GeometryKind.GEOMETRY,
          row(FULL, "LINESTRING (-82.6 27.6, -82.61 27.612345678)"),
          row(
              FULL,
              "POLYGON ((-82 27, -81 27, -81 28, -82 28, -82 27),"
                  + " (-81.6 27.4, -81.6 27.6, -81.4 27.6, -81.4 27.4, -81.6 27.4))"),
          row(NOTHING, "MULTIPOINT ((-82 27), (-81 27))"),
          row(FULL));

  @TempDir Path folder;

  @Test
  void geoPackageIsReadBackEqual() {
    Path file = folder.resolve("t.gpkg");
    GeoPackageWriter.write(file, false, "EPSG:4326", WGS_84, List.of(MIXED), Instant.EPOCH);
    assertEqual(ReadLayer.of(file), true);
  }

  @Test
  void geoJsonIsReadBackEqual() {
    Path file = folder.resolve("t.geojson");
    GeoJsonTableWriter.write(file, false, MIXED);
    assertEqual(ReadLayer.of(file), true);
  }

  /** CSV has no truth values: they come back as text. */
  @Test
  void csvIsReadBackEqual() {
    Path file = folder.resolve("t.csv");
    CsvTableWriter.write(file, false, MIXED, true);
    assertEqual(ReadLayer.of(file), false);
  }

  /** GDAL has no truth values in some formats either, so those are left out here. */
  @ParameterizedTest
  @CsvSource({"GPKG, gpkg", "GeoJSON, geojson", "CSV, csv"})
  void gdalConvertsWithoutAWarningAndNothingIsLost(String format, String extension)
      throws Exception {
    Path file = folder.resolve("t.gpkg");
    Path copy = folder.resolve("copy." + extension);
    GeoPackageWriter.write(file, false, "EPSG:4326", WGS_84, List.of(MIXED), Instant.EPOCH);
    String[] options =
        format.equals("CSV") ? new String[] {"-lco", "GEOMETRY=AS_WKT"} : new String[0];
    List<String> command = new java.util.ArrayList<>(List.of("ogr2ogr", "-f", format));
    command.addAll(List.of(options));
    command.addAll(List.of(copy.toString(), file.toString()));
    Gdal.Run run = Gdal.run(command.toArray(new String[0]));
    assertThat(run.output()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertEqual(ReadLayer.of(copy), false);
  }

  private static void assertEqual(ReadLayer layer, boolean withTruth) {
    assertThat(layer.findings()).isEmpty();
    assertThat(layer.features()).hasSize(4);
    int index = 0;
    for (ResultTable.Row row : MIXED.rows()) {
      for (int i = 0; i < MIXED.columns().size(); i++) {
        Column column = MIXED.columns().get(i);
        if (withTruth || column.type() != Column.Type.BOOLEAN) {
          assertThat(layer.attributes(index).get(column.name()))
              .as(column.name())
              .isEqualTo(row.values().get(i));
        }
      }
      Optional<Geometry> read = layer.features().get(index).geometry();
      assertThat(read.isPresent()).isEqualTo(row.geometry().isPresent());
      if (read.isPresent()) {
        assertThat(read.get().equalsExact(row.geometry().get(), 0))
            .as(read + " is not " + row.geometry())
            .isTrue();
      }
      index++;
    }
  }
}
