package org.meadowmark.core.write.folder;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.stream.Stream;

/** Lists and deletes folders; links are never followed. */
final class FolderTree {
  private FolderTree() {}

  /** Names of all files below a folder, relative to it, with forward slashes, sorted. */
  static List<String> files(Path folder) throws IOException {
    try (Stream<Path> paths = Files.walk(folder)) {
      return paths
          .filter(path -> !Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS))
          .map(path -> folder.relativize(path).toString().replace('\\', '/'))
          .sorted()
          .toList();
    } catch (UncheckedIOException e) {
      // Another run replaces the folder just now.
      throw e.getCause();
    }
  }

  static boolean isEmpty(Path folder) throws IOException {
    try (Stream<Path> children = Files.list(folder)) {
      return children.findAny().isEmpty();
    }
  }

  static void delete(Path folder) throws IOException {
    deleteAllBut(folder, null);
  }

  /** Deletes as much as can be deleted. */
  static void deleteQuietly(Path folder) {
    if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    try {
      delete(folder);
    } catch (IOException e) {
      // The caller looks for what is left, now or in the next run.
    }
  }

  /** Renames in one step, within one folder. */
  static void rename(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
  }

  /** Deletes everything but one file and the folders it is in; everything where that is null. */
  static void deleteAllBut(Path folder, Path kept) throws IOException {
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            if (!file.equals(kept)) {
              Files.deleteIfExists(file);
            }
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFileFailed(Path file, IOException failure)
              throws IOException {
            // Another run may be clearing up the same folder.
            if (failure instanceof NoSuchFileException) {
              return FileVisitResult.CONTINUE;
            }
            throw failure;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path visited, IOException failure)
              throws IOException {
            if (failure != null && !(failure instanceof NoSuchFileException)) {
              throw failure;
            }
            if (kept == null || !kept.startsWith(visited)) {
              Files.deleteIfExists(visited);
            }
            return FileVisitResult.CONTINUE;
          }
        });
  }

  /** Deletes folders in the order given until one is not empty. */
  static void deleteWhileEmpty(List<Path> folders) throws IOException {
    for (Path folder : folders) {
      if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS) || !isEmpty(folder)) {
        return;
      }
      Files.delete(folder);
    }
  }
}
