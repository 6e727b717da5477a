package org.meadowmark.core.write.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.OutputExistsException;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.model.WriteAdvice;
import org.meadowmark.core.write.record.RunRecord;

/**
 * A folder that appears complete or not at all.
 *
 * <p>Content is written to a hidden folder beside the target and moved into place by one rename. A
 * folder that is replaced is renamed aside first, put back if the move fails, and deleted only
 * after the new one is in place. If the process is killed between the two renames, both the old and
 * the new folder are whole, beside the target; the next run puts the old one back and removes what
 * else a killed run left. Two runs into one folder never mix: each has hidden folders of its own,
 * and one rename decides.
 *
 * <p>Nothing rests on file locks. Both renames stay within one folder, so no move between drives is
 * ever needed; a file system that cannot do them in one step is refused, with the earlier output as
 * it was.
 *
 * <p>A folder is deleted only if it is empty or is an output of this program: it has the run record
 * and no file that the record does not list.
 */
public final class OutputFolder {
  private static final String OVERWRITE = "--overwrite";

  /** Files that programs leave beside an open GeoPackage. */
  private static final List<String> SIDE_FILES = List.of("-wal", "-shm", "-journal");

  private final Path target;
  private final String label;
  private final Replace replace;

  private enum Replace {
    NEVER,
    IF_ASKED,
    ASKED
  }

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
   * starts. What killed runs left beside it is put right first.
   *
   * @param folder the folder to make
   * @param overwrite whether an earlier output there may be replaced
   * @throws OutputExistsException if something is there that may not be replaced
   * @throws OutputFailedException if the folder that it is to be in may not be written to
   */
  public OutputFolder(Path folder, boolean overwrite) {
    this(folder, overwrite, List.of());
  }

  /**
   * Chooses a folder that is replaced only if no input is in it.
   *
   * @param folder the folder to make
   * @param overwrite whether an earlier output there may be replaced
   * @param inputs files that the run reads
   * @throws OutputExistsException if something is there that may not be replaced
   * @throws OutputFailedException if the folder that it is to be in may not be written to
   */
  public OutputFolder(Path folder, boolean overwrite, Collection<Path> inputs) {
    this(folder, overwrite ? Replace.ASKED : Replace.IF_ASKED, inputs);
  }

  private OutputFolder(Path folder, Replace replace, Collection<Path> inputs) {
    this.label = folder.toString();
    this.replace = replace;
    try {
      this.target = place(folder);
      new Leftovers(target).settle();
      checkTarget();
      checkInputs(inputs);
      checkNoDrive();
      checkParent();
    } catch (IOException e) {
      throw failure(e);
    }
  }

  /**
   * Chooses a folder that is never replaced.
   *
   * @param folder the folder to make
   * @return the folder, still to be written
   * @throws OutputExistsException if it exists
   * @throws OutputFailedException if the folder that it is to be in may not be written to
   */
  public static OutputFolder neverReplaced(Path folder) {
    return new OutputFolder(folder, Replace.NEVER, List.of());
  }

  /** Links on the way are followed first: only then does ".." mean what the system means by it. */
  private Path place(Path folder) throws IOException {
    Path absolute = folder.toAbsolutePath();
    Path name = absolute.getFileName();
    boolean named = name != null && !name.toString().equals(".") && !name.toString().equals("..");
    Path there = named ? absolute.getParent() : absolute;
    Deque<Path> missing = new ArrayDeque<>();
    while (there != null && !Files.exists(there)) {
      missing.push(there.getFileName());
      there = there.getParent();
    }
    Path place = there == null ? absolute : there.toRealPath();
    for (Path each : missing) {
      place = place.resolve(each);
    }
    place = (named ? place.resolve(name) : place).normalize();
    if (place.getFileName() == null) {
      throw new OutputFailedException(label + ": is not a folder to write to; name a new folder");
    }
    return place;
  }

  /**
   * Writes the folder.
   *
   * @param content what goes into it
   * @throws OutputFailedException if it cannot be written; nothing is left behind
   * @throws OutputExistsException if another run wrote it in the meantime
   */
  public void write(Content content) {
    List<Path> madeParents = new ArrayList<>();
    RunMark mark = RunMark.begin();
    HiddenNames names = new HiddenNames(target);
    Path part = names.path(HiddenNames.Kind.PART, mark);
    try {
      makeParents(madeParents);
      try (TemporaryFolder temporary = TemporaryFolder.create(part, madeParents)) {
        fill(part, content);
        checkTarget();
        temporary.commit(() -> moveIntoPlace(part, names.path(HiddenNames.Kind.OLD, mark)));
      }
    } catch (IOException e) {
      throw failure(e);
    } finally {
      mark.end();
    }
  }

