package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.OutputExistsException;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.model.SurveyInputException;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.samples.EstuarySettings;
import org.meadowmark.samples.ScarSettings;

class CommandsTest {
  private static final String[] ASSESS = {
    "assess", "--name=Heron Sound", "--scars=s.gpkg", "--beds=b.gpkg", "--output=out"
  };

  private final RecordingGateways gateways = new RecordingGateways();

  @Test
  void assessPrintsTheSummaryAndSaysWhereTheResultsAre() {
    Terminal.Outcome outcome = gateways.run(ASSESS);

    assertThat(outcome)
        .isEqualTo(new Terminal.Outcome(0, "summary of Heron Sound\n", "Results are in out\n"));
    assertThat(gateways.assessed.get(0).overwrite()).isFalse();
    assertThat(gateways.assessed.get(0).threads())
        .isEqualTo(Runtime.getRuntime().availableProcessors());
  }

  @Test
  void quietKeepsTheResultAndNothingElse() {
    Terminal.Outcome outcome = gateways.run(with(ASSESS, "--quiet", "--overwrite", "--threads=3"));

    assertThat(outcome).isEqualTo(new Terminal.Outcome(0, "summary of Heron Sound\n", ""));
    assertThat(gateways.assessed.get(0).overwrite()).isTrue();
    assertThat(gateways.assessed.get(0).threads()).isEqualTo(3);
  }

  @Test
  void checkListsFindingsAndFailsOnErrorsOnly() {
    gateways.findings.add(finding(Finding.Level.WARNING, "12"));
    assertThat(gateways.run("check", "--scars=s.gpkg", "--beds=b.gpkg"))
        .satisfies(
            outcome -> {
              assertThat(outcome.exitCode()).isZero();
              assertThat(outcome.err()).isEmpty();
              assertThat(outcome.out())
                  .contains("s.gpkg: scars: 12: width is 900 m; used as it is\n")
                  .endsWith("0 errors, 1 warning, 0 notes\n");
            });

    gateways.findings.add(finding(Finding.Level.ERROR, "13"));
    assertThat(gateways.run("check", "--scars=s.gpkg", "--beds=b.gpkg").exitCode()).isEqualTo(3);
  }

  @Test
  void checkCanBeToldHowMuchToList() {
    gateways.findings.add(finding(Finding.Level.WARNING, "12"));
    gateways.findings.add(finding(Finding.Level.WARNING, "13"));

    assertThat(gateways.run("check", "--scars=s", "--beds=b", "--most=1").out())
        .contains(": 12: ", "and 1 more")
        .doesNotContain(": 13: ");
    assertThat(gateways.run("check", "--scars=s", "--beds=b", "--most=-1"))
        .isEqualTo(
            new Terminal.Outcome(
                2,
                "",
                "error: Invalid value for option '--most': -1 is less than 0; see 'meadowmark"
                    + " check --help'\n"));
  }

  @Test
  void checkPrintsJsonAndNothingElse() throws IOException {
    gateways.findings.add(finding(Finding.Level.ERROR, "13"));
    gateways.counts.add(
        new LayerCount(LayerRole.SCARS, "s.gpkg", "scars", "EPSG:32617", 5, 4, 1, 1));

    Terminal.Outcome outcome =
        gateways.run("check", "--scars=s.gpkg", "--beds=b.gpkg", "--format", "json");

    JsonNode json = new ObjectMapper().readTree(outcome.out());
    assertThat(json.at("/totals/error").asInt()).isEqualTo(1);
    assertThat(json.at("/findings/0/feature").asText()).isEqualTo("13");
    assertThat(json.at("/layers/0/skipped").asInt()).isEqualTo(1);
    assertThat(outcome.exitCode()).isEqualTo(3);
    assertThat(outcome.err()).isEmpty();
  }

  @Test
  void makeSampleInventsAnEstuary() {
    assertThat(gateways.run("make-sample", "--output=out"))
        .isEqualTo(new Terminal.Outcome(0, "3000 scars\n", "The sample is in out\n"));
    assertThat(gateways.made).containsExactly(EstuarySettings.SAMPLE, Path.of("out"));

    gateways.run("make-sample", "--output=other", "--seed=7", "--scars=50", "--beds=100");
    assertThat(gateways.made)
        .endsWith(EstuarySettings.SAMPLE.withSeed(7).withSize(50, 100), Path.of("other"));
  }

