package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.assessment.comparison.MarkerReader.MarkerFile;
import org.meadowmark.core.change.comparability.Aspect;

class CompareCommandTest {
  private static final String SAMPLE =
      Path.of(System.getProperty("meadowmark.root"), "gis-samples/data/quillmere-sound").toString();

  private final RecordingGateways gateways = new RecordingGateways();

  @Test
  void passesOnWhatIsGiven() {
    Terminal.Outcome outcome =
        gateways.run(
            "compare-seasons",
            SAMPLE + "/season-1",
            SAMPLE + "/season-2",
            "--markers=marks.csv",
            "--markers-crs=EPSG:4326",
            "--despite=effort",
            "--despite=season-of-year",
            "--set=seed=7",
            "--overwrite",
            "--threads=2",
            "--output=change");

    assertThat(outcome.exitCode()).isZero();
    assertThat(outcome.out()).isEqualTo("summary of 2 surveys\n");
    CompareGateway.Request request = gateways.compared.get(0);
    assertThat(request.surveys()).hasSize(2);
    assertThat(request.surveys())
        .allSatisfy(survey -> assertThat(survey.parameters().seed()).isEqualTo(7));
    assertThat(request.markers())
        .isEqualTo(Optional.of(new MarkerFile(Path.of("marks.csv"), Optional.of("EPSG:4326"))));
    assertThat(request.despite()).containsExactly(Aspect.SEASON_OF_YEAR, Aspect.EFFORT);
    assertThat(request.overwrite()).isTrue();
    assertThat(request.threads()).isEqualTo(2);
    assertThat(request.options())
        .containsEntry("--despite", "effort season-of-year")
        .containsEntry("SURVEY", SAMPLE + "/season-1 " + SAMPLE + "/season-2");
  }

  @Test
  void saysWhatIsWrongWithTheCommandLine() {
    assertError(
        "Invalid value for option '--despite': 'weather' is none of season-of-year,",
        SAMPLE + "/season-1",
        SAMPLE + "/season-2",
        "--despite=weather",
        "--output=x");
    assertError(
        "Option '--markers-crs' is of use with '--markers' only",
        SAMPLE + "/season-1",
        SAMPLE + "/season-2",
        "--markers-crs=EPSG:4326",
        "--output=x");
    assertError(
        "detectable_drop: 2 is out of limits",
        SAMPLE + "/season-1",
        SAMPLE + "/season-2",
        "--set=detectable_drop=2",
        "--output=x");
    assertError("SURVEY", SAMPLE + "/season-1", "--output=x");
  }

  private void assertError(String message, String... arguments) {
    String[] all = new String[arguments.length + 1];
    all[0] = "compare-seasons";
    System.arraycopy(arguments, 0, all, 1, arguments.length);
    Terminal.Outcome outcome = gateways.run(all);
    assertThat(outcome.exitCode()).isEqualTo(ExitCode.USAGE.value());
    assertThat(outcome.err()).contains(message);
  }
}
