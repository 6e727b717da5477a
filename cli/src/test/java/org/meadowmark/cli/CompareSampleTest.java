package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The two bundled seasons, compared by the whole program. */
class CompareSampleTest {
  private static final Path ROOT = Path.of(System.getProperty("meadowmark.root"));
  private static final Path SAMPLE = ROOT.resolve("gis-samples/data/quillmere-sound");

  @TempDir static Path folder;
  private static Path output;
  private static Terminal.Outcome outcome;

  @BeforeAll
  static void compare() throws IOException {
    output = folder.resolve("change");
    Path markers = folder.resolve("marks.csv");
    Files.writeString(
        markers, "segment,date,device\nbramlet-run-0001,2025-09-01,slow-speed sign\n");
    outcome =
        Terminal.run(
            Main.commandLine(),
            "compare-seasons",
            SAMPLE.resolve("season-2").toString(),
            SAMPLE.resolve("season-1").toString(),
            "--set=position_rmse_m=0.42",
            "--markers=" + markers,
            "--output=" + output);
  }

  @Test
  void endsWellAndSaysWhereTheResultsAre() {
    assertThat(outcome.err()).isEqualTo("Results are in " + output + "\n");
    assertThat(outcome.exitCode()).isZero();
  }

  /**
   * The golden file is made by this program; it shows a change of figures, it does not prove them.
   */
  @Test
  void summaryIsAsItWas() throws IOException {
    Path golden = ROOT.resolve("cli/src/test/resources/golden/quillmere-sound-seasons.txt");
    String summary = Files.readString(output.resolve("summary.txt"), StandardCharsets.UTF_8);
    if ("write".equals(System.getProperty("meadowmark.golden"))) {
      Files.writeString(golden, summary, StandardCharsets.UTF_8);
    }
    assertThat(outcome.out()).isEqualTo(summary);
    assertThat(summary).isEqualTo(Files.readString(golden, StandardCharsets.UTF_8));
  }

  /** Every scar of either season has one row; the truth of the sample names the scar itself. */
  @Test
  void mostFatesAreThoseOfTheTruth() throws IOException {
    List<String> rows = Files.readAllLines(output.resolve("tables/scar_changes.csv"));
    List<String> truth = Files.readAllLines(SAMPLE.resolve("truth/scar-fates.csv"));
    long seenNew =
        rows.stream().filter(row -> row.contains(",later,") && row.contains(",new,")).count();
    long trulyNew =
        truth.stream().filter(row -> row.startsWith("2,") && row.endsWith(",new")).count();
    assertThat(seenNew).isBetween((long) (0.75 * trulyNew), (long) (1.05 * trulyNew));
  }

  @Test
  void everyTableHasAHeaderAndTheRecordNamesBothSurveys() throws IOException {
    for (String table :
        List.of(
            "surveys",
            "survey_differences",
            "scar_changes",
            "scar_links",
            "scar_histories",
            "scar_sightings",
            "grass_changes",
            "bed_changes",
            "new_scar_rates",
            "healing_rates",
            "fitted_edge_rates",
            "figure_changes",
            "segment_seasons",
            "marker_segments",
            "marker_effect",
            "marker_power",
            "season_findings")) {
      assertThat(Files.readAllLines(output.resolve("tables/" + table + ".csv"))).isNotEmpty();
    }
    assertThat(output.resolve("charts/new-scars.png")).isNotEmptyFile();
    assertThat(output.resolve("charts/marker-effect.png")).isNotEmptyFile();
    assertThat(Files.readString(output.resolve("run-record.json")))
        .contains("Quillmere Sound 2025", "Quillmere Sound 2026", "marks.csv");
  }

  @Test
  void withoutAStatedErrorOfPositionsItIsRefused() {
    Path nothing = folder.resolve("nothing");
    Terminal.Outcome refused =
        Terminal.run(
            Main.commandLine(),
            "compare-seasons",
            SAMPLE.resolve("season-1").toString(),
            SAMPLE.resolve("season-2").toString(),
            "--output=" + nothing);

    assertThat(refused.exitCode()).isEqualTo(ExitCode.INPUT.value());
    assertThat(refused.err())
        .startsWith("error: the surveys of 2025-06-14 and 2026-06-14 are not safe to compare")
        .contains("--despite positional-accuracy");
    assertThat(nothing).doesNotExist();
  }
}
