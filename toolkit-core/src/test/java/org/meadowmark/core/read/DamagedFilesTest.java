package org.meadowmark.core.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.meadowmark.core.model.SurveyInputException;

/**
 * Files with random damage are read, wholly or in part, or refused in one line: no other failure
 * gets out, and no stated length is believed so far that memory runs out.
 */
class DamagedFilesTest {
  private static final int DAMAGED_COPIES = 300;
  private static final long SEED = 20240630;

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "ten-4326.gpkg, gpkg",
    "ten-4326.geojson, geojson",
    "ten-4326.csv, csv",
    "track.gpx, gpx",
    "areas-4326, shp",
    "areas-4326, shx",
    "areas-4326, dbf",
    "lines-xym, shp"
  })
  void nothingButARefusalGetsOut(String fixture, String part) throws IOException {
    boolean shapefile = !fixture.contains(".");
    if (shapefile) {
      for (String extension : List.of("shp", "shx", "dbf")) {
        Files.copy(
            ReadLayer.fixture(fixture + "." + extension),
            folder.resolve("t." + extension),
            StandardCopyOption.REPLACE_EXISTING);
      }
    }
    byte[] whole =
        Files.readAllBytes(ReadLayer.fixture(shapefile ? fixture + "." + part : fixture));
    Path damagedFile = folder.resolve("t." + part);
    Path named = shapefile ? folder.resolve("t.shp") : damagedFile;
    Random random = new Random(SEED);
    PrintStream standardError = System.err;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    System.setErr(new PrintStream(printed, true, StandardCharsets.UTF_8));
    int noticed = 0;
    try {
      for (int copy = 0; copy < DAMAGED_COPIES; copy++) {
        Files.write(damagedFile, damaged(whole, random));
        noticed += read(named, "copy " + copy + " of " + fixture + " (" + part + ")");
      }
    } finally {
      System.setErr(standardError);
    }
    assertThat(noticed).as("damage that was noticed").isPositive();
    assertThat(printed.toString(StandardCharsets.UTF_8)).doesNotContain("Error");
  }

  private static byte[] damaged(byte[] whole, Random random) {
    byte[] damaged = whole.clone();
    int changes = 1 + random.nextInt(6);
    for (int i = 0; i < changes; i++) {
      damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
    }
    return damaged;
  }

  private static int read(Path file, String what) {
    try {
      return ReadLayer.of(file).findings().size();
    } catch (SurveyInputException e) {
      assertThat(e.getMessage()).startsWith(file + ": ").doesNotContain("\n");
      return 1;
    } catch (RuntimeException | Error e) {
      return fail(what, e);
    }
  }
}
