package org.meadowmark.core.write.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.write.record.RunRecord;

/**
 * Kills a process that does nothing but replace one output folder again and again, so that most
 * kills fall between its steps: written, set aside, moved into place, old one deleted.
 */
class KilledPublishingTest {
  private static final int KILLS = 20;
  private static final long SEED = 7;
  private static final int FILES = 6;
  private static final int LONGEST_MILLIS = 120;

  /** Being written; set aside while the new one moves in or while it is deleted. */
  private static final List<String> HIDDEN_STEPS = List.of(".part", ".old");

  @TempDir Path home;

  /** Replaces the folder for ever; says on its output that it has begun. */
  static final class Run {
    public static void main(String[] arguments) {
      for (int version = 0; ; version++) {
        write(Path.of(arguments[0]), "version " + version);
        if (version == 0) {
          System.out.println();
        }
      }
    }
  }

  private static void write(Path out, String text) {
    new OutputFolder(out, true)
        .write(
            folder -> {
              StringBuilder list = new StringBuilder();
              for (int i = 0; i < FILES; i++) {
                Files.writeString(folder.resolve(i + ".txt"), text);
                list.append(i == 0 ? "" : ",").append("{\"file\": \"").append(i).append(".txt\"}");
              }
              Files.writeString(
                  folder.resolve(RunRecord.FILE_NAME),
                  "{\"program\": \"Meadowmark\", \"outputs\": [" + list + "]}");
            });
  }

  @Test
  void oneWholeVersionIsThereAfterEveryKill() throws Exception {
    Random random = new Random(SEED);
    int caughtInBetween = 0;
    for (int kill = 0; kill < KILLS; kill++) {
      Path folder = Files.createDirectory(home.resolve("kill-" + kill));
      Path out = folder.resolve("out");
      Process run =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-XX:TieredStopAtLevel=1",
                  "-XX:+UseSerialGC",
                  "-XX:-UsePerfData",
                  "-Xmx64m",
                  "-cp",
                  System.getProperty(
                      "surefire.test.class.path", System.getProperty("java.class.path")),
                  Run.class.getName(),
                  out.toString())
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start();
      try (InputStream begun = run.getInputStream()) {
        assertThat(begun.read()).as("begun").isNotNegative();
        assertThat(run.waitFor(random.nextInt(LONGEST_MILLIS), TimeUnit.MILLISECONDS)).isFalse();
        awaitHidden(folder, random.nextInt(HIDDEN_STEPS.size()));
      } finally {
        run.destroyForcibly().waitFor();
      }
      if (!names(folder).equals(List.of("out"))) {
        caughtInBetween++;
      }
      new OutputFolder(out, true);
      assertThat(names(folder)).containsExactly("out");
      String text = Files.readString(out.resolve("0.txt"));
      assertThat(text).startsWith("version ");
      for (int i = 0; i < FILES; i++) {
        assertThat(out.resolve(i + ".txt")).hasContent(text);
      }
      write(out, "next");
      assertThat(names(folder)).containsExactly("out");
    }
    assertThat(caughtInBetween).as("kills that left a hidden folder").isPositive();
  }

  /** Comes back while the process is at a step, or soon after it. */
  private static void awaitHidden(Path folder, int step) throws IOException {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(2);
    while (names(folder).stream().noneMatch(name -> name.endsWith(HIDDEN_STEPS.get(step)))
        && System.nanoTime() < end) {
      Thread.onSpinWait();
    }
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> children = Files.list(folder)) {
      return children.map(child -> child.getFileName().toString()).sorted().toList();
    }
  }
}
