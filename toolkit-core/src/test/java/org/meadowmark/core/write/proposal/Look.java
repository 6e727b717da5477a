package org.meadowmark.core.write.proposal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Keeps a copy of what a test wrote, for a person to look at: {@code -Dmeadowmark.look=FOLDER}. */
final class Look {
  private Look() {}

  static void at(Path file, String name) throws IOException {
    String folder = System.getProperty("meadowmark.look");
    if (folder != null) {
      String ending = file.getFileName().toString().replaceFirst(".*(?=\\.)", "");
      Path target = Files.createDirectories(Path.of(folder)).resolve(name + ending);
      Files.copy(file, target, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
