package org.meadowmark.core.write;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.meadowmark.core.write.Tables.FULL;
import static org.meadowmark.core.write.Tables.NOTHING;
import static org.meadowmark.core.write.Tables.row;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.write.ResultTable.GeometryKind;

class GeoJsonTableWriterTest {
  private static final String CLOCKWISE_WITH_HOLE =
      "POLYGON ((-82 27, -82 28, -81 28, -81 27, -82 27),"
          + " (-81.6 27.4, -81.4 27.4, -81.4 27.6, -81.6 27.6, -81.6 27.4))";

  @TempDir Path folder;

  /** RFC 7946, section 3.1.6: exterior rings are counterclockwise, interior rings clockwise. */
  @Test
  void ringsFollowTheRightHandRule() throws IOException {
    JsonNode rings =
        written(Tables.of("t", GeometryKind.POLYGON, row(FULL, CLOCKWISE_WITH_HOLE)))
            .at("/features/0/geometry/coordinates");
    assertThat(rings.get(0).toString()).isEqualTo("[[-82,27],[-81,27],[-81,28],[-82,28],[-82,27]]");
    assertThat(rings.get(1).toString())
        .isEqualTo("[[-81.6,27.4],[-81.6,27.6],[-81.4,27.6],[-81.4,27.4],[-81.6,27.4]]");
  }

  @Test
  void propertiesKeepTheirTypes() throws IOException {
    JsonNode features =
        written(
                Tables.of(
                    "t", GeometryKind.MULTIPOLYGON, row(FULL, CLOCKWISE_WITH_HOLE), row(NOTHING)))
            .get("features");
    assertThat(features.get(0).get("properties").toString())
        .isEqualTo(
            "{\"name\":\"Étang\",\"scar_count\":3,\"area_m2\":59.91,"
                + "\"surveyed\":\"2024-06-30\",\"scarred\":true}");
    assertThat(features.at("/0/geometry/type").asText()).isEqualTo("MultiPolygon");
    assertThat(features.at("/1/geometry").isNull()).isTrue();
    assertThat(features.at("/1/properties/area_m2").isNull()).isTrue();
  }

  @Test
  void roundsToNineDecimals() throws IOException {
    JsonNode features =
        written(
                Tables.of(
                    "t",
                    GeometryKind.GEOMETRY,
                    row(FULL, "POINT (-81.12345678951 -0.00000000001)"),
                    row(FULL, "GEOMETRYCOLLECTION (POINT (1 2), LINESTRING (0 0, 1e-9 1))"),
                    row(FULL, "MULTIPOINT ((1 2), (3 4))")))
            .get("features");
    assertThat(features.at("/0/geometry/coordinates").toString()).isEqualTo("[-81.12345679,0]");
    assertThat(features.at("/1/geometry/geometries/1/coordinates").toString())
        .isEqualTo("[[0,0],[1.0E-9,1]]");
    assertThat(features.at("/2/geometry/coordinates").toString()).isEqualTo("[[1,2],[3,4]]");
  }

  @Test
  void metresAreRefused() {
    ResultTable metres = Tables.of("t", GeometryKind.POINT, row(FULL, "POINT (340000 3060000)"));
    assertThatThrownBy(() -> written(metres))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("transform to WGS 84");
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void gdalReadsItWithoutAWarning() throws Exception {
    written(Tables.of("t", GeometryKind.POLYGON, row(FULL, CLOCKWISE_WITH_HOLE), row(NOTHING)));
    Gdal.Run info = Gdal.run("ogrinfo", "-al", folder.resolve("t.geojson").toString());
    assertThat(info.exitCode()).isZero();
    assertThat(info.warned()).as(info.output()).isFalse();
    assertThat(info.output())
        .contains("Feature Count: 2", "surveyed (Date) = 2024/06/30", "area_m2 (Real) = 59.91");
  }

  private JsonNode written(ResultTable table) throws IOException {
    Path file = folder.resolve("t.geojson");
    GeoJsonTableWriter.write(file, false, table);
    return new ObjectMapper().readTree(Files.readAllBytes(file));
  }
}
