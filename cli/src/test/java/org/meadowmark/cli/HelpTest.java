package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Compares help texts with the files in {@code src/test/resources/golden}. After a wanted change
 * run the test once with {@code -Dmeadowmark.golden=write} and read the difference.
 */
class HelpTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "meadowmark",
        "assess",
        "assess-in-parts",
        "check",
        "compare-seasons",
        "make-sample",
        "tables"
      })
  void helpIsAsRecorded(String command) throws IOException {
    String[] arguments =
        command.equals("meadowmark") ? new String[] {"--help"} : new String[] {command, "--help"};
    Terminal.Outcome outcome = new RecordingGateways().run(arguments);

    assertThat(outcome.exitCode()).isZero();
    assertThat(outcome.err()).isEmpty();
    assertThat(outcome.out()).contains("Usage: meadowmark", "Options:", "Examples:", "Exit codes:");
    assertThat(outcome.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThan(101));
    Golden.assertSame(command + "-help.txt", outcome.out());
  }

  @Test
  void versionIsTheBuilds() throws IOException {
    Terminal.Outcome outcome = new RecordingGateways().run("--version");

    assertThat(outcome.exitCode()).isZero();
    assertThat(outcome.out()).matches("meadowmark \\d+\\.\\d+\\.\\d+\\S*\n");
    String pom = Files.readString(Path.of(System.getProperty("meadowmark.root"), "pom.xml"));
    assertThat(pom).contains("<version>" + ToolVersion.text() + "</version>");
  }

  @ParameterizedTest
  @ValueSource(strings = {"assess-in-parts", "check", "compare-seasons", "make-sample", "tables"})
  void sharedOptionsAreWordedTheSame(String command) {
    assertThat(option("--quiet", command)).isEqualTo(option("--quiet", "assess"));
    assertThat(option("--no-progress", command)).isEqualTo(option("--no-progress", "assess"));
    assertThat(option("--verbose", command)).isEqualTo(option("--verbose", "assess"));
    assertThat(option("--help", command)).isEqualTo(option("--help", "assess"));
  }

  /** Name and description of an option in a command's help, without line breaks. */
  private static String option(String name, String command) {
    String help = new RecordingGateways().run(command, "--help").out();
    Matcher entry = Pattern.compile("(?m)^  (   |-.,) " + name + "\\b.*(\n {8}.*)*").matcher(help);
    assertThat(entry.find()).isTrue();
    return entry.group().replaceAll("\\s+", " ");
  }
}
