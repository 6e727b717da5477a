package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What the program writes into files and pipes. */
class StreamsTest {
  private static final Map<String, String> PLAIN_LOCALE = Map.of("LC_ALL", "C");

  @Test
  void resultsAreUtf8WhateverTheLocale() throws IOException, InterruptedException {
    ChildProgram.Outcome outcome =
        ChildProgram.run(
            ChildProgram.shortRun("-Dfile.encoding=US-ASCII"),
            PLAIN_LOCALE,
            "tables",
            "parameters");

    Path file = Path.of(System.getProperty("meadowmark.root"), "shared/parameters.csv");
    assertThat(new String(outcome.out(), StandardCharsets.UTF_8))
        .contains("m²")
        .isEqualTo(Files.readString(file));
    assertThat(outcome.errorText()).isEmpty();
    assertThat(outcome.exitCode()).isZero();
  }

  @Test
  void errorsGoToTheErrorStreamWithTheirCode() throws IOException, InterruptedException {
    ChildProgram.Outcome outcome =
        ChildProgram.run(ChildProgram.shortRun(), PLAIN_LOCALE, "tables", "sea²");

    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.errorText()).startsWith("error: ").hasLineCount(1);
    assertThat(outcome.exitCode()).isEqualTo(2);
  }
}
