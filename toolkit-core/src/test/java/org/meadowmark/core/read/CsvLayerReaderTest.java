package org.meadowmark.core.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.meadowmark.core.read.Broken.assertRefused;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.LayerSource.GeometryColumns;

class CsvLayerReaderTest {
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"wkt", "geom", "geometry", "the_geom", "WKT", "Geometry"})
  void usualTextColumnsAreFound(String name) throws IOException {
    ReadLayer layer = read("id," + name + "\n1,\"LINESTRING (0 1, 2 3)\"\n2,\n");
    assertThat(layer.wkt(0)).isEqualTo("LINESTRING (0 1, 2 3)");
    assertThat(layer.wkt(1)).isEqualTo("none");
    assertThat(layer.header().attributeNames()).containsExactly("id");
    assertThat(layer.header().crs()).isEmpty();
    assertThat(layer.attributes(0)).doesNotContainKey(name);
  }

  @ParameterizedTest
  @CsvSource({"lon,lat", "longitude,latitude", "x,y", "easting,northing", "X,Y", "Lon,Lat"})
  void usualCoordinateColumnsAreFound(String x, String y) throws IOException {
    ReadLayer layer = read("id," + y + "," + x + "\n1,27.5,-82.5\n2,,\n3,1e1,+2\n");
    assertThat(layer.wkt(0)).isEqualTo("POINT (-82.5 27.5)");
    assertThat(layer.wkt(1)).isEqualTo("none");
    assertThat(layer.wkt(2)).isEqualTo("POINT (2 10)");
  }

  @Test
  void namedColumnsWin() throws IOException {
    Path file = write("wkt,shape,e,n\nPOINT (9 9),POINT (1 2),3,4\n");
    assertThat(ReadLayer.of(with(file, "shape", null, null)).wkt(0)).isEqualTo("POINT (1 2)");
    assertThat(ReadLayer.of(with(file, null, "E", "N")).wkt(0)).isEqualTo("POINT (3 4)");
    assertRefused(with(file, "outline", null, null))
        .isEqualTo("t: has no column 'outline'; use one of: wkt, shape, e, n");
    assertRefused(with(file, null, "e", null)).contains("name the x and the y column");
  }

  @Test
  void aBadTextOnLineSevenIsAFindingWithItsLine() throws IOException {
    StringBuilder text = new StringBuilder("id,wkt\n");
    for (int line = 2; line <= 9; line++) {
      text.append(line).append(line == 7 ? ",\"POLYGON ((0 0, 1 1\"\n" : ",POINT (1 2)\n");
    }
    ReadLayer layer = read(text.toString());
    assertThat(layer.ids()).containsExactly("2", "3", "4", "5", "6", "8", "9");
    assertThat(layer.findings()).hasSize(1);
    assertThat(layer.findings().get(0).code()).isEqualTo(FindingCode.UNREADABLE_FEATURE);
    assertThat(layer.findings().get(0).treatment()).isEqualTo(Treatment.SKIPPED);
    assertThat(layer.findings().get(0).message())
        .startsWith(folder.resolve("t.csv") + ": t: 7: the geometry on line 7 cannot be read (")
        .doesNotContain("\n");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "LINESTRING (0 0)",
        "POLYGON ((0 0, 1 1, 2 2))",
        "CIRCLE (0 0)",
        "POINT (a b)",
        "POINT",
        "0101000000",
        "LINESTRING (0 0, 1"
      })
  void everyBadTextIsAFinding(String wkt) throws IOException {
    ReadLayer layer = read("id,wkt\n1,\"" + wkt + "\"\n2,POINT (1 2)\n");
    assertThat(layer.ids()).containsExactly("3");
    assertThat(layer.findings()).hasSize(1);
  }

  @Test
  void deepNestingIsAFinding() throws IOException {
    ReadLayer layer =
        read("id,wkt\n1,\"" + "GEOMETRYCOLLECTION (".repeat(200_000) + "\"\n2,POINT (1 2)\n");
    assertThat(layer.ids()).containsExactly("3");
    assertThat(layer.findings()).hasSize(1);
  }

  @Test
  void coordinatesThatAreNoNumbersAreFindingsAndNanIsLeftToTheCheck() throws IOException {
    ReadLayer layer = read("x,y\n1,2\n1,\n\"1,5\",2\nNaN,2\n");
    assertThat(layer.ids()).containsExactly("2", "5");
    assertThat(layer.geometry(1).getCoordinate().x).isNaN();
    assertThat(layer.findings()).extracting(f -> f.where().featureId()).containsExactly("3", "4");
  }

  @Test
  void sridBeforeTheTextIsTheReferenceSystem() throws IOException {
    ReadLayer layer =
        read("id,wkt\n1,SRID=2882;POINT (1 2)\n2,srid=2882;POINT (3 4)\n3,SRID=4326;POINT (5 6)\n");
    assertThat(layer.crsCode()).isEqualTo("EPSG:2882");
    assertThat(layer.wkt(1)).isEqualTo("POINT (3 4)");
    assertThat(layer.findings())
        .extracting(f -> f.code())
        .containsExactly(FindingCode.CRS_MISMATCH);
  }

  @ParameterizedTest
  @ValueSource(strings = {",", ";", "\t"})
  void theSeparatorIsFound(String separator) throws IOException {
    String text = "id,\"na,me;\",x,y\n1,\"a,b;c\",3,4\n";
    ReadLayer layer =
        read(
            text.replace("id,", "id" + separator)
                .replace("\",", "\"" + separator)
                .replace("x,y", "x" + separator + "y")
                .replace("1,\"", "1" + separator + "\"")
                .replace("3,4", "3" + separator + "4"));
    assertThat(layer.attributes(0)).containsEntry("na,me;", "a,b;c").containsEntry("id", 1L);
    assertThat(layer.wkt(0)).isEqualTo("POINT (3 4)");
  }

  @Test
  void byteOrderMarkLineEndsAndQuotesAreHandled() throws IOException {
    for (String end : new String[] {"\n", "\r\n", "\r"}) {
      for (String last : new String[] {end, ""}) {
        String text =
            "\uFEFFid,note,x,y"
                + end
                + "1,\"two"
                + (end.equals("\r") ? "" : end)
                + "lines \"\"q\"\"\",3,4"
                + end
                + end
                + "2,é,5,6"
                + last;
        ReadLayer layer = read(text);
        assertThat(layer.header().attributeNames()).containsExactly("id", "note");
        assertThat(layer.attributes(0).get("note").toString()).endsWith("lines \"q\"");
        assertThat(layer.ids())
            .as("lines ended by %s, the last by %s", end.length(), last.length())
            .containsExactly("2", end.equals("\r") ? "4" : "5");
      }
    }
  }

  @Test
  void valuesAreTypedByTheirLook() throws IOException {
    ReadLayer layer =
        read(
            "a,b,c,d,e,f,g,h,i,x,y\n"
                + "12,-0.5,2024-06-30,2024/06/30,007,1e3,2024-02-30,-,999999999999999999999,1,2\n");
    assertThat(layer.attributes(0))
        .containsEntry("a", 12L)
        .containsEntry("b", -0.5)
        .containsEntry("c", LocalDate.of(2024, 6, 30))
        .containsEntry("d", LocalDate.of(2024, 6, 30))
        .containsEntry("e", "007")
        .containsEntry("f", 1000.0)
        .containsEntry("g", "2024-02-30")
        .containsEntry("h", "-")
        .containsEntry("i", 1e21);
  }

  @Test
  void isTheSameInEveryLocale() throws IOException {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("tr"));
      assertThat(read("ID,EASTING,NORTHING\n1,1.5,2\n").wkt(0)).isEqualTo("POINT (1.5 2)");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void recordsOfTheWrongLengthAreFindings() throws IOException {
    ReadLayer layer = read("id,x,y\n1,2,3\n1,2\n1,2,3,4\n5,6,7\n");
    assertThat(layer.ids()).containsExactly("2", "5");
    assertThat(layer.findings().get(0).problem()).isEqualTo("line 3 has 2 cells, the header 3");
  }

  @Test
  void whatCannotBeReadAtAllIsRefused() throws IOException {
    assertRefused(write("id,depth\n1,2\n"))
        .contains("has no column that looks like a geometry (columns: id, depth)");
    assertRefused(write("id,x,y,X\n1,2,3,4\n")).contains("two columns named 'X'");
    assertRefused(write("\n\n")).contains("no header line");
    assertRefused(write("id,x,y\n1,2,3\n2,\"open,3,4\n")).contains("after line 2");
    Path latin = folder.resolve("latin.csv");
    Files.write(latin, "id,x,y\né,2,3\n".getBytes(StandardCharsets.ISO_8859_1));
    assertRefused(latin).contains("is not UTF-8; save it as CSV UTF-8");
    Path utf16 = folder.resolve("utf16.csv");
    Files.write(utf16, "id,x,y\n1,2,3\n".getBytes(StandardCharsets.UTF_16));
    assertRefused(utf16).contains("is not UTF-8");
  }

  private static LayerSource with(Path file, String wkt, String x, String y) {
    LayerSource plain = LayerSource.of(LayerRole.SCARS, file);
    return new LayerSource(
        plain.role(),
        file,
        plain.fileLabel(),
        plain.layer(),
        plain.crs(),
        plain.axisOrder(),
        plain.attributes(),
        plain.valueNames(),
        plain.widthUnit(),
        new GeometryColumns(
            Optional.ofNullable(wkt), Optional.ofNullable(x), Optional.ofNullable(y)));
  }

  private Path write(String text) throws IOException {
    return Files.writeString(folder.resolve("t.csv"), text);
  }

  private ReadLayer read(String text) throws IOException {
    return ReadLayer.of(write(text));
  }
}
