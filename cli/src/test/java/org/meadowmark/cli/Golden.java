package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Texts as they were. They are made by this program, so they show a change of figures and do not
 * prove them. {@code -Dmeadowmark.golden=write} writes them anew.
 */
final class Golden {
  private static final Path FOLDER =
      Path.of(System.getProperty("meadowmark.root"), "cli/src/test/resources/golden");

  private Golden() {}

  static void assertSame(String name, String text) throws IOException {
    Path golden = FOLDER.resolve(name);
    if ("write".equals(System.getProperty("meadowmark.golden"))) {
      Files.writeString(golden, text, StandardCharsets.UTF_8);
    }
    assertThat(text).isEqualTo(Files.readString(golden, StandardCharsets.UTF_8));
  }
}
