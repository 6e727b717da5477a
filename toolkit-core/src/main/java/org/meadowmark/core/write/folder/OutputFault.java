package org.meadowmark.core.write.folder;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import org.meadowmark.core.write.WriteAdvice;

/** Words a failed write: what, where, and what to do. */
final class OutputFault {
  private OutputFault() {}

  /** The failed read or write at the bottom of a failure; empty if it is something else. */
  static Optional<IOException> in(Throwable failure) {
    for (Throwable each = failure; each != null; each = each.getCause()) {
      if (each instanceof IOException io) {
        return Optional.of(io);
      }
      if (each instanceof UncheckedIOException unchecked) {
        return Optional.of(unchecked.getCause());
      }
    }
    return Optional.empty();
  }

  /** Why it failed and what to do, without the place. */
  static String reasonAndAdvice(IOException e) {
    String reason = reason(e);
    return "output cannot be written (" + reason + "); " + WriteAdvice.of(reason);
  }

  static String reason(IOException e) {
    if (e instanceof AccessDeniedException) {
      return "no permission";
    }
    if (e instanceof NoSuchFileException) {
      return "a file or folder is gone";
    }
    if (e instanceof FileSystemException file && file.getReason() != null) {
      return file.getReason();
    }
    return WriteAdvice.reason(e);
  }

  /** The file of a folder that was written last, as a rule the one that failed. */
  static Optional<Path> lastWritten(Path folder) {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile).max(Comparator.comparing(OutputFault::time));
    } catch (IOException | UncheckedIOException e) {
      return Optional.empty();
    }
  }

  private static FileTime time(Path file) {
    try {
      return Files.getLastModifiedTime(file);
    } catch (IOException e) {
      return FileTime.fromMillis(0);
    }
  }
}
