package org.meadowmark.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;

/** Options about the output folder; the same for every command that writes one. */
final class OutputOptions {
  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "DIR",
      description = "Folder to write. It appears when all is done, or not at all.")
  private Path output;

  @Option(names = "--overwrite", description = "Replace the output of an earlier run.")
  private boolean overwrite;

  Path folder() {
    return output;
  }

  boolean overwrite() {
    return overwrite;
  }
}
