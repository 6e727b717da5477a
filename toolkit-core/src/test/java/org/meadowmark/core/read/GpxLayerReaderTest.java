package org.meadowmark.core.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.meadowmark.core.read.Broken.assertRefused;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GpxLayerReaderTest {
  @TempDir Path folder;

  @Test
  void readsWaypointsRoutesAndTrackSegments() {
    ReadLayer layer = ReadLayer.of(ReadLayer.fixture("track.gpx"));
    assertThat(layer.ids()).containsExactly("waypoint 1", "route 1", "track 1.1", "track 1.2");
    assertThat(layer.header().featureCount()).isEqualTo(4);
    assertThat(layer.crsCode()).isEqualTo("EPSG:4326");
    assertThat(layer.wkt(0)).isEqualTo("POINT (-82.61 27.65)");
    assertThat(layer.wkt(1)).isEqualTo("LINESTRING (-82.6 27.64, -82.6 27.65)");
    assertThat(layer.wkt(2)).isEqualTo("LINESTRING Z(-82.6 27.6 -1.5, -82.61 27.61 -1.4)");
    assertThat(layer.geometry(3).getNumPoints()).isEqualTo(3);
    assertThat(layer.attributes(0))
        .containsEntry("name", "Anse à l'Étang")
        .containsEntry("description", "anchor hole")
        .containsEntry("type", "anchor")
        .containsEntry("time", LocalDate.of(2024, 6, 30));
    assertThat(layer.attributes(2))
        .containsEntry("name", "dive 1")
        .containsEntry("comment", "by boat")
        .containsEntry("type", "propeller")
        .containsEntry("time", LocalDate.of(2024, 6, 30));
    assertThat(layer.attributes(3)).doesNotContainKey("time");
  }

  @Test
  void aKindCanBeNamedAsLayer() {
    Path file = ReadLayer.fixture("track.gpx");
    assertThat(ReadLayer.of(file, "tracks").ids()).containsExactly("track 1.1", "track 1.2");
    assertThat(ReadLayer.of(file, "routes").ids()).containsExactly("route 1");
    assertThat(ReadLayer.of(file, "waypoints").ids()).containsExactly("waypoint 1");
  }

  @Test
  void readsVersionOneZeroAndOtherEncodings() throws IOException {
    String text =
        "<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?>\n<!-- from a device -->\n"
            + "<gpx version=\"1.0\" creator=\"invented\" xmlns=\"http://www.topografix.com/GPX/1/0\">"
            + "<trk><name>é</name><trkseg><trkpt lat=\"1\" lon=\"2\"><speed>1.5</speed></trkpt>"
            + "<trkpt lat=\"3\" lon=\"4\"/></trkseg></trk></gpx>";
    Path file = folder.resolve("old.gpx");
    Files.write(file, text.getBytes(StandardCharsets.ISO_8859_1));
    ReadLayer layer = ReadLayer.of(file);
    assertThat(layer.attributes(0)).containsEntry("name", "é");
    assertThat(layer.wkt(0)).isEqualTo("LINESTRING (2 1, 4 3)");
  }

  @Test
  void segmentsWithoutALineAreFindings() throws IOException {
    ReadLayer layer =
        ReadLayer.of(
            write(
                "<trk><trkseg><trkpt lat=\"1\" lon=\"2\"/></trkseg>"
                    + "<trkseg><trkpt lat=\"1\" lon=\"2\"/><trkpt lat=\"1\" lon=\"3\"/></trkseg></trk>"));
    assertThat(layer.ids()).containsExactly("track 1.2");
    assertThat(layer.findings().get(0).message()).contains("track 1.1: it has a single point");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<wpt lat=\"95\" lon=\"2\"/>",
        "<wpt lat=\"1\" lon=\"200\"/>",
        "<wpt lat=\"north\" lon=\"2\"/>",
        "<wpt lon=\"2\"/>",
        "<trk><trkseg><trkpt lat=\"95\" lon=\"2\"/></trkseg></trk>",
        "<trk><trkseg>"
      })
  void whatIsNoPositionIsRefused(String content) throws IOException {
    assertRefused(write(content)).contains("is no valid GPX (");
  }

  @Test
  void aPositionThatIsNotFiniteIsLeftToTheCheck() throws IOException {
    assertThat(ReadLayer.of(write("<wpt lat=\"NaN\" lon=\"2\"/>")).geometry(0).getCoordinate().y)
        .isNaN();
  }

  @Test
  void aLatitudeOutOfRangeIsNamed() throws IOException {
    assertRefused(write("<wpt lat=\"95\" lon=\"2\"/>")).contains("95");
  }

  /** The attack that OWASP describes as XML external entity processing. */
  @Test
  void documentTypesAreRefusedBeforeTheyAreFollowed() throws IOException {
    Path secret = Files.writeString(folder.resolve("secret.txt"), "secret words");
    Path file = folder.resolve("evil.gpx");
    Files.writeString(
        file,
        "<?xml version=\"1.0\"?><!DOCTYPE gpx [<!ENTITY e SYSTEM \""
            + secret.toUri()
            + "\">]><gpx version=\"1.1\" creator=\"x\"><wpt lat=\"1\" lon=\"2\"><name>&e;</name>"
            + "</wpt></gpx>");
    assertRefused(file).contains("DOCTYPE").doesNotContain("secret words");
  }

  @Test
  void otherXmlIsRefused() throws IOException {
    Path file = Files.writeString(folder.resolve("t.gpx"), "<kml><gpx/></kml>");
    assertRefused(file).contains("outermost element is kml");
    Files.writeString(file, "words");
    assertRefused(file).contains("is no valid XML");
    byte[] whole = Files.readAllBytes(ReadLayer.fixture("track.gpx"));
    for (int length = 1; length < whole.length - 2; length += 41) {
      Files.write(file, java.util.Arrays.copyOf(whole, length));
      assertRefused(file);
    }
  }

  private Path write(String content) throws IOException {
    return Files.writeString(
        folder.resolve("t.gpx"),
        "<gpx version=\"1.1\" creator=\"invented\" xmlns=\"http://www.topografix.com/GPX/1/1\">"
            + content
            + "</gpx>");
  }
}
