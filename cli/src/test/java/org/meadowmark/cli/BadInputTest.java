package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Input that crews and their software really send: each ends in one line and an exit code, or in a
 * finding, and never in a stack trace or a half-written folder.
 */
class BadInputTest {
  private static final Path FIXTURES =
      Path.of(
          System.getProperty("meadowmark.root"), "toolkit-core/src/test/resources/formats/data");
  private static final String BEDS =
      "id,wkt\nb1,\"POLYGON ((500000 3000000, 500200 3000000, 500200 3000200, 500000 3000200,"
          + " 500000 3000000))\"\n";

  @TempDir Path folder;
  private Path beds;
  private Path output;

  @BeforeEach
  void goodBeds() throws IOException {
    beds = write("beds.csv", BEDS);
    output = folder.resolve("out");
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text, StandardCharsets.UTF_8);
  }

  private Terminal.Outcome assess(Path scars, String... more) {
    List<String> arguments =
        Stream.concat(
                Stream.of(
                    "assess",
                    "--name=Bad input",
                    "--scars=" + scars,
                    "--beds=" + beds,
                    "--crs=beds=EPSG:32617",
                    "--crs=scars=EPSG:32617",
                    "--output=" + output),
                Arrays.stream(more))
            .toList();
    return Terminal.run(Main.commandLine(), arguments.toArray(String[]::new));
  }

  private void assertRefused(Terminal.Outcome outcome, Path file, String... words) {
    assertThat(outcome.exitCode()).as(outcome.err()).isEqualTo(3);
    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.err())
        .startsWith("error: " + file)
        .hasLineCount(1)
        .contains(";")
        .doesNotContain("Exception", "\tat ");
    assertThat(words).allSatisfy(word -> assertThat(outcome.err()).contains(word));
    assertNothingLeft();
  }

  private void assertNothingLeft() {
    assertThat(output).doesNotExist();
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left.map(path -> path.getFileName().toString()))
          .noneMatch(name -> name.startsWith(".") || name.endsWith("-wal"));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void theGoodCaseWorks() throws IOException {
    Path scars = write("scars.csv", "id,wkt\ns1,\"LINESTRING (500010 3000010, 500090 3000010)\"\n");
    Terminal.Outcome outcome = assess(scars, "--quiet");
    assertThat(outcome.err()).isEmpty();
    assertThat(outcome.exitCode()).isZero();
    assertThat(output.resolve("results.gpkg")).exists();
  }

  private Path copyShapefile(String... endings) throws IOException {
    Path source;
    try (Stream<Path> all = Files.walk(FIXTURES.getParent())) {
      source =
          all.filter(path -> path.toString().endsWith(".shp"))
              .filter(path -> path.getFileName().toString().contains("line"))
              .sorted()
              .findFirst()
              .orElseThrow();
    }
    String stem = source.toString().substring(0, source.toString().length() - 4);
    for (String ending : endings) {
      Files.copy(Path.of(stem + ending), folder.resolve("scars" + ending));
    }
    return folder.resolve("scars.shp");
  }

  @Test
  void truncatedShapefile() throws IOException {
    Path scars = copyShapefile(".shp", ".shx", ".dbf", ".prj");
    byte[] bytes = Files.readAllBytes(scars);
    Files.write(scars, Arrays.copyOf(bytes, bytes.length - 30));
    assertRefused(assess(scars), scars);
  }

  @Test
  void shapefileWithoutItsTable() throws IOException {
    Path scars = copyShapefile(".shp", ".shx", ".prj");
    assertRefused(assess(scars), scars, ".dbf");
  }

  @Test
  void emptyGeoPackage() throws IOException {
    Path scars = Files.createFile(folder.resolve("scars.gpkg"));
    assertRefused(assess(scars), scars, "zero bytes");
  }

  @Test
  void geoPackageThatIsNoDatabase() throws IOException {
    Path scars = write("scars.gpkg", "this is no database\n".repeat(200));
    assertRefused(assess(scars), scars);
  }

  @Test
  void geoJsonCutInTheMiddleOfAFeature() throws IOException {
    String feature =
        "{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"LineString\","
            + "\"coordinates\":[[-81.0,27.1],[-81.0,27.2]]}}";
    Path scars =
        write(
            "scars.geojson",
            "{\"type\":\"FeatureCollection\",\"features\":["
                + feature
                + ","
                + feature.substring(0, 70));
    assertRefused(assess(scars), scars);
  }

  @Test
  void badTextOnLineSevenIsAFindingWithItsLine() throws IOException {
    StringBuilder text = new StringBuilder("id,wkt\n");
    for (int line = 2; line <= 9; line++) {
      text.append("s").append(line).append(",\"");
      text.append(line == 7 ? "LINESTRING (500010 300" : lineAt(line)).append("\"\n");
    }
    Path scars = write("scars.csv", text.toString());
    Terminal.Outcome outcome = assess(scars, "--quiet");
    assertThat(outcome.exitCode()).isZero();
    assertThat(outcome.err()).isEmpty();
    Terminal.Outcome check = check(scars);
    assertThat(check.out()).contains("scars: 8 read, 7 used").contains(": 7: ");
    assertThat(check.exitCode()).isZero();
  }

  @Test
  void coordinateThatIsNoNumberIsAFinding() throws IOException {
    Path scars =
        write(
            "scars.csv",
            "id,wkt\ns1,\"LINESTRING (500010 NaN, 500090 3000010)\"\ns2,\"" + lineAt(2) + "\"\n");
    assertThat(assess(scars, "--quiet").exitCode()).isZero();
    assertThat(check(scars).out()).contains("2 read, 1 used").contains("not a finite number");
  }

  private static String lineAt(int i) {
    return "LINESTRING (500010 %d, 500090 %d)".formatted(3_000_000 + 10 * i, 3_000_000 + 10 * i);
  }

  private Terminal.Outcome check(Path scars) {
    return Terminal.run(
        Main.commandLine(),
        "check",
        "--scars=" + scars,
        "--beds=" + beds,
        "--crs=beds=EPSG:32617",
        "--crs=scars=EPSG:32617");
  }

  @Test
  void bedsGivenAsScars() {
    assertRefused(assess(beds), beds, "bed");
  }

  @Test
  void latitudeAndLongitudeSwapped() throws IOException {
    Path scars =
        write("scars.csv", "id,wkt\ns1,\"LINESTRING (27.1220 -80.9995, 27.1225 -80.9990)\"\n");
    Terminal.Outcome outcome =
        Terminal.run(
            Main.commandLine(),
            "assess",
            "--name=Swapped",
            "--scars=" + scars,
            "--beds=" + beds,
            "--crs=beds=EPSG:32617",
            "--crs=scars=EPSG:4326",
            "--output=" + output);
    assertRefused(outcome, scars, "axis_order");
  }

  static Stream<String> missing() {
    return Stream.of("none.gpkg", "none.shp", "none.geojson", "none.csv", "none.gpx", "none");
  }

  @ParameterizedTest
  @MethodSource("missing")
  void fileThatIsNotThere(String name) {
    Path scars = folder.resolve(name);
    assertRefused(assess(scars), scars, "does not exist");
  }

  @Test
  void noReferenceSystem() throws IOException {
    Path scars = write("scars.csv", "id,wkt\ns1,\"" + lineAt(1) + "\"\n");
    Terminal.Outcome outcome =
        Terminal.run(
            Main.commandLine(),
            "assess",
            "--scars=" + scars,
            "--beds=" + beds,
            "--crs=beds=EPSG:32617",
            "--output=" + output);
    assertRefused(outcome, scars, "--crs scars=EPSG:n");
  }

  @Test
  void unknownReferenceSystem() throws IOException {
    Path scars = write("scars.csv", "id,wkt\ns1,\"" + lineAt(1) + "\"\n");
    assertRefused(assess(scars, "--crs=scars=EPSG:99999"), scars, "99999");
  }
}
