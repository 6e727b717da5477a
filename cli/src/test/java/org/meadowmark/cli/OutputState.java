package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.meadowmark.core.write.record.FileDigest;

/** What is in a folder, byte for byte. */
final class OutputState {
  private OutputState() {}

  /** Digest of every file by its path below the folder. */
  static SortedMap<String, String> of(Path folder) throws IOException {
    SortedMap<String, String> state = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        state.put(
            folder.relativize(file).toString().replace('\\', '/'),
            FileDigest.of("x", file).sha256());
      }
    }
    return state;
  }

  /** Copies every file below a folder and says what there is. */
  static SortedMap<String, String> copy(Path from, Path to) throws IOException {
    SortedMap<String, String> files = of(from);
    for (String file : files.keySet()) {
      Files.createDirectories(to.resolve(file).getParent());
      Files.copy(from.resolve(file), to.resolve(file));
    }
    return files;
  }

  /** Names in a folder, hidden ones too. */
  static List<String> names(Path folder) throws IOException {
    try (Stream<Path> children = Files.list(folder)) {
      return children.map(child -> child.getFileName().toString()).sorted().toList();
    }
  }

  /** Every file that the run record lists is there as it was written, and no other. */
  static void assertWhole(Path output) throws IOException {
    JsonNode record =
        new ObjectMapper().readTree(Files.readString(output.resolve("run-record.json")));
    SortedMap<String, String> listed = new TreeMap<>();
    record
        .path("outputs")
        .forEach(file -> listed.put(file.path("file").asText(), file.path("sha256").asText()));
    assertThat(listed).isNotEmpty();
    SortedMap<String, String> found = of(output);
    found.remove("run-record.json");
    assertThat(found).isEqualTo(listed);
  }
}
