package org.meadowmark.cli;

import java.nio.file.Path;
import org.meadowmark.core.reference.TableLibrary;
import picocli.CommandLine.Option;

/** Where reference tables come from. */
final class TablesOption {
  @Option(
      names = "--tables",
      paramLabel = "DIR",
      description =
          "Folder with reference tables of your own. One of the same name takes the place of the"
              + " packed one; the others stay as packed.")
  private Path folder;

  TableLibrary library() {
    return folder == null ? TableLibrary.bundled() : TableLibrary.of(folder);
  }
}
