package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.meadowmark.core.assessment.Assessment;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.SurveyFile;

/** What goes wrong around a run: places, space, memory, files that change, two runs at once. */
class FaultsTest {
  /** The collector that the launcher asks for; what it does with too little memory is tested. */
  private static final String OTHER_COLLECTOR = "-XX:+UseParallelGC";

  @TempDir static Path folder;
  private static Path survey;
  private static Path withoutChannel;

  @BeforeAll
  static void writeSurveys() throws IOException {
    survey = TinySurvey.write(folder.resolve("survey"), true);
    withoutChannel = TinySurvey.write(folder.resolve("without channel é"), false);
  }

  @ParameterizedTest
  @ValueSource(strings = {"assess", "compare-seasons", "make-sample"})
  void placesThatCannotHoldTheOutputAreRefusedBeforeAnyWork(String command) throws IOException {
    Path home = Files.createDirectories(folder.resolve("places-" + command));
    Path file = Files.writeString(home.resolve("file"), "mine");
    Terminal.Outcome onFile = run(command, file);
    assertThat(onFile.exitCode()).isEqualTo(ExitCode.OUTPUT_EXISTS.value());
    assertThat(onFile.err()).startsWith("error: " + file + ": ").hasLineCount(1);
    Terminal.Outcome below = run(command, file.resolve("out"));
    assertThat(below.exitCode()).isEqualTo(ExitCode.OUTPUT_FAILED.value());
    assertThat(below.err())
        .isEqualTo(
            "error: "
                + file.resolve("out")
                + ": cannot be made, because "
                + file
                + " is not a folder; name another folder\n");
    Path full = Files.createDirectory(home.resolve("full"));
    Files.writeString(full.resolve("notes.md"), "mine");
    assertThat(run(command, full).exitCode()).isEqualTo(ExitCode.OUTPUT_EXISTS.value());
    assertThat(OutputState.names(home)).containsExactly("file", "full");
    assertThat(file).hasContent("mine");
  }

  private static Terminal.Outcome run(String command, Path output) {
    List<String> arguments = new ArrayList<>(List.of(command, "--output=" + output));
    switch (command) {
      case "assess" -> arguments.add(survey.toString());
      case "compare-seasons" -> arguments.addAll(List.of(survey.toString(), survey.toString()));
      default -> arguments.addAll(List.of("--beds=100", "--scars=100"));
    }
    return Terminal.run(Main.commandLine(), arguments.toArray(String[]::new));
  }

  @Test
  void missingParentsAreMadeAndLinksAndOddNamesAreFine() throws IOException {
    Path far = Files.createDirectory(folder.resolve("far"));
    Path link = Files.createSymbolicLink(folder.resolve("link"), far);
    Path output = link.resolve("año 海草/" + "n".repeat(200) + "/the output");
    Terminal.Outcome outcome = assess(withoutChannel, output);
    assertThat(outcome.err()).isEmpty();
    assertThat(outcome.exitCode()).isZero();
    OutputState.assertWhole(far.resolve(link.relativize(output)));
    assertThat(OutputState.names(output.getParent())).containsExactly("the output");
  }

  /** A small file system in memory; a test that wants one skips where none can be mounted. */
  private record SmallDisk(Path root) implements AutoCloseable {
    static SmallDisk at(Path root) throws IOException, InterruptedException {
      Files.createDirectory(root);
      assumeTrue(
          system("mount", "-t", "tmpfs", "-o", "size=64m", "tmpfs", root.toString()) == 0,
          "skipped: only root can mount a small file system");
      return new SmallDisk(root);
    }

    void change(String option) throws InterruptedException {
      assertThat(system("mount", "-o", "remount," + option, root.toString())).isZero();
    }

