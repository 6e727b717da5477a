package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The main job on the sample that comes with the project. */
class BundledSampleTest {
  private static final Path SAMPLE =
      Path.of(System.getProperty("meadowmark.root"), "gis-samples", "data", "quillmere-sound");

  @TempDir static Path folder;
  private static Path output;

  @BeforeAll
  static void assess() {
    output = folder.resolve("season-2");
    Terminal.Outcome outcome =
        Terminal.run(
            Main.commandLine(),
            "assess",
            SAMPLE.resolve("season-2").toString(),
            "--threads=2",
            "--quiet",
            "--output=" + output);
    assertThat(outcome.err()).isEmpty();
    assertThat(outcome.exitCode()).isZero();
  }

  @Test
  void summaryIsAsItWas() throws IOException {
    Golden.assertSame(
        "quillmere-sound-season-2.txt", Files.readString(output.resolve("summary.txt")));
  }

  /** In parts, and on one thread, where the other run had two. */
  @Test
  void inPartsEveryFileIsTheSame() throws IOException {
    Path inParts = folder.resolve("in-parts");
    Terminal.Outcome outcome =
        Terminal.run(
            Main.commandLine(),
            "assess-in-parts",
            SAMPLE.resolve("season-2").toString(),
            "--part-scars=30",
            "--threads=1",
            "--quiet",
            "--output=" + inParts);
    assertThat(outcome.err()).isEmpty();
    assertThat(outcome.exitCode()).isZero();
    String summary = Files.readString(inParts.resolve("summary.txt"), StandardCharsets.UTF_8);
    assertThat(summary)
        .isEqualTo(
            Files.readString(output.resolve("summary.txt"), StandardCharsets.UTF_8)
                + "Measured in 37 part(s) made of 291 group(s) of beds and scars that depend on"
                + " each other; the largest group has 291 scars, the largest part 291.\n");
    try (Stream<Path> files = Files.walk(output)) {
      assertThat(
              files
                  .filter(Files::isRegularFile)
                  .map(output::relativize)
                  .filter(file -> !List.of("summary.txt", "run-record.json").contains(file + "")))
          .hasSizeGreaterThan(30)
          .allSatisfy(
              file ->
                  assertThat(inParts.resolve(file)).hasSameBinaryContentAs(output.resolve(file)));
    }
  }

  @Test
  void everyTableIsThereAndHasAHeader() throws IOException {
    try (Stream<Path> tables = Files.list(output.resolve("tables"))) {
      assertThat(tables)
          .hasSizeGreaterThan(10)
          .allSatisfy(table -> assertThat(Files.readAllLines(table)).isNotEmpty());
    }
    assertThat(output.resolve("charts/severity-by-area.png")).isNotEmptyFile();
    assertThat(output.resolve("run-record.json")).isNotEmptyFile();
  }

  /** Every value that the layer has is one that its style draws. */
  @ParameterizedTest
  @CsvSource({"scars, cause", "beds, severity_class", "zone_markers, shape"})
  void stylesKnowEveryCategoryOfTheSample(String layer, String column) throws IOException {
    String style = Files.readString(output.resolve("styles/" + layer + ".sld"));
    try (CSVParser rows =
        CSVParser.parse(
            output.resolve("tables/" + layer + ".csv"),
            StandardCharsets.UTF_8,
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get())) {
      assertThat(rows.stream().map(row -> row.get(column)).distinct())
          .isNotEmpty()
          .allSatisfy(value -> assertThat(style).contains(">" + value + "<"));
    }
  }

  @Test
  void dictionaryNamesEveryColumnThatWasWritten() throws IOException {
    String dictionary = Files.readString(output.resolve("data-dictionary.md"));
    try (Stream<Path> tables = Files.list(output.resolve("tables"))) {
      for (Path table : tables.toList()) {
        String name = table.getFileName().toString().replace(".csv", "");
        int from = dictionary.indexOf("\n## " + name + "\n");
        assertThat(from).as(name).isPositive();
        int end = dictionary.indexOf("\n## ", from + 1);
        String section = dictionary.substring(from, end < 0 ? dictionary.length() : end);
        for (String column : Files.readAllLines(table).get(0).split(",")) {
          assertThat(section).as(name).contains("| `" + column + "` |");
        }
      }
    }
  }

  @Test
  void paperAndReportAreThere() {
    assertThat(output.resolve("hearing.pdf")).isNotEmptyFile();
    assertThat(output.resolve("report.html")).isNotEmptyFile();
    assertThat(output.resolve("charts/connected-area.svg")).isNotEmptyFile();
  }

  /** Notes that the second season carries. */
  @Test
  void eachNoteIsAReasonToProtectFirst() throws IOException {
    List<String> rows =
        Files.readAllLines(output.resolve("tables/repair_sites.csv"), StandardCharsets.UTF_8)
            .stream()
            .filter(row -> row.contains(",protect first,"))
            .toList();
    for (String reason :
        List.of(
            "bare muck: clear it to firm sand first",
            "actively grazed (squared-off leaf tips)",
            "the same line is scarred again and again")) {
      assertThat(rows).as(reason).anyMatch(row -> row.contains(reason));
    }
  }

  @Test
  void gdalOpensTheResultsWithoutAWarning() throws Exception {
    String text = Gdal.run("ogrinfo", "-al", "-so", output.resolve("results.gpkg").toString());
    assertThat(text)
        .contains("Layer name: beds", "Layer name: patches", "Layer name: segments")
        .doesNotContainIgnoringCase("warning")
        .doesNotContain("ERROR");
  }
}
