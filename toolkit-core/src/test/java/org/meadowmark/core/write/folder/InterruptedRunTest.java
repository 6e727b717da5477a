package org.meadowmark.core.write.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Interrupts another Java process while it writes its output, as Ctrl-C does. */
class InterruptedRunTest {
  @TempDir Path home;

  /** The run that is interrupted. */
  static final class Run {
    public static void main(String[] arguments) {
      new OutputFolder(Path.of(arguments[0]), false)
          .write(
              folder -> {
                Files.writeString(folder.resolve("data.txt"), "half");
                try {
                  Thread.sleep(TimeUnit.MINUTES.toMillis(1));
                } catch (InterruptedException e) {
                  throw new IOException(e);
                }
              });
    }
  }

  @Test
  void leavesNothingBehind() throws IOException, InterruptedException {
    Path out = home.resolve("results/out");
    Process run =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                Run.class.getName(),
                out.toString())
            .inheritIO()
            .start();
    try {
      long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
      while (files() == 0 && run.isAlive() && System.nanoTime() < end) {
        Thread.sleep(20);
      }
      assertThat(files()).as("files of the unfinished output").isEqualTo(1);
      run.destroy();
      assertThat(run.waitFor(30, TimeUnit.SECONDS)).isTrue();
    } finally {
      run.destroyForcibly();
    }
    assertThat(home).isEmptyDirectory();
  }

  private long files() throws IOException {
    try (Stream<Path> paths = Files.walk(home)) {
      return paths.filter(Files::isRegularFile).count();
    }
  }
}
