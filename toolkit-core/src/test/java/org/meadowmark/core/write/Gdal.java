package org.meadowmark.core.write;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** Runs a GDAL command as a second reader; a test that needs one is skipped where it is absent. */
final class Gdal {
  private Gdal() {}

  /** What a finished command printed, standard error included. */
  record Run(int exitCode, String output) {
    boolean warned() {
      return output.contains("Warning") || output.contains("ERROR");
    }
  }

  static Run run(String... command) throws IOException, InterruptedException {
    boolean present =
        Arrays.stream(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
            .anyMatch(folder -> Files.isExecutable(Path.of(folder, command[0])));
    assumeTrue(present, command[0] + " (GDAL) is not installed: what it reads is not compared");
    Process process = new ProcessBuilder(List.of(command)).redirectErrorStream(true).start();
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Run(process.waitFor(), output);
  }
}
