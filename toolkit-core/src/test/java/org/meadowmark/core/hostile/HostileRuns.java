package org.meadowmark.core.hostile;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.meadowmark.core.hostile.HostileReader.Outcome;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.read.FeatureSink;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.read.LayerReaders;
import org.meadowmark.core.read.SourceFeature;
import org.meadowmark.core.survey.LayerSource;

/**
 * A program of its own, since it is run with a small heap and must be stopped where it hangs. Reads
 * hostile files and prints a line for each kind; the first failure ends it with code 1 and leaves
 * the input in the folder.
 */
public final class HostileRuns {
  private static final int FAILED = 1;
  private static final int HANGS = 2;
  private static final int MOST_TRACE_LINES = 20;

  private static volatile String current = "";
  private static volatile long begun;

  private HostileRuns() {}

  /**
   * Runs.
   *
   * @param arguments what ({@code cases}, {@code examples}, {@code damaged} or {@code layer}),
   *     folder of examples (for {@code layer}: the file), folder to work in, most processor time
   *     for an input in seconds, for {@code cases} a pattern that their names must have, and for
   *     {@code damaged} copies a reader, seed and keys of readers (all where there is none)
   */
  public static void main(String[] arguments) throws Exception {
    Path work = Path.of(arguments[2]);
    watch(Long.parseLong(arguments[3]) * 1_000_000_000L);
    switch (arguments[0]) {
      case "cases" ->
          cases(
              work,
              new Examples(Path.of(arguments[1])),
              Pattern.compile(arguments.length > 4 ? arguments[4] : ""));
      case "examples" -> examples(work, new Examples(Path.of(arguments[1])));
      case "damaged" ->
          damaged(
              work,
              new Examples(Path.of(arguments[1])),
              Integer.parseInt(arguments[4]),
              Long.parseLong(arguments[5]),
              Arrays.asList(arguments).subList(6, arguments.length));
      case "layer" -> layer(Path.of(arguments[1]));
      default -> throw new IllegalArgumentException(arguments[0]);
    }
    System.exit(0);
  }

  /** Time of the processor, since a busy machine makes every program slow by the clock. */
  private static void watch(long mostNanos) {
    Thread watch =
        new Thread(
            () -> {
              while (true) {
                try {
                  Thread.sleep(500);
                } catch (InterruptedException e) {
                  return;
                }
                if (processorNanos() - begun > mostNanos) {
                  System.out.println("HANGS " + current);
                  Runtime.getRuntime().halt(HANGS);
                }
              }
            });
    watch.setDaemon(true);
    begun = processorNanos();
    watch.start();
  }

  private static long processorNanos() {
    return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
        .getProcessCpuTime();
  }

  private static void begin(String what, int number) {
    current = what + " " + number;
    begun = processorNanos();
  }

  private static void cases(Path work, Examples examples, Pattern names)
      throws IOException, SQLException {
    for (HostileCases.Case one : HostileCases.all(work, examples)) {
      begin(one.reader().key() + ": " + one.name(), 0);
      if (!names.matcher(current).find()) {
        continue;
      }
      String outcome;
      try {
        outcome = outcome(one, Files.createDirectories(work.resolve(one.reader().key())));
      } catch (RuntimeException | Error e) {
        outcome = "FAILED: " + e + " at " + Arrays.stream(e.getStackTrace()).limit(3).toList();
      }
      boolean asExpected =
          one.expected().isEmpty()
              ? outcome.equals("read")
              : Pattern.compile(one.expected()).matcher(outcome).find();
      System.out.printf(
          "%s | %s | %s | %s%n",
          asExpected ? "as expected" : "NOT AS EXPECTED", one.reader().key(), one.name(), outcome);
    }
  }

  private static String outcome(HostileCases.Case one, Path folder) throws IOException {
    try {
      one.reader().read(folder, one.bytes());
      return "read";
    } catch (MeadowmarkException e) {
      Contract.check(e.getMessage());
      return "refused: " + e.getMessage();
    }
  }

  private static void examples(Path work, Examples examples) throws IOException {
    for (HostileReader reader : HostileReader.values()) {
      int read = 0;
      Map<String, byte[]> files = examples.of(reader);
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        begin(reader.key() + ": " + file.getKey(), 0);
        read += run(reader, work, file.getValue()) == Outcome.READ ? 1 : 0;
      }
      System.out.printf("%s | %d examples | %d read%n", reader.key(), files.size(), read);
    }
  }

  private static void damaged(
      Path work, Examples examples, int copies, long seed, List<String> keys) throws IOException {
    for (HostileReader reader : HostileReader.values()) {
      if (!keys.isEmpty() && !keys.contains(reader.key())) {
        continue;
      }
      Damage damage = new Damage(seed, examples.seeds(reader));
      int read = 0;
      for (int i = 0; i < copies; i++) {
        byte[] bytes = damage.next();
        begin(reader.key() + ": damaged copy", i);
        read += run(reader, work, bytes) == Outcome.READ ? 1 : 0;
      }
      System.out.printf("%s | %d damaged | %d read%n", reader.key(), copies, read);
    }
  }

  private static Outcome run(HostileReader reader, Path work, byte[] bytes) throws IOException {
    try {
      // A folder each: a .prj file of one kind would be taken for that of another.
      return reader.outcome(Files.createDirectories(work.resolve(reader.key())), bytes);
    } catch (RuntimeException | Error e) {
      throw failed(work, bytes, e);
    }
  }

  private static Error failed(Path work, byte[] bytes, Throwable failure) throws IOException {
    System.out.println("FAILED " + current + ": " + failure);
    Arrays.stream(failure.getStackTrace())
        .limit(MOST_TRACE_LINES)
        .forEach(line -> System.out.println("    at " + line));
    Files.write(work.resolve("failing-input"), bytes);
    System.exit(FAILED);
    return new AssertionError(failure);
  }

  /** For files that are too large to be held. */
  private static void layer(Path file) {
    try {
      LayerReaders.read(
          LayerSource.of(LayerRole.SCARS, file),
          new FeatureSink() {
            @Override
            public void header(LayerHeader header) {
              // Only whether it can be read is asked.
            }

            @Override
            public void feature(SourceFeature feature) {
              // Only whether it can be read is asked.
            }

            @Override
            public void finding(org.meadowmark.core.model.Finding finding) {
              Contract.check(finding);
            }
          });
      System.out.println("read");
    } catch (MeadowmarkException e) {
      Contract.check(e.getMessage());
      System.out.println("refused: " + e.getMessage());
    }
  }
}
