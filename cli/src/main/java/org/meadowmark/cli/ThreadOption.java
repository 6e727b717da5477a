package org.meadowmark.cli;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How many threads a command may use. */
final class ThreadOption {
  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  private int threads = Runtime.getRuntime().availableProcessors();

  @Option(
      names = "--threads",
      paramLabel = "N",
      description =
          "Threads to use at most. Default: one a processor. Results do not depend on it.")
  void setThreads(int number) {
    if (number < 1) {
      throw new ParameterException(
          spec.commandLine(),
          "Invalid value for option '--threads': " + number + " is less than 1");
    }
    threads = number;
  }

  int threads() {
    return threads;
  }
}
