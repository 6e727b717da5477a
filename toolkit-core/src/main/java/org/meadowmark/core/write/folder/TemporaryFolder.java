package org.meadowmark.core.write.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * A folder that is deleted when it is closed, or when the process is interrupted, unless its
 * content was committed.
 */
final class TemporaryFolder implements AutoCloseable {
  /** Moves the content to where it belongs. */
  @FunctionalInterface
  interface Commit {
    void run() throws IOException;
  }

  private static final int DELETE_ATTEMPTS = 20;

  private final Path path;
  private final List<Path> madeParents;
  private final Thread onInterrupt;
  private boolean finished;

  private TemporaryFolder(Path path, List<Path> madeParents) {
    this.path = path;
    this.madeParents = List.copyOf(madeParents);
    this.onInterrupt = new Thread(this::abandon, "remove unfinished output");
  }

  /**
   * Makes the folder.
   *
   * @param path where
   * @param madeParents folders made for it, innermost first: deleted with it if they are empty then
   */
  static TemporaryFolder create(Path path, List<Path> madeParents) throws IOException {
    if (Files.exists(path)) {
      FolderTree.delete(path);
    }
    Files.createDirectory(path);
    TemporaryFolder folder = new TemporaryFolder(path, madeParents);
    Runtime.getRuntime().addShutdownHook(folder.onInterrupt);
    return folder;
  }

  /** Runs the commit unless the process is already being stopped. */
  synchronized void commit(Commit commit) throws IOException {
    if (finished) {
      throw new IOException("the run was interrupted");
    }
    commit.run();
    finished = true;
  }

  @Override
  public void close() {
    abandon();
    try {
      Runtime.getRuntime().removeShutdownHook(onInterrupt);
    } catch (IllegalStateException e) {
      // The process is stopping: the hook runs anyway and finds nothing left to do.
    }
  }

  private synchronized void abandon() {
    if (finished) {
      return;
    }
    finished = true;
    // While the process stops, the writing thread may still add a file: try again.
    for (int attempt = 0; attempt < DELETE_ATTEMPTS && Files.exists(path); attempt++) {
      try {
        FolderTree.delete(path);
        FolderTree.deleteWhileEmpty(madeParents);
      } catch (IOException e) {
        Thread.yield();
      }
    }
  }
}
