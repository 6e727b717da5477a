package org.meadowmark.core.write;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.UUID;
import org.meadowmark.core.model.OutputExistsException;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.model.WriteAdvice;

/**
 * Writes a file whole or not at all: to a temporary file in the same folder, moved when complete
 * and removed on failure.
 */
public final class AtomicFile {

  /** Writes the content. */
  @FunctionalInterface
  public interface Content {
    /**
     * Writes the content.
     *
     * @param file a path that does not exist yet
     * @throws IOException if it cannot be written; what was written of it is removed
     */
    void writeTo(Path file) throws IOException;
  }

  private AtomicFile() {}

  /**
   * Writes a file.
   *
   * @param file where to; its folder must exist
   * @param overwrite whether an existing file is replaced
   * @param content writes the content
   * @throws OutputExistsException if the file exists and may not be replaced
   * @throws OutputFailedException if it is a folder, has no folder to be in, or cannot be written
   */
  public static void write(Path file, boolean overwrite, Content content) {
    Path target = file.toAbsolutePath();
    Path folder = target.getParent();
    refuseIfUnusable(file, target, folder, overwrite);
    Path temporary = folder.resolve("." + target.getFileName() + "." + UUID.randomUUID() + ".tmp");
    try {
      content.writeTo(temporary);
      if (!overwrite && Files.exists(target)) {
        throw exists(file);
      }
      move(temporary, target);
    } catch (IOException e) {
      throw new OutputFailedException(
          file
              + ": cannot be written ("
              + WriteAdvice.reason(e)
              + "); "
              + WriteAdvice.of(WriteAdvice.reason(e)),
          e);
    } finally {
      remove(temporary);
    }
  }

  private static void refuseIfUnusable(Path file, Path target, Path folder, boolean overwrite) {
    if (Files.isDirectory(target)) {
      throw new OutputFailedException(file + ": is a folder; name a file");
    }
    if (!overwrite && Files.exists(target)) {
      throw exists(file);
    }
    if (folder == null || !Files.isDirectory(folder)) {
      throw new OutputFailedException(file + ": its folder does not exist; create it first");
    }
  }

  private static OutputExistsException exists(Path file) {
    return new OutputExistsException(
        file + ": exists already; choose another name or give --overwrite");
  }

  private static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static void remove(Path temporary) {
    try {
      Files.deleteIfExists(temporary);
    } catch (IOException e) {
      temporary.toFile().deleteOnExit();
    }
  }
}
