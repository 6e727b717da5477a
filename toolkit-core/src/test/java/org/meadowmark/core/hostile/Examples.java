package org.meadowmark.core.hostile;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Files from which damaged ones are grown: seeds, and what fuzzing found. */
record Examples(Path root) {

  /** Files of a reader by name. */
  Map<String, byte[]> of(HostileReader reader) throws IOException {
    Map<String, byte[]> files = new TreeMap<>();
    try (Stream<Path> all = Files.list(root.resolve(reader.key()))) {
      for (Path file : all.toList()) {
        files.put(file.getFileName().toString(), Files.readAllBytes(file));
      }
    }
    return files;
  }

  byte[] named(HostileReader reader, String name) {
    try {
      return Files.readAllBytes(root.resolve(reader.key()).resolve(name));
    } catch (IOException e) {
      throw HostileCases.unchecked(e);
    }
  }

  List<byte[]> seeds(HostileReader reader) throws IOException {
    return of(reader).entrySet().stream()
        .filter(file -> file.getKey().startsWith("seed"))
        .map(Map.Entry::getValue)
        .toList();
  }
}
