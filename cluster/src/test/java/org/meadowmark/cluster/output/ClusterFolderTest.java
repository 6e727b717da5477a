package org.meadowmark.cluster.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.hadoop.conf.Configuration;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.model.OutputExistsException;

/** The folder appears whole or not at all, and only an earlier output is replaced. */
class ClusterFolderTest {
  @TempDir Path folder;

  private Path output;

  @BeforeEach
  void name() {
    output = folder.resolve("output");
  }

  private ClusterFolder open(boolean overwrite) {
    return new ClusterFolder(output.toString(), overwrite, new Configuration());
  }

  private List<String> left() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  private void write(boolean overwrite, String text) {
    try (ClusterFolder opened = open(overwrite)) {
      opened.write("text", text);
      opened.write(ClusterFolder.RECORD, "{}");
      opened.commit();
    }
  }

  @Test
  void nothingIsThereBeforeAllIsAndNothingIsLeftOfWhatWasNotFinished() throws IOException {
    try (ClusterFolder opened = open(false)) {
      opened.write("text", "half");
      assertThat(output).doesNotExist();
    }
    assertThat(left()).isEmpty();
    write(false, "whole");
    assertThat(output.resolve("text")).hasContent("whole");
    assertThat(left()).containsExactly("output");
  }

  @Test
  void onlyAnEarlierOutputIsReplacedAndOnlyWhereThatIsAsked() throws IOException {
    write(false, "first");
    assertThatThrownBy(() -> open(false))
        .isInstanceOf(OutputExistsException.class)
        .hasMessageContaining("already exists")
        .hasMessageContaining("--overwrite");
    write(true, "second");
    assertThat(output.resolve("text")).hasContent("second");
    assertThat(left()).containsExactly("output");
    Files.delete(output.resolve(ClusterFolder.RECORD));
    assertThatThrownBy(() -> open(true)).isInstanceOf(OutputExistsException.class);
    assertThat(output.resolve("text")).hasContent("second");
  }

  @Test
  void foldersOfWorkersAreTakenByNameAndOtherTriesGo() throws IOException {
    try (ClusterFolder opened = open(false)) {
      Path tries = Path.of(new org.apache.hadoop.fs.Path(opened.tries()).toUri().getPath());
      for (String one : List.of("first", "second")) {
        Files.writeString(Files.createDirectories(tries.resolve(one)).resolve("text"), one);
      }
      opened.take(opened.tries() + "/second", "bays/north");
      opened.commit();
    }
    assertThat(output.resolve("bays/north/text")).hasContent("second");
    assertThat(left()).containsExactly("output");
  }
}
