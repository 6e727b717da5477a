package org.meadowmark.core.write.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

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

  private static final int MILLIS_BETWEEN_DELETES = 10;
  private static final int MOST_DELETES_ON_INTERRUPT = 200;

  private final Path path;
  private final List<Path> madeParents;
  private final Thread onInterrupt;
  private final CountDownLatch writerGone = new CountDownLatch(1);
  private boolean finished;

  private TemporaryFolder(Path path, List<Path> madeParents) {
    this.path = path;
    this.madeParents = List.copyOf(madeParents);
    this.onInterrupt = new Thread(this::interrupted, "remove unfinished output");
  }

  /**
   * Makes the folder.
   *
   * @param path where; nothing may be there
   * @param madeParents folders made for it, innermost first: deleted with it if they are empty then
   */
  static TemporaryFolder create(Path path, List<Path> madeParents) throws IOException {
    TemporaryFolder folder = new TemporaryFolder(path, madeParents);
    try {
      Runtime.getRuntime().addShutdownHook(folder.onInterrupt);
    } catch (IllegalStateException e) {
      throw new IOException("the run was interrupted", e);
    }
    try {
      Files.createDirectory(path);
    } catch (IOException e) {
      folder.close();
      throw e;
    }
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
    if (finish()) {
      delete();
    }
    writerGone.countDown();
    try {
      Runtime.getRuntime().removeShutdownHook(onInterrupt);
    } catch (IllegalStateException e) {
      // The process is stopping: the hook runs anyway.
    }
  }

  private synchronized boolean finish() {
    boolean first = !finished;
    finished = true;
    return first;
  }

  /** Waits for a commit under way; else deletes, again and again while the run still writes. */
  private void interrupted() {
    if (!finish()) {
      return;
    }
    try {
      for (int i = 0; i < MOST_DELETES_ON_INTERRUPT; i++) {
        delete();
        if (writerGone.await(MILLIS_BETWEEN_DELETES, TimeUnit.MILLISECONDS)) {
          break;
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    delete();
  }

  private void delete() {
    FolderTree.deleteQuietly(path);
    if (!Files.exists(path)) {
      try {
        FolderTree.deleteWhileEmpty(madeParents);
      } catch (IOException e) {
        // An empty folder more: not worth another message than the failure's own.
      }
    }
  }
}
