package org.meadowmark.core.write.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** The files of an output folder. */
public final class OutputFiles {
  private OutputFiles() {}

  /**
   * {@return digests of every file below a folder, by name}
   *
   * @param folder a folder that exists; names are relative to it
   * @throws IOException if one cannot be read
   */
  public static List<FileDigest> digests(Path folder) throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.walk(folder)) {
      files = all.filter(Files::isRegularFile).sorted().toList();
    }
    List<FileDigest> digests = new ArrayList<>();
    for (Path file : files) {
      digests.add(FileDigest.of(folder.relativize(file).toString(), file));
    }
    return digests;
  }
}
