package org.meadowmark.core.write.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.write.record.RunRecord;

class OutputFolderTest {
  @TempDir Path home;

  @Test
  void appearsWholeWithNothingBesideIt() throws IOException {
    Path out = home.resolve("out");
    new OutputFolder(out, false)
        .write(
            folder -> {
              content("first").writeTo(folder);
              assertThat(out).doesNotExist();
            });
    assertThat(Files.readString(out.resolve("data.txt"))).isEqualTo("first");
    assertThat(children(home)).containsExactly("out");
  }

  @Test
  void aFailureInTheMiddleLeavesNothingNotEvenParents() throws IOException {
    Path out = home.resolve("a/b/out");
    assertThatThrownBy(
            () ->
                new OutputFolder(out, false)
                    .write(
                        folder -> {
                          Files.createDirectories(folder.resolve("deep/er"));
                          Files.writeString(folder.resolve("deep/er/data.txt"), "x");
                          throw new IOException("disk full");
                        }))
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining("disk full")
        .hasMessageContaining("check free space");
    assertThat(children(home)).isEmpty();
  }

  @Test
  void anyOtherFailureLeavesNothingToo() throws IOException {
    Path out = home.resolve("out");
    assertThatThrownBy(
            () ->
                new OutputFolder(out, false)
                    .write(
                        folder -> {
                          Files.writeString(folder.resolve("data.txt"), "x");
                          throw new IllegalStateException("a bug");
                        }))
        .isInstanceOf(IllegalStateException.class);
    assertThat(children(home)).isEmpty();
  }

  @Test
  void refusesAnExistingFolderBeforeAnyWorkAndNamesTheOption() throws IOException {
    Path out = home.resolve("out");
    new OutputFolder(out, false).write(content("first"));
    assertThatThrownBy(() -> new OutputFolder(out, false))
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining("out: already exists")
        .hasMessageContaining("--overwrite");
    assertThat(Files.readString(out.resolve("data.txt"))).isEqualTo("first");
  }

  @Test
  void overwriteReplacesTheOldOneOnceTheNewOneIsComplete() throws IOException {
    Path out = home.resolve("out");
    new OutputFolder(out, false).write(content("first"));
    new OutputFolder(out, true)
        .write(
            folder -> {
              assertThat(Files.readString(out.resolve("data.txt"))).isEqualTo("first");
              content("second").writeTo(folder);
            });
    assertThat(Files.readString(out.resolve("data.txt"))).isEqualTo("second");
    assertThat(children(home)).containsExactly("out");
  }

  @Test
  void overwriteThatFailsKeepsTheOldOne() throws IOException {
    Path out = home.resolve("out");
    new OutputFolder(out, false).write(content("first"));
    assertThatThrownBy(
            () ->
                new OutputFolder(out, true)
                    .write(
                        folder -> {
                          throw new IOException("disk full");
                        }))
        .isInstanceOf(MeadowmarkException.class);
    assertThat(Files.readString(out.resolve("data.txt"))).isEqualTo("first");
    assertThat(children(home)).containsExactly("out");
  }

  @Test
  void overwriteNeverDeletesAFolderOfSomethingElse() throws IOException {
    Path photos = Files.createDirectory(home.resolve("photos"));
    Files.writeString(photos.resolve("boat.jpg"), "x");
    assertThatThrownBy(() -> new OutputFolder(photos, true))
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining("no " + RunRecord.FILE_NAME);
    assertThat(photos.resolve("boat.jpg")).exists();
  }

  @Test
  void overwriteNeverDeletesARecordOfAnotherProgram() throws IOException {
    Path other = Files.createDirectory(home.resolve("other"));
    for (String text : List.of("{\"program\": \"else\", \"outputs\": []}", "not JSON", "", "[]")) {
      Files.writeString(other.resolve(RunRecord.FILE_NAME), text);
      assertThatThrownBy(() -> new OutputFolder(other, true))
          .as(text)
          .isInstanceOf(MeadowmarkException.class);
    }
    assertThat(other.resolve(RunRecord.FILE_NAME)).exists();
  }

  @Test
  void overwriteNeverDeletesAFileThatTheUserAdded() throws IOException {
    Path out = home.resolve("out");
    new OutputFolder(out, false).write(content("first"));
    Files.writeString(out.resolve("notes.md"), "mine");
    assertThatThrownBy(() -> new OutputFolder(out, true))
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining("notes.md");
    assertThat(out.resolve("notes.md")).exists();
  }

  @Test
  void aFileAddedWhileTheRunGoesOnIsKept() throws IOException {
    Path out = home.resolve("out");
    new OutputFolder(out, false).write(content("first"));
    assertThatThrownBy(
            () ->
                new OutputFolder(out, true)
                    .write(
                        folder -> {
                          content("second").writeTo(folder);
                          Files.writeString(out.resolve("notes.md"), "mine");
                        }))
        .isInstanceOf(MeadowmarkException.class);
    assertThat(out.resolve("notes.md")).exists();
    assertThat(children(home)).containsExactly("out");
  }

  @Test
  void overwriteTakesAnEmptyFolderButNoFileAndNoLink() throws IOException {
    Path empty = Files.createDirectory(home.resolve("empty"));
    new OutputFolder(empty, true).write(content("first"));
    assertThat(empty.resolve("data.txt")).exists();
    Path file = Files.writeString(home.resolve("file"), "x");
    assertThatThrownBy(() -> new OutputFolder(file, true)).isInstanceOf(MeadowmarkException.class);
    Path link = Files.createSymbolicLink(home.resolve("link"), empty);
    assertThatThrownBy(() -> new OutputFolder(link, true)).isInstanceOf(MeadowmarkException.class);
    assertThat(empty.resolve("data.txt")).exists();
  }

  @Test
  void theOldFolderComesBackIfARunWasKilledBetweenTheRenames() throws IOException {
    Path out = home.resolve("out");
    new OutputFolder(out, false).write(content("first"));
    Files.move(out, home.resolve(".out.meadowmark-old"));
    assertThatThrownBy(() -> new OutputFolder(out, false)).hasMessageContaining("--overwrite");
    assertThat(Files.readString(out.resolve("data.txt"))).isEqualTo("first");
    assertThat(children(home)).containsExactly("out");
  }

  private static OutputFolder.Content content(String text) {
    return folder -> {
      Files.writeString(folder.resolve("data.txt"), text);
      Files.writeString(
          folder.resolve(RunRecord.FILE_NAME),
          "{\"program\": \"Meadowmark\", \"outputs\": [{\"file\": \"data.txt\"}]}");
    };
  }

  private static List<String> children(Path folder) throws IOException {
    try (Stream<Path> paths = Files.list(folder)) {
      return paths.map(path -> path.getFileName().toString()).sorted().toList();
    }
  }
}