  private void fill(Path part, Content content) throws IOException {
    try {
      content.writeTo(part);
    } catch (OutputFailedException e) {
      throw new OutputFailedException(e.getMessage().replace(part.toString(), label), e);
    } catch (IOException | RuntimeException e) {
      Optional<IOException> fault = OutputFault.in(e);
      if (fault.isEmpty() || e instanceof MeadowmarkException) {
        throw e;
      }
      String file =
          OutputFault.lastWritten(part)
              .map(path -> Path.of(label).resolve(part.relativize(path).toString()).toString())
              .orElse(label);
      throw new OutputFailedException(file + ": " + OutputFault.reasonAndAdvice(fault.get()), e);
    }
  }

  private void moveIntoPlace(Path part, Path old) throws IOException {
    boolean replaces = exists(target);
    if (replaces) {
      try {
        FolderTree.rename(target, old);
      } catch (IOException e) {
        throw new OutputFailedException(
            label
                + ": the earlier output cannot be moved aside ("
                + WriteAdvice.reason(e)
                + "); close programs that have it open, or name another folder",
            e);
      }
    }
    try {
      FolderTree.rename(part, target);
    } catch (IOException e) {
      if (exists(target)) {
        if (replaces) {
          FolderTree.deleteQuietly(old);
        }
        throw new OutputExistsException(
            label
                + ": was written by another run in the meantime and is kept; name another folder");
      }
      if (replaces) {
        FolderTree.rename(old, target);
      }
      throw e;
    }
    if (replaces) {
      deleteOutput(old);
    }
  }

  /**
   * Deletes an earlier output, its record last. The new one is in place by then, so what cannot be
   * deleted is no failure; the next run tries again.
   */
  private static void deleteOutput(Path folder) {
    try {
      FolderTree.deleteAllBut(folder, folder.resolve(RunRecord.FILE_NAME));
    } catch (IOException e) {
      return;
    }
    FolderTree.deleteQuietly(folder);
  }

  private void checkTarget() throws IOException {
    if (!exists(target)) {
      return;
    }
    if (!Files.isDirectory(target, LinkOption.NOFOLLOW_LINKS)) {
      throw new OutputExistsException(
          label + ": exists and is not a folder; name a folder that does not exist yet");
    }
    if (replace != Replace.ASKED) {
      throw new OutputExistsException(
          label
              + ": already exists; name another folder, or "
              + (replace == Replace.NEVER ? "remove it first" : "replace it with " + OVERWRITE));
    }
    checkReplaceable();
  }

  private void checkInputs(Collection<Path> inputs) throws IOException {
    if (!exists(target)) {
      return;
    }
    for (Path input : inputs) {
      if (Files.exists(input) && input.toRealPath().startsWith(target)) {
        throw new OutputExistsException(
            label
                + ": holds "
                + target.relativize(input.toRealPath())
                + ", which this run reads, so it is not replaced; name another folder");
      }
    }
  }

  /** A folder where a drive is mounted can be filled, but not be renamed. */
  private void checkNoDrive() {
    boolean isDrive;
    try {
      isDrive =
          exists(target)
              && !Files.getFileStore(target).equals(Files.getFileStore(target.getParent()));
    } catch (IOException e) {
      // Not every system tells; the move will.
      return;
    }
    if (isDrive) {
      throw new OutputFailedException(
          label + ": is a drive of its own and cannot be replaced; name a folder on it");
    }
  }

  /** Looked at before the work, so that hours of it are not lost to a folder without permission. */
  private void checkParent() {
    Path parent = target.getParent();
    while (!exists(parent)) {
      parent = parent.getParent();
    }
    if (!Files.isDirectory(parent)) {
      throw new OutputFailedException(
          label + ": cannot be made, because " + parent + " is not a folder; name another folder");
    }
    if (!Files.isWritable(parent)) {
      throw new OutputFailedException(
          label
              + ": cannot be made, because "
              + parent
              + " may not be written to; name another folder, or change the permissions");
    }
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
    return new OutputFailedException(label + ": " + OutputFault.reasonAndAdvice(e), e);
  }
}
