package org.meadowmark.core.write.folder;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.meadowmark.core.model.OutputExistsException;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.write.record.RunRecord;

/**
 * A folder that appears complete or not at all.
 *
 * <p>Content is written to a temporary folder beside the target and moved into place by one rename.
 * A folder that is replaced is renamed aside first, put back if the move fails, and deleted only
 * after the new one is in place. If the process is killed between the two renames, both the old and
 * the new folder are whole, beside the target; the next run puts the old one back.
 *
 * <p>A folder is deleted only if it is empty or is an output of this program: it has the run record
 * and no file that the record does not list.
 */
public final class OutputFolder {
  private static final String OVERWRITE = "--overwrite";
  private static final String HIDDEN_MARK = ".meadowmark-";

  /** Files that programs leave beside an open GeoPackage. */
  private static final List<String> SIDE_FILES = List.of("-wal", "-shm", "-journal");

  private final Path target;
  private final String label;
  private final boolean overwrite;

  /** Fills a folder. */
  @FunctionalInterface
  public interface Content {
    /**
     * Writes everything, the run record included.
     *
     * @param folder an empty folder
     * @throws IOException if a file cannot be written
     */
    void writeTo(Path folder) throws IOException;
  }

  /**
   * Chooses a folder and checks that it may be written, so that a long run can be refused before it
   * starts.
   *
   * @param folder the folder to make
   * @param overwrite whether an earlier output there may be replaced
   * @throws OutputExistsException if something is there that may not be replaced
   */
  public OutputFolder(Path folder, boolean overwrite) {
    this.target = folder.toAbsolutePath().normalize();
    this.label = folder.toString();
    this.overwrite = overwrite;
    if (target.getFileName() == null) {
      throw new OutputFailedException(label + ": is not a folder to write to; name a new folder");
    }
    try {
      restoreAfterKill();
      checkTarget();
    } catch (IOException e) {
      throw failure(e);
    }
  }

  /**
   * Writes the folder.
   *
   * @param content what goes into it
   * @throws OutputFailedException if it cannot be written; nothing is left behind
   */
  public void write(Content content) {
    List<Path> madeParents = new ArrayList<>();
    try {
      makeParents(madeParents);
      Path part = part();
      try (TemporaryFolder temporary = TemporaryFolder.create(part, madeParents)) {
        content.writeTo(part);
        checkTarget();
        temporary.commit(() -> moveIntoPlace(part));
      }
    } catch (IOException e) {
      throw failure(e);
    } catch (UncheckedIOException e) {
      throw failure(e.getCause());
    }
  }

  private void moveIntoPlace(Path part) throws IOException {
    if (!exists(target)) {
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
      return;
    }
    Path old = aside();
    Files.move(target, old, StandardCopyOption.ATOMIC_MOVE);
    try {
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      Files.move(old, target, StandardCopyOption.ATOMIC_MOVE);
      throw e;
    }
    deleteOutput(old);
  }

  /**
   * Deletes an earlier output, its record last: what is left is recognised if this is cut short.
   */
  private static void deleteOutput(Path folder) throws IOException {
    if (FolderTree.isEmpty(folder)) {
      FolderTree.delete(folder);
    } else if (RunRecord.outputsListedIn(folder).isPresent()) {
      FolderTree.deleteAllBut(folder, folder.resolve(RunRecord.FILE_NAME));
      FolderTree.delete(folder);
    }
  }

  private void checkTarget() throws IOException {
    if (!exists(target)) {
      return;
    }
    if (!Files.isDirectory(target, LinkOption.NOFOLLOW_LINKS)) {
      throw new OutputExistsException(
          label + ": exists and is not a folder; name a folder that does not exist yet");
    }
    if (!overwrite) {
      throw new OutputExistsException(
          label + ": already exists; name another folder, or replace it with " + OVERWRITE);
    }
    checkReplaceable();
  }

  private void checkReplaceable() throws IOException {
    Set<String> files = new TreeSet<>(FolderTree.files(target));
    Optional<List<String>> listed = RunRecord.outputsListedIn(target);
    if (listed.isEmpty()) {
      if (FolderTree.isEmpty(target)) {
        return;
      }
      throw new OutputExistsException(
          label
              + ": has no "
              + RunRecord.FILE_NAME
              + " of an earlier run, so "
              + OVERWRITE
              + " does not replace it; name another folder");
    }
    files.remove(RunRecord.FILE_NAME);
    for (String output : listed.get()) {
      files.remove(output);
      SIDE_FILES.forEach(ending -> files.remove(output + ending));
    }
    if (!files.isEmpty()) {
      throw new OutputExistsException(
          label
              + ": also holds "
              + files.iterator().next()
              + (files.size() > 1 ? " and " + (files.size() - 1) + " more" : "")
              + ", not written by the earlier run; move it away or name another folder");
    }
  }

  /** A folder renamed aside by a run that was killed before the new one was in place. */
  private void restoreAfterKill() throws IOException {
    Path old = aside();
    if (!exists(old)) {
      return;
    }
    if (exists(target)) {
      deleteOutput(old);
    } else {
      Files.move(old, target, StandardCopyOption.ATOMIC_MOVE);
    }
  }

  private Path part() {
    return sibling(ProcessHandle.current().pid() + ".part");
  }

  private Path aside() {
    return sibling("old");
  }

  private Path sibling(String ending) {
    return target.resolveSibling("." + target.getFileName() + HIDDEN_MARK + ending);
  }

  private void makeParents(List<Path> made) throws IOException {
    for (Path parent = target.getParent();
        parent != null && !exists(parent);
        parent = parent.getParent()) {
      made.add(parent);
    }
    Files.createDirectories(target.getParent());
  }

  private static boolean exists(Path path) {
    return Files.exists(path, LinkOption.NOFOLLOW_LINKS);
  }

  private OutputFailedException failure(IOException e) {
    return new OutputFailedException(
        label
            + ": output cannot be written ("
            + e.getMessage()
            + "); check free space and permissions",
        e);
  }
}
