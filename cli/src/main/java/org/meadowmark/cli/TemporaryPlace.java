package org.meadowmark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.model.WriteAdvice;

/**
 * The folder for temporary files, where libraries unpack what they need: the database of reference
 * systems and native code.
 */
final class TemporaryPlace {
  private static final String EPSG_FOLDER_KEY = "EPSG-HSQL.directory";

  private TemporaryPlace() {}

  /**
   * Gives every user a folder for the database of reference systems: where several people share a
   * computer, a common one belongs to whoever came first, and nobody else can put it right.
   */
  static void keepReferenceSystemsApart() {
    if (System.getProperty(EPSG_FOLDER_KEY) == null) {
      String user =
          System.getProperty("user.name", "")
              .toLowerCase(Locale.ROOT)
              .replaceAll("[^a-z0-9._-]", "_");
      System.setProperty(EPSG_FOLDER_KEY, folder().resolve("meadowmark-epsg-" + user).toString());
    }
  }

  /**
   * Writes a file there and deletes it.
   *
   * @throws OutputFailedException if that fails: without the folder nothing can be read or written,
   *     and libraries would say so in words that blame the input
   */
  static void check() {
    Path folder = folder();
    try {
      Path file = Files.createTempFile(folder, "meadowmark-", ".try");
      try {
        Files.write(file, new byte[1]);
      } finally {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new OutputFailedException(
          "the folder for temporary files "
              + folder
              + " cannot be written to ("
              + WriteAdvice.reason(e)
              + "); put that right, or name another with"
              + " MEADOWMARK_JAVA_OPTS=-Djava.io.tmpdir=FOLDER",
          e);
    }
  }

  private static Path folder() {
    return Path.of(System.getProperty("java.io.tmpdir")).toAbsolutePath();
  }
}
