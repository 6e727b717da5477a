package org.meadowmark.core.write.folder;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
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

  /** Deletes everything but one file and the folders it is in; everything where that is null. */
  static void deleteAllBut(Path folder, Path kept) throws IOException {
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            if (!file.equals(kept)) {
              Files.delete(file);
            }
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path visited, IOException failure)
              throws IOException {
            if (failure != null) {
              throw failure;
            }
            if (kept == null || !kept.startsWith(visited)) {
              Files.delete(visited);
            }
            return FileVisitResult.CONTINUE;
          }
        });
  }

  /** Deletes folders in the order given until one is not empty. */
  static void deleteWhileEmpty(List<Path> folders) throws IOException {
    for (Path folder : folders) {
      if (!isEmpty(folder)) {
        return;
      }
      Files.delete(folder);
    }
  }
}
