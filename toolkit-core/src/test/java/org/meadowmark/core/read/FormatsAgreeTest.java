package org.meadowmark.core.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * The ten features of {@code formats/make-fixtures.sh}, as GDAL wrote them in every format and
 * reference system, are read alike.
 */
class FormatsAgreeTest {
  private static final List<String> NAMES =
      List.of("id", "kind", "name", "width", "shoots", "seen");

  /** The values that make-fixtures.sh states. */
  private static final Map<Object, Map<String, Object>> ATTRIBUTES = new LinkedHashMap<>();

  private static final Map<Object, Optional<String>> GEOMETRIES_UTM = new LinkedHashMap<>();

  static {
    expect(
        1,
        "line",
        "Étang à l'anse",
        0.35,
        12L,
        "2024-06-30",
        "LINESTRING Z (340000.5 3060000.25 -1.5,340100 3060050 -2,340180.125 3060030 -1)");
    expect(
        2,
        "line",
        "comma, and \"quote\"",
        0.4,
        0L,
        "1999-12-31",
        "LINESTRING Z (340000 3060100 0,340200 3060100 0)");
    expect(3, "line", null, null, null, null, "LINESTRING Z (340000 3060200 -1,340010 3060210 -1)");
    expect(
        4,
        "line",
        "two parts",
        1.25,
        7L,
        "2024-02-29",
        "MULTILINESTRING Z ((340000 3060300 0,340010 3060300 0),"
            + "(340020 3060300 0,340040 3060300 0))");
    expect(5, "line", "no shape", 0.3, 1L, "2024-01-01", null);
    expect(
        6,
        "area",
        "plain",
        12.5,
        -3L,
        "2023-05-06",
        "POLYGON Z ((341000 3060000 0,341000 3060100 0,341100 3060100 0,341100 3060000 0,"
            + "341000 3060000 0))");
    expect(
        7,
        "area",
        "hole",
        100.0,
        123456789L,
        "2023-05-07",
        "POLYGON Z ((341200 3060000 0,341200 3060100 0,341300 3060100 0,341300 3060000 0,"
            + "341200 3060000 0),(341240 3060040 0,341260 3060040 0,341260 3060060 0,"
            + "341240 3060060 0,341240 3060040 0))");
    expect(
        8,
        "area",
        "two parts and a hole",
        0.001,
        5L,
        "2023-05-08",
        "MULTIPOLYGON Z (((341400 3060000 0,341400 3060010 0,341410 3060010 0,341400 3060000 0)),"
            + "((341500 3060000 0,341500 3060100 0,341600 3060100 0,341600 3060000 0,"
            + "341500 3060000 0),(341510 3060010 0,341530 3060010 0,341530 3060030 0,"
            + "341510 3060010 0)))");
    expect(
        9,
        "area",
        null,
        null,
        null,
        null,
        "POLYGON Z ((341700 3060000 0,341700 3060010 0,341710 3060010 0,341700 3060000 0))");
    expect(
        10,
        "area",
        "äöü ß €",
        2.0,
        2L,
        "2023-05-10",
        "POLYGON Z ((341800 3060000 0,341800 3060010 0,341810 3060010 0,341800 3060000 0))");
  }

  private static void expect(
      long id, String kind, String name, Double width, Long shoots, String seen, String wkt) {
    Map<String, Object> attributes = new LinkedHashMap<>();
    attributes.put("id", id);
    attributes.put("kind", kind);
    attributes.put("name", name);
    attributes.put("width", width);
    attributes.put("shoots", shoots);
    attributes.put("seen", seen == null ? null : LocalDate.parse(seen));
    attributes.values().removeIf(value -> value == null);
    ATTRIBUTES.put(id, attributes);
    GEOMETRIES_UTM.put(id, Optional.ofNullable(wkt));
  }

  static Stream<Arguments> files() {
    List<Arguments> files = new ArrayList<>();
    for (int srs : new int[] {32617, 4326, 2882}) {
      for (String extension : List.of("gpkg", "geojson", "csv")) {
        files.add(Arguments.of("ten-" + srs + "." + extension, srs, 1, 10));
      }
      files.add(Arguments.of("lines-" + srs + ".shp", srs, 1, 5));
      files.add(Arguments.of("areas-" + srs + ".shp", srs, 6, 10));
    }
    files.add(Arguments.of("old-crs.geojson", 2882, 1, 10));
    return files.stream();
  }

