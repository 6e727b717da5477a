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

/**
 * Two seasons, the later one named first, with a marker, compared by the whole program. What the
 * bundled seasons come to is in {@link TutorialTest}.
 */
class CompareSeasonsTest {
  @TempDir static Path folder;
  private static Path sample;
  private static Path output;
  private static Terminal.Outcome outcome;

  @BeforeAll
  static void compare() throws IOException {
    sample = folder.resolve("sample");
    SmallSample.make(sample);
    output = folder.resolve("change");
    Path markers = folder.resolve("marks.csv");
    Files.writeString(
        markers, "segment,date,device\nbramlet-run-0001,2025-09-01,slow-speed sign\n");
    outcome =
        Terminal.run(
            Main.commandLine(),
            "compare-seasons",
            sample.resolve("season-2").toString(),
            sample.resolve("season-1").toString(),
            "--set=position_rmse_m=0.42",
            "--markers=" + markers,
            "--output=" + output);
  }

  @Test
  void endsWellWithTheSummaryAndSaysWhereTheResultsAre() throws IOException {
    assertThat(outcome.err()).isEqualTo("Results are in " + output + "\n");
    assertThat(outcome.exitCode()).isZero();
    assertThat(outcome.out())
        .isEqualTo(Files.readString(output.resolve("summary.txt"), StandardCharsets.UTF_8))
        .contains("2025-06-14 to 2026-06-14", "Did the markers work?");
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
            sample.resolve("season-1").toString(),
            sample.resolve("season-2").toString(),
            "--output=" + nothing);

    assertThat(refused.exitCode()).isEqualTo(ExitCode.INPUT.value());
    assertThat(refused.err())
        .startsWith("error: the surveys of 2025-06-14 and 2026-06-14 are not safe to compare")
        .contains("--despite positional-accuracy");
    assertThat(nothing).doesNotExist();
  }
}
