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

/** The real commands on a small invented survey. */
class WholeProgramTest {
  @TempDir static Path folder;
  private static Path sample;

  @BeforeAll
  static void makeSample() {
    sample = folder.resolve("sample");
    Terminal.Outcome outcome =
        run("make-sample", "--scars=200", "--beds=100", "--seed=5", "--output=" + sample);
    assertThat(outcome.err()).isEqualTo("The sample is in " + sample + "\n");
    assertThat(outcome.out()).contains("200 scars").endsWith("seed 5\n");
    assertThat(outcome.exitCode()).isZero();
  }

  @Test
  void assessWritesWhatItPrints() throws IOException {
    Path output = folder.resolve("results");
    Terminal.Outcome outcome =
        run("assess", survey(), "--set=segment_length_m=200", "--output=" + output);

    assertThat(outcome.err()).isEqualTo("Results are in " + output + "\n");
    assertThat(outcome.exitCode()).isZero();
    assertThat(outcome.out().strip())
        .isEqualTo(Files.readString(output.resolve("summary.txt")).strip());
    JsonNode runRecord =
        new ObjectMapper().readTree(Files.readString(output.resolve("run-record.json")));
    assertThat(runRecord.at("/version").asText()).isEqualTo(ToolVersion.text());
    assertThat(runRecord.at("/options/--set").asText()).isEqualTo("segment_length_m=200");
    assertThat(runRecord.at("/parameters/segment_length_m").asDouble()).isEqualTo(200);

    assertThat(run("assess", survey(), "--output=" + output))
        .isEqualTo(
            new Terminal.Outcome(
                4,
                "",
                "error: "
                    + output
                    + ": already exists; name another folder, or replace it with --overwrite\n"));
    assertThat(
            run("assess", survey(), "--overwrite", "--threads=1", "--output=" + output).exitCode())
        .isZero();
  }

  @Test
  void resultsDoNotDependOnThreads() throws IOException {
    Path one = folder.resolve("one");
    Path four = folder.resolve("four");
    run("assess", survey(), "--threads=1", "--output=" + one);
    run("assess", survey(), "--threads=4", "--output=" + four);

    List<String> tables = names(one.resolve("tables"));
    assertThat(tables).isNotEmpty();
    for (String table : tables) {
      assertThat(four.resolve("tables").resolve(table))
          .hasSameBinaryContentAs(one.resolve("tables").resolve(table));
    }
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