  @ParameterizedTest
  @MethodSource("files")
  void everyFormatGivesTheSameFeatures(String file, int srs, long firstId, long lastId) {
    ReadLayer layer = ReadLayer.of(ReadLayer.fixture(file));
    Map<Object, SourceFeature> byGdalAsText =
        ReadLayer.of(ReadLayer.fixture("ten-" + srs + ".csv")).byIdAttribute();

    assertThat(layer.findings()).isEmpty();
    assertThat(layer.header().attributeNames()).isEqualTo(NAMES);
    assertThat(layer.byIdAttribute().keySet())
        .containsExactlyElementsOf(LongStream.rangeClosed(firstId, lastId).boxed().toList());
    for (SourceFeature feature : layer.features()) {
      Object id = feature.attributes().get("id");
      assertThat(withWidthAsDecimal(feature.attributes()))
          .as("feature " + id)
          .isEqualTo(ATTRIBUTES.get(id));
      assertSameShape(
          feature.geometry(), byGdalAsText.get(id).geometry(), srs == 4326 ? 1e-11 : 1e-5);
    }
  }

  /** The anchor of the comparison above: the text of GDAL gives what the script states. */
  @Test
  void geometriesAreThoseOfTheScript() {
    for (String file : List.of("ten-32617.csv", "ten-32617.gpkg")) {
      ReadLayer layer = ReadLayer.of(ReadLayer.fixture(file));
      assertThat(layer.features()).hasSize(10);
      for (SourceFeature feature : layer.features()) {
        assertSameShape(
            feature.geometry(),
            GEOMETRIES_UTM.get(feature.attributes().get("id")).map(ReadLayer::parsed),
            0);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {32617, 4326, 2882})
  void referenceSystemsAreWhatTheFilesSay(int srs) {
    assertThat(ReadLayer.of(ReadLayer.fixture("ten-" + srs + ".gpkg")).crsCode())
        .isEqualTo("EPSG:" + srs);
    assertThat(ReadLayer.of(ReadLayer.fixture("ten-" + srs + ".geojson")).crsCode())
        .isEqualTo("EPSG:" + srs);
    assertThat(ReadLayer.of(ReadLayer.fixture("ten-" + srs + ".csv")).header().crs()).isEmpty();
    assertThat(
            ReadLayer.of(ReadLayer.fixture("lines-" + srs + ".shp"))
                .header()
                .crs()
                .flatMap(crs -> crs.wkt())
                .orElseThrow())
        .startsWith(srs == 4326 ? "GEOGCS[" : "PROJCS[");
  }

  @Test
  void idsAreTheFormatsOwn() {
    assertThat(ReadLayer.of(ReadLayer.fixture("ten-32617.gpkg")).ids()).startsWith("1", "2");
    assertThat(ReadLayer.of(ReadLayer.fixture("ten-32617.geojson")).ids()).startsWith("1", "2");
    assertThat(ReadLayer.of(ReadLayer.fixture("ten-32617.csv")).ids())
        .containsExactly("2", "3", "4", "5", "6", "7", "8", "9", "10", "11");
    assertThat(ReadLayer.of(ReadLayer.fixture("areas-32617.shp")).ids())
        .containsExactly("1", "2", "3", "4", "5");
  }

  /** In CSV a width of 100 looks like a whole number: nothing there says that it is none. */
  private static Map<String, Object> withWidthAsDecimal(Map<String, Object> attributes) {
    Map<String, Object> values = new LinkedHashMap<>(attributes);
    values.computeIfPresent("width", (name, width) -> ((Number) width).doubleValue());
    return values;
  }

  private static void assertSameShape(
      Optional<Geometry> actual, Optional<Geometry> expected, double tolerance) {
    assertThat(actual.isPresent()).isEqualTo(expected.isPresent());
    if (actual.isEmpty()) {
      return;
    }
    assertThat(actual.get().getGeometryType()).isEqualTo(expected.get().getGeometryType());
    assertThat(actual.get().norm().equalsExact(expected.get().norm(), tolerance))
        .as("%s%nis not%n%s", actual.get(), expected.get())
        .isTrue();
    Coordinate[] heights = actual.get().norm().getCoordinates();
    Coordinate[] expectedHeights = expected.get().norm().getCoordinates();
    for (int i = 0; i < heights.length; i++) {
      assertThat(heights[i].getZ()).isEqualTo(expectedHeights[i].getZ());
    }
  }
}
