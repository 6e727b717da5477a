package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;

/**
 * An invented survey of two seasons with layers of every kind, a quarter of the size of the bundled
 * sample or less, for what does not depend on the size.
 */
final class SmallSample {
  private SmallSample() {}

  /** Makes it in a folder that does not exist yet, and says what was said. */
  static Terminal.Outcome make(Path folder) {
    Terminal.Outcome outcome =
        Terminal.run(
            Main.commandLine(),
            "make-sample",
            "--scars=200",
            "--beds=100",
            "--seed=5",
            "--output=" + folder);
    assertThat(outcome.exitCode()).as(outcome.err()).isZero();
    assertThat(Files.exists(folder.resolve("season-2").resolve("survey.toml"))).isTrue();
    return outcome;
  }
}
