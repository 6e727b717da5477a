package org.meadowmark.core.write.folder;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.meadowmark.core.write.folder.HiddenNames.Hidden;
import org.meadowmark.core.write.folder.HiddenNames.Kind;
import org.meadowmark.core.write.record.RunRecord;

/**
 * What runs that were killed left beside an output folder.
 *
 * <p>An earlier output that was set aside comes back if nothing took its place. Everything else is
 * removed: at once if the run was on this computer and its process has ended, and after a day
 * without a change if it was on another computer, of whose processes nothing is known here.
 */
final class Leftovers {
  private static final Duration LONGEST_PAUSE_OF_A_RUN = Duration.ofDays(1);

  private final Path target;
  private final HiddenNames names;

  Leftovers(Path target) {
    this.target = target;
    this.names = new HiddenNames(target);
  }

  /** Puts an earlier output back and removes the rest. */
  void settle() throws IOException {
    List<Hidden> found = find();
    if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
      Optional<Hidden> old =
          found.stream()
              .filter(hidden -> hidden.kind() == Kind.OLD && !isGoingOnHere(hidden))
              .max(Comparator.comparing(Leftovers::isWhole).thenComparing(Leftovers::recorded));
      if (old.isPresent()) {
        putBack(old.get());
        found.remove(old.get());
      }
    }
    for (Hidden hidden : found) {
      if (isAbandoned(hidden)) {
        FolderTree.deleteQuietly(hidden.path());
      }
    }
  }

  private void putBack(Hidden old) throws IOException {
    try {
      FolderTree.rename(old.path(), target);
    } catch (NoSuchFileException e) {
      // Another run was quicker.
    }
  }

  private List<Hidden> find() throws IOException {
    List<Hidden> found = new ArrayList<>();
    Path parent = target.getParent();
    if (!Files.isDirectory(parent)) {
      return found;
    }
    try (DirectoryStream<Path> siblings = Files.newDirectoryStream(parent)) {
      for (Path sibling : siblings) {
        names.parse(sibling).ifPresent(found::add);
      }
    } catch (AccessDeniedException e) {
      // A folder that may be written to but not listed.
      return found;
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    return found;
  }

  private static boolean isGoingOnHere(Hidden hidden) {
    return hidden.mark().isOfThisComputer() && !hidden.mark().isOver();
  }

  private static boolean isAbandoned(Hidden hidden) throws IOException {
    if (hidden.mark().isOfThisComputer()) {
      return hidden.mark().isOver();
    }
    try {
      return Files.getLastModifiedTime(hidden.path(), LinkOption.NOFOLLOW_LINKS)
          .toInstant()
          .isBefore(Instant.now().minus(LONGEST_PAUSE_OF_A_RUN));
    } catch (NoSuchFileException e) {
      return false;
    }
  }

  private static boolean isWhole(Hidden hidden) {
    try {
      return RunRecord.outputsListedIn(hidden.path())
          .map(list -> list.stream().allMatch(file -> Files.exists(hidden.path().resolve(file))))
          .orElse(false);
    } catch (IOException e) {
      return false;
    }
  }

  /** When the record was written: unlike the folder's own time it does not change any more. */
  private static Instant recorded(Hidden hidden) {
    try {
      return Files.getLastModifiedTime(hidden.path().resolve(RunRecord.FILE_NAME)).toInstant();
    } catch (IOException e) {
      return Instant.MIN;
    }
  }
}
