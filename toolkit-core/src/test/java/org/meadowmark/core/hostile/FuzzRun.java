package org.meadowmark.core.hostile;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Starts the fuzzer on one reader, with its folders made. The profile {@code fuzz} calls it. */
public final class FuzzRun {
  private static final String FUZZER = "com.code_intelligence.jazzer.Jazzer";

  /** What is watched for new ways through the code: ours, and the libraries that take bytes. */
  private static final String WATCHED =
      "org.meadowmark.core.**:org.h2gis.functions.io.**:org.locationtech.jts.io.**:io.jenetics.**"
          + ":com.fasterxml.jackson.core.**:com.fasterxml.jackson.dataformat.**"
          + ":org.apache.commons.csv.**:it.geosolutions.**:org.geotools.gce.**";

  private FuzzRun() {}

  /**
   * Fuzzes.
   *
   * @param arguments key of the reader, seconds, folder of examples, folder for what is found
   */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    HostileReader reader = HostileReader.ofKey(arguments[0]);
    Path seeds = Path.of(arguments[2], reader.key()).toAbsolutePath();
    Path found = Files.createDirectories(Path.of(arguments[3], reader.key()).toAbsolutePath());
    Path corpus = Files.createDirectories(found.resolve("corpus"));
    Process fuzzer =
        new ProcessBuilder(
                List.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-Xmx512m",
                    "-Djava.awt.headless=true",
                    "-D" + FuzzedReader.READER + "=" + reader.key(),
                    "-cp",
                    System.getProperty("java.class.path"),
                    FUZZER,
                    "--target_class=" + FuzzedReader.class.getName(),
                    "--keep_going=100",
                    "--instrumentation_includes=" + WATCHED,
                    "--custom_hook_includes=" + WATCHED,
                    "-max_total_time=" + arguments[1],
                    "-timeout=60",
                    "-max_len=16384",
                    "-artifact_prefix=" + found + "/",
                    corpus.toString(),
                    seeds.toString()))
            .directory(found.toFile())
            .inheritIO()
            .start();
    System.exit(fuzzer.waitFor());
  }
}
