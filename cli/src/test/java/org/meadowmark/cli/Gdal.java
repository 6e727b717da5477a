package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/** The command line tools of GDAL; a test that wants them skips where they are not installed. */
final class Gdal {
  private Gdal() {}

  /** Runs one of them and gives what it prints. */
  static String run(String... command) throws IOException, InterruptedException {
    Process process;
    try {
      process = new ProcessBuilder(command).redirectErrorStream(true).start();
    } catch (IOException e) {
      Assumptions.abort("skipped: " + command[0] + " (GDAL) is not installed");
      return "";
    }
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).as(text).isZero();
    return text;
  }
}
