package org.meadowmark.core.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.meadowmark.core.read.Broken.assertRefused;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;

class GeoJsonLayerReaderTest {
  private static final String POINT =
      "{\"type\":\"Feature\",\"properties\":{\"a\":1},"
          + "\"geometry\":{\"type\":\"Point\",\"coordinates\":[-82.5,27.5]}}";

  @TempDir Path folder;

  /** RFC 7946, section 4: longitude and latitude on WGS 84. */
  @Test
  void withoutCrsMemberItIsWgs84() throws IOException {
    ReadLayer layer = read(collection(POINT));
    assertThat(layer.crsCode()).isEqualTo("EPSG:4326");
    assertThat(layer.wkt(0)).isEqualTo("POINT (-82.5 27.5)");
    assertThat(ReadLayer.of(ReadLayer.fixture("ten-rfc7946.geojson")).crsCode())
        .isEqualTo("EPSG:4326");
  }

  @ParameterizedTest
  @CsvSource({
    "urn:ogc:def:crs:EPSG::2882, EPSG:2882",
    "urn:ogc:def:crs:EPSG:9.8:2882, EPSG:2882",
    "urn:ogc:def:crs:OGC:1.3:CRS84, EPSG:4326",
    "urn:ogc:def:crs:OGC::CRS84, EPSG:4326",
    "http://www.opengis.net/def/crs/EPSG/0/32617, EPSG:32617",
    "http://www.opengis.net/def/crs/OGC/1.3/CRS84, EPSG:4326",
    "EPSG:32617, EPSG:32617"
  })
  void oldCrsMembersAreUnderstood(String name, String code) throws IOException {
    String crs = "\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"" + name + "\"}},";
    assertThat(read("{\"type\":\"FeatureCollection\"," + crs + "\"features\":[]}").crsCode())
        .isEqualTo(code);
    assertThat(read("{\"features\":[]," + crs + "\"type\":\"FeatureCollection\"}").crsCode())
        .isEqualTo(code);
  }

  @Test
  void aCrsThatIsNullOrStrangeIsNone() throws IOException {
    ReadLayer none = read("{\"type\":\"FeatureCollection\",\"crs\":null,\"features\":[]}");
    assertThat(none.header().crs()).isEmpty();
    assertThat(none.findings()).isEmpty();
    ReadLayer strange =
        read(
            "{\"type\":\"FeatureCollection\",\"features\":[],"
                + "\"crs\":{\"type\":\"link\",\"properties\":{\"href\":\"x\"}}}");
    assertThat(strange.header().crs()).isEmpty();
    assertThat(strange.findings().get(0).code()).isEqualTo(FindingCode.CRS_UNKNOWN);
  }

  @Test
  void readsASingleFeatureAndABareGeometry() throws IOException {
    ReadLayer feature = read(POINT);
    assertThat(feature.attributes(0)).containsEntry("a", 1L);
    assertThat(feature.header().featureCount()).isEqualTo(1);
    ReadLayer geometry = read("{\"type\":\"LineString\",\"coordinates\":[[1,2,-3],[4,5,-6]]}");
    assertThat(geometry.wkt(0)).isEqualTo("LINESTRING Z(1 2 -3, 4 5 -6)");
    ReadLayer mixed =
        read(
            "{\"type\":\"GeometryCollection\",\"geometries\":[{\"type\":\"Point\","
                + "\"coordinates\":[1,2]},{\"type\":\"LineString\",\"coordinates\":[[1,2],[3,4]]}]}");
    assertThat(mixed.wkt(0)).isEqualTo("GEOMETRYCOLLECTION (POINT (1 2), LINESTRING (1 2, 3 4))");
  }

  @Test
  void idsAndPropertiesKeepTheirMeaning() throws IOException {
    ReadLayer layer =
        read(
            collection(
                "{\"type\":\"Feature\",\"id\":\"s-1\",\"geometry\":null,\"properties\":"
                    + "{\"whole\":5,\"part\":5.5,\"yes\":true,\"none\":null,\"day\":\"2024-06-30\","
                    + "\"text\":\"2024-13-45\",\"list\":[1,2],\"huge\":123456789012345678901}}",
                "{\"type\":\"Feature\",\"id\":7,\"geometry\":null,\"properties\":null}",
                "{\"type\":\"Feature\",\"geometry\":null,\"properties\":{\"late\":1}}"));
    assertThat(layer.ids()).containsExactly("s-1", "7", "3");
    assertThat(layer.header().attributeNames())
        .containsExactly("whole", "part", "yes", "none", "day", "text", "list", "huge", "late");
    assertThat(layer.attributes(0))
        .containsEntry("whole", 5L)
        .containsEntry("part", 5.5)
        .containsEntry("yes", true)
        .containsEntry("day", LocalDate.of(2024, 6, 30))
        .containsEntry("text", "2024-13-45")
        .containsEntry("list", "[1,2]")
        .containsEntry("huge", 123456789012345678901.0)
        .doesNotContainKey("none");
    assertThat(layer.wkt(0)).isEqualTo("none");
  }

