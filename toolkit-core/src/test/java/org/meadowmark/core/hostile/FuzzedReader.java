package org.meadowmark.core.hostile;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Entry point for a coverage-guided fuzzer, which calls {@link #fuzzerTestOneInput} with bytes that
 * it grows from the examples. The profile {@code fuzz} runs it; docs/reliability.md says how.
 */
public final class FuzzedReader {
  /** System property with the key of the reader. */
  static final String READER = "meadowmark.fuzz.reader";

  private static final HostileReader FUZZED = HostileReader.ofKey(System.getProperty(READER));
  private static final Path FOLDER = folder();

  private FuzzedReader() {}

  private static Path folder() {
    try {
      Path folder = Files.createTempDirectory("meadowmark-fuzz");
      folder.toFile().deleteOnExit();
      return folder;
    } catch (IOException e) {
      throw new ExceptionInInitializerError(e);
    }
  }

  /**
   * Called by the fuzzer before all else, by this name: what is slow once only must not count as
   * the time of the first input.
   */
  public static void fuzzerInitialize() {
    HostileReader.warmUp();
  }

  /** Called by the fuzzer, by this name. */
  public static void fuzzerTestOneInput(byte[] bytes) {
    FUZZED.outcome(FOLDER, bytes);
  }
}