    @Override
    public void close() {
      try {
        system("umount", "-l", root.toString());
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }

  /** A small file system in memory is filled at several points of the writing. */
  @Test
  void aFullDiskKeepsTheOldOutputAndLeavesNothing() throws Exception {
    try (SmallDisk small = SmallDisk.at(folder.resolve("disk"))) {
      Path disk = small.root();
      Path output = disk.resolve("out");
      assertThat(assess(survey, output).exitCode()).isZero();
      SortedMap<String, String> old = OutputState.of(output);
      long used = kibibytesUsed(disk);
      for (int free : new int[] {4, 100, 400, 800, used < 1200 ? 900 : 1200}) {
        small.change("size=" + (used + free) + "k");
        Terminal.Outcome full = assess(survey, output, "--overwrite");
        assertThat(full.err())
            .as("with %d KiB free", free)
            .startsWith("error: " + output)
            .contains("make space on its drive")
            .doesNotContain(".part")
            .hasLineCount(1);
        assertThat(full.exitCode()).isEqualTo(ExitCode.OUTPUT_FAILED.value());
        assertThat(OutputState.names(disk)).containsExactly("out");
        assertThat(OutputState.of(output)).isEqualTo(old);
        assertThat(openFiles(disk)).as("with %d KiB free", free).isEmpty();
      }
      Path sample = disk.resolve("sample");
      Terminal.Outcome noSample = run("make-sample", sample);
      assertThat(noSample.exitCode()).isEqualTo(ExitCode.OUTPUT_FAILED.value());
      assertThat(noSample.err()).startsWith("error: " + sample).contains("make space");
      assertThat(OutputState.names(disk)).containsExactly("out");
      small.change("size=64m");
      assertThat(assess(survey, output, "--overwrite").exitCode()).isZero();
      OutputState.assertWhole(output);
      small.change("ro");
      Terminal.Outcome readOnly = assess(survey, disk.resolve("other"));
      assertThat(readOnly.exitCode()).isEqualTo(ExitCode.OUTPUT_FAILED.value());
      assertThat(readOnly.err()).contains(disk + " may not be written to");
      // The output folder itself is a drive: it cannot be renamed.
      small.change("rw");
      assertThat(system("sh", "-c", "rm -rf '" + output + "'")).isZero();
      Terminal.Outcome drive = assess(survey, disk, "--overwrite");
      assertThat(drive.exitCode()).isEqualTo(ExitCode.OUTPUT_FAILED.value());
      assertThat(drive.err()).contains("is a drive of its own").contains("name a folder on it");
      assertThat(disk).isEmptyDirectory();
    }
  }

  /** Rows of a survey in parts wait in a folder of their own, on a drive that can be full too. */
  @Test
  void fullTemporaryFilesAreNamedAndLeaveNothing() throws Exception {
    try (SmallDisk small = SmallDisk.at(folder.resolve("small disk"))) {
      Path disk = small.root();
      Path output = folder.resolve("of a small disk");
      String[] command = {
        "assess-in-parts",
        survey.toString(),
        "--quiet",
        "--part-scars=1",
        "--temporary-files=" + disk,
        "--output=" + output
      };
      for (int free : new int[] {4, 12, 20}) {
        small.change("size=" + free + "k");
        Terminal.Outcome full = Terminal.run(Main.commandLine(), command);
        assertThat(full.err())
            .as("with %d KiB", free)
            .startsWith("error: ")
            .contains("the folder for temporary files " + disk + " cannot be written to")
            .contains("make space on its drive")
            .hasLineCount(1);
        assertThat(full.exitCode()).isEqualTo(ExitCode.OUTPUT_FAILED.value());
        assertThat(disk).isEmptyDirectory();
        assertThat(output).doesNotExist();
      }
      small.change("size=64m");
      assertThat(Terminal.run(Main.commandLine(), command).exitCode()).isZero();
      OutputState.assertWhole(output);
    }
  }

  /** Files of a folder that this process has open, where the system tells. */
  private static List<String> openFiles(Path below) throws IOException {
    Path list = Path.of("/proc/self/fd");
    List<String> open = new ArrayList<>();
    if (Files.isDirectory(list)) {
      for (String number : OutputState.names(list)) {
        try {
          String file = Files.readSymbolicLink(list.resolve(number)).toString();
          if (file.startsWith(below.toString())) {
            open.add(file);
          }
        } catch (NoSuchFileException e) {
          // Closed meanwhile.
        }
      }
    }
    return open;
  }

  @Test
  void inputThatChangesOrVanishesDuringTheRunIsRefused() throws IOException {
    Path changing = TinySurvey.write(folder.resolve("changing"), false);
    Path output = folder.resolve("of changing");
    assertThat(messageIfOn("Reading beds", changing, output, changing.resolve("scars.csv"), false))
        .contains("scars.csv: was changed while it was read")
        .contains("run again");
    assertThat(messageIfOn("Projecting", changing, output, changing.resolve("beds.csv"), true))
        .contains("beds.csv: was removed while it was read");
    assertThat(output).doesNotExist();
    // What happens after the reading does not matter, and the record tells what was read.
    Path later = TinySurvey.write(folder.resolve("changing later"), false);
    String digest = OutputState.of(later).get("scars.csv");
    assertThat(messageIfOn("Writing tables", later, output, later.resolve("scars.csv"), false))
        .isEmpty();
    assertThat(output.resolve("run-record.json")).content().contains(digest);
  }

  /** Runs an assessment and changes or removes a file when a stage begins. */
  private static String messageIfOn(
      String stage, Path surveyFolder, Path output, Path file, boolean remove) {
    Progress changer =
        new Progress() {
          @Override
          public void begin(String name, long total) {
            try {
              if (name.equals(stage) && remove) {
                Files.delete(file);
              } else if (name.equals(stage)) {
                Files.writeString(file, "\n", StandardCharsets.UTF_8, StandardOpenOption.APPEND);
              }
            } catch (IOException e) {
              throw new IllegalStateException(e);
            }
          }

          @Override
          public void advance(long steps) {}

          @Override
          public void end() {}
        };
    try {
      new Assessment(
              SurveyFile.draft(surveyFolder)
                  .define(ParametersTable.bundled(), ReferenceTablesReader.bundled()),
              ReferenceTablesReader.bundled(),
              Map.of(),
              "test",
              changer)
          .assessInto(output, false);
      return "";
    } catch (MeadowmarkException e) {
      return e.getMessage();
    }
  }

  @Test
  void resultsThatAreReadAreNotReplaced() throws IOException {
    Path output = folder.resolve("read again");
    assertThat(assess(withoutChannel, output).exitCode()).isZero();
    SortedMap<String, String> old = OutputState.of(output);
    Terminal.Outcome outcome =
        assess(
            withoutChannel,
            output,
            "--overwrite",
            "--beds=" + output.resolve("results.gpkg") + "#beds");
    assertThat(outcome.exitCode()).isEqualTo(ExitCode.OUTPUT_EXISTS.value());
    assertThat(outcome.err()).contains("holds results.gpkg, which this run reads");
    assertThat(OutputState.of(output)).isEqualTo(old);
  }

  @Test
  void inputIsNeverWrittenTo() throws IOException {
    Path sample =
        Path.of(System.getProperty("meadowmark.root"))
            .resolve("gis-samples/data/quillmere-sound/season-1");
    Path copy = Files.createDirectory(folder.resolve("copy of the sample"));
    for (String name : OutputState.names(sample)) {
      Files.copy(sample.resolve(name), copy.resolve(name));
    }
    SortedMap<String, String> before = OutputState.of(copy);
    assertThat(Terminal.run(Main.commandLine(), "check", copy.toString()).exitCode()).isZero();
    assertThat(OutputState.of(copy)).isEqualTo(before);
  }

  /** A new account on a new machine, where two people start at the same moment. */
  @Test
  void twoFirstRunsAtOnceOnAFreshMachineBothEndWell() throws Exception {
    Path home = Files.createDirectory(folder.resolve("fresh"));
    Path temporary = Files.createDirectory(home.resolve("temporary"));
    Path account = Files.createDirectory(home.resolve("account"));
    Path output = home.resolve("out");
    List<CompletableFuture<ChildProgram.Outcome>> both = new ArrayList<>();
    for (int i = 0; i < 2; i++) {
      both.add(
          CompletableFuture.supplyAsync(
              () ->
                  child(
                      List.of("-Djava.io.tmpdir=" + temporary, "-Duser.home=" + account),
                      "assess",
                      withoutChannel.toString(),
                      "--output=" + output)));
    }
    List<ChildProgram.Outcome> ended = new ArrayList<>();
    for (CompletableFuture<ChildProgram.Outcome> each : both) {
      ended.add(each.get(15, TimeUnit.MINUTES));
    }
    assertThat(ended).filteredOn(each -> each.exitCode() == 0).isNotEmpty();
    for (ChildProgram.Outcome each : ended) {
      if (each.exitCode() == 0) {
        assertThat(each.errorText()).isEqualTo("Results are in " + output + "\n");
      } else {
        assertThat(each.exitCode()).isEqualTo(ExitCode.OUTPUT_EXISTS.value());
        assertThat(each.errorText()).startsWith("error: " + output + ": ").hasLineCount(1);
      }
    }
    OutputState.assertWhole(output);
    assertThat(OutputState.names(home)).containsExactly("account", "out", "temporary");
    assertThat(account.resolve(".java/.userPrefs")).doesNotExist();
  }

  @Test
  void withoutAFolderForTemporaryFilesTheMessageSaysSo() {
    Path nowhere = folder.resolve("nowhere");
    ChildProgram.Outcome outcome =
        child(
            List.of("-Djava.io.tmpdir=" + nowhere),
            "assess",
            withoutChannel.toString(),
            "--output=" + folder.resolve("never"));
    assertThat(outcome.errorText())
        .endsWith(
            "error: the folder for temporary files "
                + nowhere
                + " cannot be written to (a file or folder does not exist); put that right, or name another with"
                + " MEADOWMARK_JAVA_OPTS=-Djava.io.tmpdir=FOLDER\n");
    assertThat(outcome.exitCode()).isEqualTo(ExitCode.OUTPUT_FAILED.value());
  }

  @ParameterizedTest
  @ValueSource(ints = {36, 48})
  void tooLittleMemoryEndsInAdviceAndKeepsTheOldOutput(int mebibytes) throws Exception {
    Path home = Files.createDirectory(folder.resolve("memory " + mebibytes));
    Path output = home.resolve("out");
    assertThat(assess(survey, output).exitCode()).isZero();
    SortedMap<String, String> old = OutputState.of(output);
    ChildProgram.Outcome outcome =
        child(
            List.of(OTHER_COLLECTOR, "-Xmx" + mebibytes + "m"),
            "assess",
            survey.toString(),
            "--overwrite",
            "--output=" + output);
    assertThat(outcome.errorText())
        .contains("error: out of memory (")
        .contains("MiB allowed); allow more with MEADOWMARK_JAVA_OPTS=-Xmx1g");
    assertThat(outcome.exitCode()).isEqualTo(ExitCode.INTERNAL.value());
    assertThat(OutputState.of(output)).isEqualTo(old);
    assertThat(OutputState.names(home)).containsExactly("out");
  }

  @Test
  void theAdviceFitsTheComputer() {
    long gibibyte = 1L << 30;
    assertThat(MemoryAdvice.line(2 * gibibyte, 16 * gibibyte))
        .endsWith("MEADOWMARK_JAVA_OPTS=-Xmx4g");
    assertThat(MemoryAdvice.line(2 * gibibyte, 0)).endsWith("-Xmx4g");
    assertThat(MemoryAdvice.line(11 * gibibyte, 16 * gibibyte))
        .contains("-Xmx14g, or use assess-in-parts");
    assertThat(MemoryAdvice.line(15 * gibibyte, 16 * gibibyte))
        .endsWith("use assess-in-parts with a small --part-scars, or a computer with more memory");
  }

  private static Terminal.Outcome assess(Path from, Path output, String... more) {
    List<String> arguments =
        new ArrayList<>(List.of("assess", from.toString(), "--quiet", "--output=" + output));
    arguments.addAll(List.of(more));
    return Terminal.run(Main.commandLine(), arguments.toArray(String[]::new));
  }

  private static ChildProgram.Outcome child(List<String> options, String... arguments) {
    List<String> all = ChildProgram.shortRun("-Xmx512m");
    if (options.contains(OTHER_COLLECTOR)) {
      all.removeIf(option -> option.endsWith("GC"));
    }
    all.addAll(options);
    try {
      return ChildProgram.run(all, Map.of(), arguments);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private static long kibibytesUsed(Path disk) throws IOException {
    var store = Files.getFileStore(disk);
    return (store.getTotalSpace() - store.getUnallocatedSpace()) / 1024;
  }

  /** Exit code of a command of the system; 127 where it is not there. */
  private static int system(String... command) throws InterruptedException {
    try {
      return new ProcessBuilder(command)
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .redirectError(ProcessBuilder.Redirect.DISCARD)
          .start()
          .waitFor();
    } catch (IOException e) {
      return 127;
    }
  }
}
