package org.meadowmark.core.write.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.OutputExistsException;
import org.meadowmark.core.model.OutputFailedException;
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
    Files.move(out, hidden("out", endedRun(), HiddenNames.Kind.OLD));
    Path part = Files.createDirectory(hidden("out", endedRun(), HiddenNames.Kind.PART));
    content("second").writeTo(part);
    assertThatThrownBy(() -> new OutputFolder(out, false)).hasMessageContaining("--overwrite");
    assertThat(Files.readString(out.resolve("data.txt"))).isEqualTo("first");
    assertThat(children(home)).containsExactly("out");
  }

  @Test
  void ofTwoFoldersSetAsideTheWholeOneComesBack() throws IOException {
    Path out = home.resolve("out");
    Path torn = Files.createDirectory(hidden("out", endedRun(), HiddenNames.Kind.OLD));
    content("torn").writeTo(torn);
    Files.delete(torn.resolve("data.txt"));
    Path whole = Files.createDirectory(hidden("out", endedRun(), HiddenNames.Kind.OLD));
    content("whole").writeTo(whole);
    Files.setLastModifiedTime(
        whole.resolve(RunRecord.FILE_NAME), FileTime.from(Instant.parse("2001-01-01T00:00:00Z")));
    new OutputFolder(out, true);
    assertThat(Files.readString(out.resolve("data.txt"))).isEqualTo("whole");
    assertThat(children(home)).containsExactly("out");
  }

  @Test
  void whatAKilledRunLeftIsRemovedByTheNext() throws IOException {
    Path out = home.resolve("out");
    Files.createDirectory(hidden("out", endedRun(), HiddenNames.Kind.PART));
    Path halfDeleted = Files.createDirectory(hidden("out", endedRun(), HiddenNames.Kind.OLD));
    new OutputFolder(out, true);
    assertThat(out).as("an old folder comes back even if empty").isEmptyDirectory();
    Files.createDirectory(halfDeleted);
    new OutputFolder(out, true).write(content("first"));
    assertThat(children(home)).containsExactly("out");
  }

  @Test
  void foldersOfRunsThatGoOnAreLeftAlone() throws IOException {
    RunMark here = RunMark.begin();
    RunMark otherProcess =
        new RunMark(ProcessHandle.current().parent().orElseThrow().pid(), here.computer(), "a1");
    RunMark elsewhere = new RunMark(1, "anothercomputer", "b2");
    for (RunMark mark : List.of(here, otherProcess, elsewhere)) {
      Files.createDirectory(hidden("out", mark, HiddenNames.Kind.PART));
    }
    Path others = Files.createDirectory(home.resolve(".out.meadowmark-notes.part"));
    new OutputFolder(home.resolve("out"), false).write(content("first"));
    assertThat(children(home)).hasSize(5);
    here.end();
    Files.setLastModifiedTime(
        hidden("out", elsewhere, HiddenNames.Kind.PART),
        FileTime.from(Instant.now().minus(2, ChronoUnit.DAYS)));
    new OutputFolder(home.resolve("out"), true);
    assertThat(children(home))
        .containsExactlyInAnyOrder(
            "out",
            others.getFileName().toString(),
            hidden("out", otherProcess, HiddenNames.Kind.PART).getFileName().toString());
  }

  @Test
  void whoComesSecondIsToldAndTheFirstIsKept() throws IOException {
    Path out = home.resolve("out");
    OutputFolder second = new OutputFolder(out, false);
    assertThatThrownBy(
            () ->
                second.write(
                    folder -> {
                      content("second").writeTo(folder);
                      new OutputFolder(out, false).write(content("first"));
                    }))
        .isInstanceOf(OutputExistsException.class)
        .hasMessageContaining("out: already exists");
    assertThat(Files.readString(out.resolve("data.txt"))).isEqualTo("first");
    assertThat(children(home)).containsExactly("out");
  }

  /** Every reader of the folder sees one run's output, never a mixture and never a torn one. */
  @Test
  void manyRunsAtOnceNeverMix() throws Exception {
    Path out = home.resolve("out");
    int runs = 40;
    ExecutorService threads = Executors.newFixedThreadPool(4);
    AtomicInteger done = new AtomicInteger();
    List<Callable<Void>> tasks = new ArrayList<>();
    for (int i = 0; i < runs; i++) {
      String text = "run " + i;
      tasks.add(
          () -> {
            try {
              new OutputFolder(out, true)
                  .write(
                      folder -> {
                        Files.writeString(folder.resolve("other.txt"), text);
                        content(text, "data.txt", "other.txt").writeTo(folder);
                      });
              done.incrementAndGet();
            } catch (OutputExistsException | OutputFailedException e) {
              assertThat(e.getMessage()).contains("out: ");
            }
            return null;
          });
    }
    try {
      for (Future<Void> each : threads.invokeAll(tasks)) {
        each.get();
      }
    } finally {
      threads.shutdown();
    }
    assertThat(done.get()).isPositive();
    assertThat(Files.readString(out.resolve("data.txt")))
        .isEqualTo(Files.readString(out.resolve("other.txt")));
    new OutputFolder(out, true);
    assertThat(children(home)).containsExactly("out");
  }

  @Test
  void aFolderThatHoldsAnInputIsNotReplaced() throws IOException {
    Path out = home.resolve("out");
    new OutputFolder(out, false).write(content("first"));
    Path input = Files.createSymbolicLink(home.resolve("input.txt"), out.resolve("data.txt"));
    assertThatThrownBy(() -> new OutputFolder(out, true, List.of(input)))
        .isInstanceOf(OutputExistsException.class)
        .hasMessageContaining("holds data.txt, which this run reads");
    new OutputFolder(out, true, List.of(home.resolve("elsewhere.txt")));
  }

  @Test
  void placesThatCannotHoldAFolderAreRefusedBeforeAnyWork() throws IOException {
    Path file = Files.writeString(home.resolve("file"), "x");
    assertThatThrownBy(() -> new OutputFolder(file.resolve("a/out"), false))
        .isInstanceOf(OutputFailedException.class)
        .hasMessageContaining("is not a folder");
    Path nowhere = Files.createSymbolicLink(home.resolve("nowhere"), home.resolve("gone"));
    assertThatThrownBy(() -> new OutputFolder(nowhere.resolve("out"), false))
        .isInstanceOf(OutputFailedException.class)
        .hasMessageContaining("is not a folder");
    assertThatThrownBy(() -> OutputFolder.neverReplaced(home))
        .isInstanceOf(OutputExistsException.class)
        .hasMessageContaining("remove it first");
  }

  @Test
  void aParentWithoutPermissionIsRefusedBeforeAnyWork() throws IOException {
    Path locked = Files.createDirectory(home.resolve("locked"));
    assumeTrue(locked.toFile().setWritable(false) && !Files.isWritable(locked));
    try {
      assertThatThrownBy(() -> new OutputFolder(locked.resolve("a/out"), false))
          .isInstanceOf(OutputFailedException.class)
          .hasMessageContaining("may not be written to");
    } finally {
      locked.toFile().setWritable(true);
    }
  }

  @Test
  void theFileThatFailedIsNamedWithoutTheHiddenFolder() {
    Path out = home.resolve("out");
    assertThatThrownBy(
            () ->
                new OutputFolder(out, false)
                    .write(
                        folder -> {
                          Files.createDirectory(folder.resolve("tables"));
                          Files.writeString(folder.resolve("tables/beds.csv"), "x");
                          throw new IllegalStateException(
                              new IOException("No space left on device"));
                        }))
        .isInstanceOf(OutputFailedException.class)
        .hasMessageContaining(out.resolve("tables/beds.csv") + ": output cannot be written")
        .hasMessageContaining("make space on its drive");
    assertThatThrownBy(
            () ->
                new OutputFolder(out, false)
                    .write(
                        folder -> {
                          throw new OutputFailedException(folder.resolve("x.gpkg") + ": full");
                        }))
        .hasMessage(out.resolve("x.gpkg") + ": full");
    assertThat(home).isEmptyDirectory();
  }

  @Test
  void longNamesBlanksAndOtherScriptsAreFine() throws IOException {
    for (String name : List.of("n".repeat(250), "ü".repeat(120), "a b", "海草 é", "-x", "a.b.")) {
      Path out = home.resolve(name);
      new OutputFolder(out, false).write(content("first"));
      new OutputFolder(out, true).write(content("second"));
      assertThat(Files.readString(out.resolve("data.txt"))).isEqualTo("second");
    }
    assertThat(children(home)).hasSize(6);
  }

  @Test
  void linksOnTheWayAreFollowedBeforeDotsAreTakenAway() throws IOException {
    Path far = Files.createDirectories(home.resolve("far/away"));
    Path link = Files.createSymbolicLink(home.resolve("link"), far);
    new OutputFolder(link.resolve("../out"), false).write(content("first"));
    assertThat(home.resolve("far/out/data.txt")).exists();
    assertThat(home.resolve("out")).doesNotExist();
    new OutputFolder(link.resolve("in"), false).write(content("first"));
    assertThat(far.resolve("in/data.txt")).exists();
  }

  /** A run of this process that is over. */
  private static RunMark endedRun() {
    RunMark mark = RunMark.begin();
    mark.end();
    return mark;
  }

  private Path hidden(String name, RunMark mark, HiddenNames.Kind kind) {
    return new HiddenNames(home.resolve(name)).path(kind, mark);
  }

  private static OutputFolder.Content content(String text) {
    return content(text, "data.txt");
  }

  private static OutputFolder.Content content(String text, String... listed) {
    String list =
        Arrays.stream(listed)
            .map(file -> "{\"file\": \"" + file + "\"}")
            .collect(Collectors.joining(", "));
    return folder -> {
      Files.writeString(folder.resolve("data.txt"), text);
      Files.writeString(
          folder.resolve(RunRecord.FILE_NAME),
          "{\"program\": \"Meadowmark\", \"outputs\": [" + list + "]}");
    };
  }

  private static List<String> children(Path folder) throws IOException {
    try (Stream<Path> paths = Files.list(folder)) {
      return paths.map(path -> path.getFileName().toString()).sorted().toList();
    }
  }
}