  @ParameterizedTest
  @ValueSource(strings = {"NaN", "Infinity", "-Infinity", "1e999"})
  void coordinatesThatAreNotFiniteSpoilTheirFeatureOnly(String number) throws IOException {
    ReadLayer layer = read(collection(POINT, POINT.replace("27.5", number), POINT));
    assertThat(layer.ids()).containsExactly("1", "3");
    assertThat(layer.findings()).hasSize(1);
    assertThat(layer.findings().get(0).code()).isEqualTo(FindingCode.NON_FINITE_COORDINATE);
    assertThat(layer.findings().get(0).treatment()).isEqualTo(Treatment.SKIPPED);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"type\":\"Polygon\",\"coordinates\":[[[0,0],[1,1]]]}",
        "{\"type\":\"Polygon\",\"coordinates\":[[0,0],[1,1]]}",
        "{\"type\":\"LineString\",\"coordinates\":[[0,0]]}",
        "{\"type\":\"LineString\",\"coordinates\":[[0,null],[1,1]]}",
        "{\"type\":\"LineString\",\"coordinates\":\"0 0\"}",
        "{\"type\":\"LineString\"}",
        "{\"type\":\"Circle\",\"coordinates\":[0,0]}",
        "{\"coordinates\":[0,0]}",
        "5"
      })
  void geometriesThatCannotBeReadAreFindings(String geometry) throws IOException {
    ReadLayer layer =
        read(
            collection(
                POINT,
                "{\"type\":\"Feature\",\"properties\":{},\"geometry\":" + geometry + "}",
                "5",
                POINT));
    assertThat(layer.ids()).containsExactly("1", "4");
    assertThat(layer.findings())
        .extracting(finding -> finding.where().featureId())
        .containsExactly("2", "3");
    assertThat(layer.findings().get(0).code()).isEqualTo(FindingCode.UNREADABLE_FEATURE);
    assertThat(layer.findings().get(0).problem()).doesNotContain("Exception").doesNotContain("\n");
  }

  @Test
  void aCutNamesTheLastWholeFeature() throws IOException {
    String whole = Files.readString(ReadLayer.fixture("ten-4326.geojson"));
    int inThird = whole.indexOf("\"id\": 3") + 60;
    assertRefused(write(whole.substring(0, inThird)))
        .contains("feature 2 is the last whole one")
        .contains("get a whole copy");
    assertRefused(write(whole.substring(0, whole.indexOf("\"id\": 1") + 60)))
        .contains("no feature is whole");
    assertRefused(
            write(
                collection(POINT.replace("{\"type\":\"F", "{\"id\":\"x9\",\"type\":\"F"))
                    .replace("]}", "")))
        .contains("feature");
    for (int length = 1; length < whole.stripTrailing().length(); length += 97) {
      assertRefused(write(whole.substring(0, length)));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"type\":\"FeatureCollection\"}",
        "{\"type\":\"FeatureCollection\",\"features\":{}}",
        "{\"type\":\"Topology\",\"objects\":{}}",
        "{\"a\":1}",
        "[]",
        "{}",
        "{\"type\":\"FeatureCollection\",\"features\":[]} {}",
        "{\"type\":\"FeatureCollection\",\"features\":[oops]}",
        "<html>"
      })
  void whatIsNoGeoJsonIsRefused(String text) throws IOException {
    assertRefused(write(text)).contains("; ");
  }

  @Test
  void deepNestingIsRefusedNotFollowed() throws IOException {
    assertRefused(write("{\"type\":\"FeatureCollection\",\"features\":" + "[".repeat(100_000)))
        .contains("valid JSON");
  }

  @Test
  void aByteOrderMarkIsPassedOver() throws IOException {
    assertThat(read("\uFEFF" + collection(POINT)).features()).hasSize(1);
  }

  private static String collection(String... features) {
    return "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}";
  }

  private Path write(String text) throws IOException {
    return Files.writeString(folder.resolve("t.geojson"), text);
  }

  private ReadLayer read(String text) throws IOException {
    return ReadLayer.of(write(text));
  }
}
