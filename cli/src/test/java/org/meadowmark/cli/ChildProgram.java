package org.meadowmark.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Runs the program in a process of its own. */
final class ChildProgram {
  /** What the process left. */
  record Outcome(int exitCode, byte[] out, String errorText) {}

  private ChildProgram() {}

  /**
   * Options of Java for a program that ends within seconds, which would otherwise spend most of its
   * time on compiling its own code as well as it can.
   */
  static List<String> shortRun(String... more) {
    List<String> options = new ArrayList<>();
    options.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-XX:-UsePerfData"));
    options.addAll(List.of(more));
    return options;
  }

  /** Starts it and does not wait; what it says is thrown away. */
  static Process start(List<String> javaOptions, List<String> arguments) throws IOException {
    return new ProcessBuilder(command(javaOptions, arguments))
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  private static List<String> command(List<String> javaOptions, List<String> arguments) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(javaOptions);
    command.add("-cp");
    command.add(classPath());
    command.add(Main.class.getName());
    command.addAll(arguments);
    return command;
  }

  static Outcome run(List<String> javaOptions, Map<String, String> environment, String... arguments)
      throws IOException, InterruptedException {
    List<String> command = command(javaOptions, List.of(arguments));
    Path errors = Files.createTempFile("meadowmark", ".err");
    try {
      ProcessBuilder builder = new ProcessBuilder(command).redirectError(errors.toFile());
      builder.environment().putAll(environment);
      Process process = builder.start();
      byte[] out = process.getInputStream().readAllBytes();
      int code = process.waitFor();
      return new Outcome(code, out, Files.readString(errors, StandardCharsets.UTF_8));
    } finally {
      Files.deleteIfExists(errors);
    }
  }

  /** Where the program and its libraries are. */
  static String classPath() {
    return System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
  }
}
