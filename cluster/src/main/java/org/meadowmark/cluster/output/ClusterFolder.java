package org.meadowmark.cluster.output;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.meadowmark.core.model.OutputExistsException;
import org.meadowmark.core.model.OutputFailedException;

/**
 * A folder on any file system that Spark writes to. It appears whole or not at all: everything is
 * written beside it and moved when complete.
 *
 * <p>A folder is replaced only if it holds the record of an earlier run. On a store of objects,
 * where a move is a copy, a run that is killed while it moves leaves both.
 */
public final class ClusterFolder implements AutoCloseable {
  /** Name of the record of the run, which marks a folder as output of this program. */
  public static final String RECORD = "run-record.json";

  private final FileSystem files;
  private final Path target;
  private final Path part;
  private final Path tries;
  private final String label;
  private final boolean overwrite;

  /**
   * Chooses a folder.
   *
   * @param target the folder to make, a path or an address
   * @param overwrite whether an earlier output there may be replaced
   * @param configuration of the session
   * @throws OutputExistsException if something is there that may not be replaced
   */
  public ClusterFolder(String target, boolean overwrite, Configuration configuration) {
    this.label = target;
    this.overwrite = overwrite;
    try {
      Path given = new Path(target);
      files = given.getFileSystem(configuration);
      this.target = given.makeQualified(files.getUri(), files.getWorkingDirectory());
      this.part = beside("part");
      this.tries = beside("tries");
      check();
      files.delete(part, true);
      files.delete(tries, true);
    } catch (IOException | IllegalArgumentException e) {
      throw failure(e);
    }
  }

  /** Where a file or folder of the output is written before all is moved. */
  public String inside(String name) {
    return new Path(part, name).toString();
  }

  /** The hidden folder that is written to, for files of this machine. */
  public String path() {
    return part.toString();
  }

  /** Writes a text. */
  public void write(String name, String text) {
    try (OutputStream out = files.create(new Path(part, name), false)) {
      out.write(text.getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw failure(e);
    }
  }

  /**
   * Where workers write what may be taken into the output. It is beside the output, so that one
   * that comes too late, or that should have stopped, writes nothing into it.
   */
  public String tries() {
    return tries.toString();
  }

  /**
   * Takes a folder that a worker wrote into the output.
   *
   * @param place folder inside {@link #tries}, as the worker named it
   * @param name name that it is to have in the output
   */
  public void take(String place, String name) {
    Path to = new Path(part, name);
    try {
      files.mkdirs(to.getParent());
      move(new Path(place), to);
    } catch (IOException e) {
      throw failure(e);
    }
  }

  /** Moves everything into place. */
  public void commit() {
    Path aside = beside("old");
    try {
      check();
      boolean replaces = files.exists(target);
      if (replaces) {
        move(target, aside);
      }
      move(part, target);
      if (replaces) {
        files.delete(aside, true);
      }
    } catch (IOException e) {
      throw failure(e);
    }
  }

  /** Removes what was written and not moved. */
  @Override
  public void close() {
    try {
      files.delete(part, true);
      files.delete(tries, true);
    } catch (IOException e) {
      throw failure(e);
    }
  }

  private Path beside(String ending) {
    return new Path(target.getParent(), "." + target.getName() + ".meadowmark-" + ending);
  }

  private void move(Path from, Path to) throws IOException {
    if (!files.rename(from, to)) {
      throw new IOException("cannot move " + from + " to " + to);
    }
  }

  private void check() throws IOException {
    if (!files.exists(target)) {
      return;
    }
    if (!overwrite) {
      throw new OutputExistsException(
          label + ": already exists; name another folder, or replace it with --overwrite");
    }
    if (!files.exists(new Path(target, RECORD))) {
      throw new OutputExistsException(
          label
              + ": has no "
              + RECORD
              + " of an earlier run, so --overwrite does not replace it; name another folder");
    }
  }

  private OutputFailedException failure(Exception e) {
    return new OutputFailedException(
        label + ": cannot be written (" + e.getMessage() + "); check space and permissions", e);
  }
}
