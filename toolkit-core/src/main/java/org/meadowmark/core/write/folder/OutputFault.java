package org.meadowmark.core.write.folder;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import org.meadowmark.core.model.WriteAdvice;

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
    String reason = WriteAdvice.reason(e);
    return "output cannot be written (" + reason + "); " + WriteAdvice.of(reason);
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
