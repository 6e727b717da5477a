package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The real commands on a small invented survey. */
class WholeProgramTest {
  @TempDir static Path folder;
  private static Path sample;
  private static Path results;
  private static Terminal.Outcome assessed;

  @BeforeAll
  static void makeSampleAndAssess() {
    sample = folder.resolve("sample");
    Terminal.Outcome outcome = SmallSample.make(sample);
    assertThat(outcome.err()).isEqualTo("The sample is in " + sample + "\n");
    assertThat(outcome.out()).contains("200 scars").endsWith("seed 5\n");
    results = folder.resolve("results");
    assessed = run("assess", survey(), "--set=segment_length_m=200", "--output=" + results);
  }

  @Test
  void assessWritesWhatItPrints() throws IOException {
    assertThat(assessed.err()).isEqualTo("Results are in " + results + "\n");
    assertThat(assessed.exitCode()).isZero();
    assertThat(assessed.out().strip())
        .isEqualTo(Files.readString(results.resolve("summary.txt")).strip());
    JsonNode runRecord =
        new ObjectMapper().readTree(Files.readString(results.resolve("run-record.json")));
    assertThat(runRecord.at("/version").asText()).isEqualTo(ToolVersion.text());
    assertThat(runRecord.at("/options/--set").asText()).isEqualTo("segment_length_m=200");
    assertThat(runRecord.at("/parameters/segment_length_m").asDouble()).isEqualTo(200);
  }

  @Test
  void anOutputIsKeptUnlessToldOtherwise() throws IOException {
    assertThat(run("assess", survey(), "--output=" + results))
        .isEqualTo(
            new Terminal.Outcome(
                4,
                "",
                "error: "
                    + results
                    + ": already exists; name another folder, or replace it with --overwrite\n"));
    Path old = folder.resolve("old");
    OutputState.copy(results, old);
    Terminal.Outcome outcome =
        run("assess", survey(), "--overwrite", "--name=Replaced", "--output=" + old);
    assertThat(outcome.exitCode()).as(outcome.err()).isZero();
    assertThat(old.resolve("summary.txt")).content().startsWith("Replaced");
    OutputState.assertWhole(old);
  }

  /** The same survey with its beds read from other formats, written by GDAL. */
  @ParameterizedTest
  @CsvSource({
    "ESRI Shapefile, shp, ENCODING=UTF-8",
    "GeoJSON, geojson, COORDINATE_PRECISION=12",
  })
  void layersInOtherFormatsGiveTheSameFigures(String driver, String ending, String option)
      throws Exception {
    Path beds = folder.resolve("beds." + ending);
    Gdal.run(
        "ogr2ogr",
        "-f",
        driver,
        "-lco",
        option,
        beds.toString(),
        sample.resolve("season-1/beds.gpkg").toString());
    Path other = folder.resolve("out-" + ending);
    Terminal.Outcome outcome =
        run(
            "assess",
            survey(),
            "--beds=" + beds,
            "--set=segment_length_m=200",
            "--output=" + other);
    assertThat(outcome.exitCode()).as(outcome.err()).isZero();
    assertThat(figures(outcome)).isEqualTo(figures(assessed));
  }

  /** The three answers and the area table: what comes before the list of input files. */
  private static String figures(Terminal.Outcome outcome) {
    return outcome.out().substring(0, outcome.out().indexOf("\nFeatures\n"));
  }

  @Test
  void checkListsThePlantedMistakes() throws IOException {
    Terminal.Outcome outcome = run("check", survey(), "--format=json");

    JsonNode report = new ObjectMapper().readTree(outcome.out());
    assertThat(report.at("/totals/error").asInt()).isZero();
    assertThat(report.at("/findings").findValuesAsText("code"))
        .contains("null_geometry", "duplicate_scar", "cause_unknown", "width_missing");
    assertThat(outcome.err()).isEmpty();
    assertThat(outcome.exitCode()).isZero();
  }

  @Test
  void layersThatCannotBeUsedEndInOneLineAndNoOutput() throws IOException {
    Path output = folder.resolve("none");
    Path torn = Files.createFile(folder.resolve("torn.gpkg"));
    Terminal.Outcome outcome = run("assess", survey(), "--scars=" + torn, "--output=" + output);

    assertThat(outcome.exitCode()).isEqualTo(3);
    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.err()).startsWith("error: " + torn).hasLineCount(1);
    assertThat(output).doesNotExist();
    assertThat(names(folder)).noneMatch(name -> name.startsWith(".none"));

    Terminal.Outcome checked = run("check", survey(), "--scars=" + torn);
    assertThat(checked.exitCode()).isEqualTo(3);
    assertThat(checked.err()).isEmpty();
    assertThat(checked.out()).contains("error: ").contains(torn.toString());
  }

  @Test
  void scarsArePutOnGivenBeds() {
    Path output = folder.resolve("on beds");
    Path beds = sample.resolve("season-1/beds.gpkg");
    Terminal.Outcome made =
        run("make-sample", "--on-beds=" + beds + "#beds", "--scars=50", "--output=" + output);

    assertThat(made.err()).isEqualTo("The sample is in " + output + "\n");
    assertThat(made.out()).startsWith("50 scars and ").contains(" beds of " + beds);
    Terminal.Outcome checked = run("check", output.toString(), "--most=0");
    assertThat(checked.out()).contains("scars.gpkg: scars: scars: 50 read, 50 used");
    assertThat(checked.exitCode()).isZero();
  }

  @Test
  void bedsWithoutAnAreaAreAnInputError() {
    Path channels = sample.resolve("season-1/channels.geojson");
    Terminal.Outcome outcome =
        run("make-sample", "--on-beds=" + channels, "--output=" + folder.resolve("never"));

    assertThat(outcome.exitCode()).isEqualTo(3);
    assertThat(outcome.err()).startsWith("error: ").hasLineCount(1);
    assertThat(folder.resolve("never")).doesNotExist();
  }

  private static String survey() {
    return sample.resolve("season-1").toString();
  }

  private static Terminal.Outcome run(String... arguments) {
    return Terminal.run(Main.commandLine(), arguments);
  }

  private static List<String> names(Path parent) throws IOException {
    try (Stream<Path> children = Files.list(parent)) {
      return children.map(child -> child.getFileName().toString()).sorted().toList();
    }
  }
}
