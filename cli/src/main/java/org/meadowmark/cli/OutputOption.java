package org.meadowmark.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;

/** The output folder; the same for every command that writes one. */
final class OutputOption {
  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "DIR",
      description = "Folder to write. It appears when all is done, or not at all.")
  private Path output;

  Path folder() {
    return output;
  }
}
