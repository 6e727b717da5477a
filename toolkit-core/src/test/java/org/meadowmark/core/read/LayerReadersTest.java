package org.meadowmark.core.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;
import static org.meadowmark.core.read.Broken.assertRefused;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LayerReadersTest {
  @TempDir Path folder;

  @Test
  void filesThatAreNotThereSaySo() throws IOException {
    assertRefused(folder.resolve("absent.gpkg"))
        .isEqualTo("does not exist; check the name and the folder");
    assertRefused(folder).isEqualTo("is a folder; name the file inside it");
  }

  @Test
  void devicesAreRefused() {
    Path device = Path.of("/dev/null");
    assumeTrue(Files.exists(device), "this system has no /dev/null");
    assertRefused(device).startsWith("is no ordinary file");
  }

  /** The account that runs the test may be allowed everything. */
  @Test
  void filesThatMayNotBeReadSaySo() throws IOException {
    Path file = Files.writeString(folder.resolve("a.csv"), "x,y\n1,2\n");
    assumeTrue(
        file.toFile().setReadable(false) && !Files.isReadable(file), "all files are readable");
    assertRefused(file).isEqualTo("may not be read; change the permissions of the file");
  }

  @ParameterizedTest
  @ValueSource(strings = {"a.gpkg", "a.shp", "a.geojson", "a.csv", "a.gpx", "a.xyz", "a"})
  void zeroBytesAreRefused(String name) throws IOException {
    assertRefused(Files.createFile(folder.resolve(name)))
        .isEqualTo("has zero bytes; get a whole copy");
  }

  @Test
  void unknownFormatsAreRefusedWithAListOfThoseKnown() throws IOException {
    assertRefused(Files.writeString(folder.resolve("a.docx"), "words"))
        .startsWith("is not of a known format; give one of: GeoPackage (.gpkg), shapefile (.shp)");
    assertRefused(Files.writeString(folder.resolve("a.dbf"), "words"))
        .isEqualTo("is a part of a shapefile; name its .shp file");
  }

  @ParameterizedTest
  @CsvSource({
    "ten-32617.gpkg, data.db",
    "ten-32617.geojson, data.txt",
    "track.gpx, data.xml",
    "ten-32617.csv, DATA.CSV"
  })
  void contentDecidesBeforeTheExtension(String fixture, String name) throws IOException {
    Path file = Files.copy(ReadLayer.fixture(fixture), folder.resolve(name));
    assertThat(ReadLayer.of(file).features()).hasSizeGreaterThanOrEqualTo(4);
  }
}