  @Test
  void makeSamplePutsScarsOnBeds() {
    assertThat(
            gateways.run(
                "make-sample",
                "--seed=7",
                "--scars=50",
                "--on-beds=b.gpkg#east",
                "--crs=EPSG:2882",
                "--output=out"))
        .isEqualTo(new Terminal.Outcome(0, "50 scars on beds\n", "The sample is in out\n"));
    LayerSource beds =
        LayerSource.of(LayerRole.BEDS, Path.of("b.gpkg"))
            .withFile(Path.of("b.gpkg"), "b.gpkg", Optional.of("east"))
            .withCrs("EPSG:2882");
    assertThat(gateways.made).containsExactly(ScarSettings.of(7, 50), beds, Path.of("out"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "--scars=-1",
        "--scars=many",
        "--seed=x",
        "--crs=EPSG:1",
        "--on-beds=",
        "--beds=5"
      })
  void makeSampleRefusesWhatMakesNoSense(String option) {
    assertThat(gateways.run("make-sample", "--output=out", option))
        .satisfies(
            outcome -> {
              assertThat(outcome.exitCode()).isEqualTo(2);
              assertThat(outcome.err()).startsWith("error: ").hasLineCount(1);
            });
    assertThat(gateways.made).isEmpty();
  }

  @Test
  void tablesListsNamesAndPrintsThePackedFile() throws IOException {
    assertThat(gateways.run("tables"))
        .isEqualTo(
            new Terminal.Outcome(
                0,
                "species\nscar-causes\nseverity-classes\ndevice-rules\nfish-guilds\n"
                    + "scar-recovery\nrhizome-elongation\nparameters\n",
                ""));
    Path file = Path.of(System.getProperty("meadowmark.root"), "shared/scar-causes.csv");
    assertThat(gateways.run("tables", "scar-causes").out()).isEqualTo(Files.readString(file));
  }

  @Test
  void tablesRefusesWhatIsNoTable(@TempDir Path folder) throws IOException {
    assertThat(gateways.run("tables", "scars"))
        .isEqualTo(
            new Terminal.Outcome(
                2,
                "",
                "error: Invalid value for positional parameter at index 0 (NAME): no table 'scars';"
                    + " use one of: species, scar-causes, severity-classes, device-rules,"
                    + " fish-guilds, scar-recovery, rhizome-elongation, parameters; see 'meadowmark"
                    + " tables --help'\n"));

    Path file = Files.writeString(folder.resolve("species.csv"), "key\nx\n");
    assertThat(gateways.run("tables", "species", "--tables", folder.toString()))
        .isEqualTo(
            new Terminal.Outcome(
                3,
                "",
                "error: "
                    + file
                    + ": line 1: column 'scientific_name' is missing; the columns are:"
                    + " key,scientific_name,common_name,source\n"));
  }

  @Test
  void aSurveyFileThatCannotBeUsedIsAnInputError(@TempDir Path folder) {
    assertThat(gateways.run("assess", folder.toString(), "--output=out"))
        .isEqualTo(
            new Terminal.Outcome(
                3,
                "",
                "error: "
                    + folder.resolve("survey.toml")
                    + ": there is no such survey file; give a survey file or a folder with a"
                    + " survey.toml\n"));
  }

  @Test
  void everyKindOfFailureHasItsCode() {
    assertFailure(
        new SurveyInputException(finding(Finding.Level.ERROR, "7")),
        3,
        "error: s.gpkg: scars: 7: width is 900 m; used as it is\n");
    assertFailure(new OutputExistsException("out: there; move"), 4, "error: out: there; move\n");
    assertFailure(new OutputFailedException("out: full; free"), 5, "error: out: full; free\n");
    assertFailure(
        new UncheckedIOException(new IOException("disk full")),
        5,
        "error: output cannot be written: java.io.IOException: disk full; check space and"
            + " permissions\n");
    assertFailure(
        new IllegalStateException("two\n  lines"),
        1,
        "error: internal error: java.lang.IllegalStateException: two lines; please report it with"
            + " the trace that --verbose prints\n");
  }

  @Test
  void verbosePrintsTheTraceOfEveryFailure() {
    gateways.failure = new OutputExistsException("out: there; move");
    Terminal.Outcome outcome = gateways.run(with(ASSESS, "--verbose"));
    assertThat(outcome.exitCode()).isEqualTo(4);
    assertThat(outcome.err())
        .startsWith("error: out: there; move\norg.meadowmark.core.model.OutputExistsException")
        .contains("\tat ");

    assertThat(gateways.run("assess", "--verbose", "--threads=0", "--output=o").err())
        .contains("\tat ");
  }

  @Test
  void outOfMemoryIsAMessageToo() {
    gateways.error = new OutOfMemoryError("heap");
    Terminal.Outcome outcome = gateways.run(ASSESS);

    assertThat(outcome.exitCode()).isEqualTo(1);
    assertThat(outcome.err())
        .startsWith("error: out of memory (")
        .contains(" MiB allowed); ")
        .hasLineCount(1);
  }

  @Test
  void aCommandIsNeeded() {
    assertThat(gateways.run())
        .isEqualTo(
            new Terminal.Outcome(2, "", "error: No command given; see 'meadowmark --help'\n"));
    assertThat(gateways.run("asess"))
        .isEqualTo(
            new Terminal.Outcome(
                2,
                "",
                "error: Unmatched argument at index 0: 'asess'; did you mean assess or"
                    + " assess-in-parts or compare-seasons? See 'meadowmark --help'\n"));
  }

  private void assertFailure(RuntimeException failure, int code, String message) {
    gateways.failure = failure;
    assertThat(gateways.run(ASSESS)).isEqualTo(new Terminal.Outcome(code, "", message));
  }

  private static Finding finding(Finding.Level level, String id) {
    return new Finding(
        FindingCode.WIDTH_OUT_OF_RANGE,
        level,
        Finding.Treatment.KEPT,
        LayerRole.SCARS,
        new FeatureRef("s.gpkg", "scars", id),
        "width is 900 m",
        "used as it is");
  }

  private static String[] with(String[] arguments, String... more) {
    String[] all = Arrays.copyOf(arguments, arguments.length + more.length);
    System.arraycopy(more, 0, all, arguments.length, more.length);
    return all;
  }
}
