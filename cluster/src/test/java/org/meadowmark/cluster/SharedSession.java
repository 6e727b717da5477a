package org.meadowmark.cluster;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import org.apache.sedona.spark.SedonaContext;
import org.apache.spark.sql.SparkSession;
import picocli.CommandLine;

/**
 * One session for all tests: starting one takes longer than most of them. Spark compiles nothing
 * for so few rows.
 */
final class SharedSession {
  static final SparkSession SPARK = open();

  private SharedSession() {}

  private static SparkSession open() {
    System.setProperty("SCARF_NO_ANALYTICS", "true");
    return SedonaContext.create(
        SparkSession.builder()
            // Two cores; a task may fail once.
            .master("local[2,2]")
            .appName("tests")
            .config("spark.ui.enabled", "false")
            .config("spark.sql.shuffle.partitions", "2")
            .config("spark.sql.adaptive.enabled", "false")
            .config("spark.sql.codegen.wholeStage", "false")
            .config("spark.sql.codegen.factoryMode", "NO_CODEGEN")
            .config("spark.driver.host", "localhost")
            .config("spark.driver.bindAddress", "127.0.0.1")
            .config("spark.sql.session.timeZone", "UTC")
            .getOrCreate());
  }

  /** What a command said. */
  record Said(int code, String out, String err) {}

  /** Runs a command in the session of the tests. */
  static Said run(Object... arguments) {
    if (SPARK.sparkContext().isStopped()) {
      throw new IllegalStateException("a command ended the session of the tests");
    }
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine command = Main.commandLine();
    command.setOut(new PrintWriter(out, true));
    command.setErr(new PrintWriter(err, true));
    String[] texts = new String[arguments.length];
    for (int i = 0; i < texts.length; i++) {
      texts[i] = arguments[i].toString();
    }
    int code = command.execute(texts);
    return new Said(code, out.toString(), err.toString());
  }

  static Path sample() {
    return Path.of(System.getProperty("meadowmark.root", "."))
        .resolve("gis-samples/data/quillmere-sound/season-2");
  }
}
