package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.SortedMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * Kills the real program, as a power cut does, at points spread over its run. Every time the
 * earlier output must be there byte for byte, or the new one whole, and the next run must be clean.
 */
class KilledRunTest {
  private static final int POINTS = 20;

  /** Of these, so many are drawn within the time of writing, which is a small part of the run. */
  private static final int POINTS_WHILE_WRITING = 8;

  private static final long SEED = 20_250_610;
  private static final String OLD_OPTION = "--name=old";
  private static final String NEW_OPTION = "--name=new";

  @TempDir static Path folder;
  private static Path survey;
  private static Path earlier;
  private static double runSeconds;
  private static double writeSeconds;

  /** When to kill: seconds after the start, or after the first file was written. */
  private record Point(boolean whileWriting, double seconds) {}

  private record Killed(Point point, boolean wasRunning, boolean wasWriting, boolean oldIsKept) {}

  @BeforeAll
  static void measureTheRun() throws Exception {
    survey = TinySurvey.write(folder.resolve("survey"), false);
    Path home = Files.createDirectory(folder.resolve("measured"));
    long start = System.nanoTime();
    Process process = start(home.resolve("out"));
    awaitHidden(home, process);
    long writing = System.nanoTime();
    assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).isZero();
    runSeconds = (System.nanoTime() - start) / 1e9;
    writeSeconds = (System.nanoTime() - writing) / 1e9;
    OutputState.assertWhole(home.resolve("out"));
    earlier = folder.resolve("earlier");
    assertThat(assess(earlier, OLD_OPTION)).isZero();
  }

  @Test
  void theOldOutputOrTheNewOneIsWholeWheneverTheRunIsKilled() throws Exception {
    Random random = new Random(SEED);
    List<Callable<Killed>> kills = new ArrayList<>();
    for (int i = 0; i < POINTS; i++) {
      boolean whileWriting = i < POINTS_WHILE_WRITING;
      Point point =
          new Point(whileWriting, random.nextDouble() * (whileWriting ? writeSeconds : runSeconds));
      Path home = folder.resolve("kill-" + i);
      kills.add(() -> kill(home, point));
    }
    ExecutorService threads = Executors.newFixedThreadPool(2);
    List<Killed> killed = new ArrayList<>();
    try {
      for (Future<Killed> each : threads.invokeAll(kills)) {
        killed.add(each.get());
      }
    } finally {
      threads.shutdown();
    }
    assertThat(killed)
        .as("runs that had not ended")
        .filteredOn(Killed::wasRunning)
        .hasSizeGreaterThan(POINTS / 2);
    assertThat(killed).as("runs that were writing").filteredOn(Killed::wasWriting).isNotEmpty();
    assertThat(killed).as("earlier output kept").filteredOn(Killed::oldIsKept).isNotEmpty();
    System.out.printf(
        "run of %.1f s, writing %.1f s of it; %d killed, %d of them while writing, %d earlier"
            + " outputs kept%n",
        runSeconds,
        writeSeconds,
        killed.stream().filter(Killed::wasRunning).count(),
        killed.stream().filter(Killed::wasWriting).count(),
        killed.stream().filter(Killed::oldIsKept).count());
  }

  private static Killed kill(Path home, Point point) throws Exception {
    Files.createDirectory(home);
    Path output = home.resolve("out");
    SortedMap<String, String> old = OutputState.copy(earlier, output);
    Process process = start(output, "--overwrite");
    if (point.whileWriting()) {
      awaitHidden(home, process);
    }
    process.waitFor((long) (point.seconds() * 1000), TimeUnit.MILLISECONDS);
    boolean wasRunning = process.isAlive();
    process.destroyForcibly().waitFor();
    boolean wasWriting = wasRunning && hidden(home);
    boolean oldIsKept = false;
    if (Files.exists(output)) {
      oldIsKept = OutputState.of(output).equals(old);
      if (!oldIsKept) {
        OutputState.assertWhole(output);
        assertThat(Files.readString(output.resolve("summary.txt"))).startsWith("new");
      }
    } else {
      assertThat(OutputState.names(home))
          .as("earlier output aside")
          .anyMatch(n -> n.endsWith(".old"));
    }
    // The next run refuses to overwrite, and by then all is in order.
    assertThat(assess(output, NEW_OPTION)).isEqualTo(ExitCode.OUTPUT_EXISTS.value());
    assertThat(OutputState.names(home)).as("%s", point).containsExactly("out");
    if (oldIsKept || !wasRunning) {
      assertThat(OutputState.of(output).equals(old)).as("%s", point).isEqualTo(oldIsKept);
    }
    OutputState.assertWhole(output);
    if (wasWriting) {
      // Where the kill left something to clear away; after the others there was nothing left.
      assertThat(assess(output, NEW_OPTION, "--overwrite")).isZero();
      OutputState.assertWhole(output);
      assertThat(OutputState.names(home)).as("%s", point).containsExactly("out");
    }
    return new Killed(point, wasRunning, wasWriting, oldIsKept);
  }

  /** Windows has no such signal. */
  @Test
  @DisabledOnOs(OS.WINDOWS)
  void aSignalToStopLeavesTheOldOutputAndNothingElse() throws Exception {
    Path home = Files.createDirectory(folder.resolve("signal"));
    Path output = home.resolve("out");
    SortedMap<String, String> old = OutputState.copy(earlier, output);
    Process process = start(output, "--overwrite");
    awaitHidden(home, process);
    process.destroy();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).isEqualTo(143);
    assertThat(OutputState.names(home)).containsExactly("out");
    assertThat(OutputState.of(output)).isEqualTo(old);
  }

  private static int assess(Path output, String... more) {
    List<String> arguments =
        new ArrayList<>(List.of("assess", survey.toString(), "--quiet", "--output=" + output));
    arguments.addAll(List.of(more));
    return Terminal.run(Main.commandLine(), arguments.toArray(String[]::new)).exitCode();
  }

  private static Process start(Path output, String... more) throws IOException {
    List<String> arguments =
        new ArrayList<>(List.of("assess", survey.toString(), NEW_OPTION, "--output=" + output));
    arguments.addAll(List.of(more));
    return ChildProgram.start(ChildProgram.shortRun("-Xmx512m"), arguments);
  }

  private static void awaitHidden(Path home, Process process) throws Exception {
    while (process.isAlive() && !hidden(home)) {
      process.waitFor(5, TimeUnit.MILLISECONDS);
    }
  }

  private static boolean hidden(Path home) throws IOException {
    return OutputState.names(home).stream().anyMatch(name -> name.startsWith(".out"));
  }
}
