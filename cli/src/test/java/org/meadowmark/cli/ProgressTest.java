package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.model.Progress;

class ProgressTest {
  private static final String TERMINAL = "meadowmark.terminal";

  @AfterEach
  void forget() {
    System.clearProperty(TERMINAL);
  }

  @Test
  void thereIsABarOnATerminal() {
    System.setProperty(TERMINAL, "true");

    assertThat(progressOf()).isInstanceOf(ProgressBars.class);
  }

  @Test
  void thereIsNoneInAFileOrWhereNotWanted() {
    System.setProperty(TERMINAL, "false");
    assertThat(progressOf()).isSameAs(Progress.NONE);

    System.setProperty(TERMINAL, "true");
    assertThat(progressOf("--quiet")).isSameAs(Progress.NONE);
    assertThat(progressOf("--no-progress")).isSameAs(Progress.NONE);
  }

  private static Progress progressOf(String... options) {
    RecordingGateways gateways = new RecordingGateways();
    String[] arguments = new String[options.length + 3];
    arguments[0] = "check";
    arguments[1] = "--scars=s.gpkg";
    arguments[2] = "--beds=b.gpkg";
    System.arraycopy(options, 0, arguments, 3, options.length);
    assertThat(gateways.run(arguments).exitCode()).isZero();
    return gateways.progress;
  }
}
