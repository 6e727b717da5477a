package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Help must come at once: it may not load the libraries that read, measure and draw. */
class StartUpTest {
  private static final List<String> HEAVY =
      List.of(
          "org.geotools",
          "org.sqlite",
          "org.locationtech",
          "org.h2",
          "org.jgrapht",
          "org.jfree",
          "com.fasterxml",
          "org.apache.commons.csv",
          "me.tongfei");

  @Test
  void helpLoadsNoHeavyLibrary() throws IOException, InterruptedException {
    assertThat(loadedBy("--help")).isNotEmpty();
    for (String command : Main.commandLine().getSubcommands().keySet()) {
      assertThat(loadedBy(command, "--help")).as(command).isNotEmpty();
    }
  }

  /** The check above can fail: printing a table does load the CSV library. */
  @Test
  void aTableLoadsTheCsvLibrary() throws IOException, InterruptedException {
    assertThat(classes("tables", "species")).anyMatch(c -> c.startsWith("org.apache.commons.csv"));
  }

  private static List<String> loadedBy(String... arguments)
      throws IOException, InterruptedException {
    List<String> classes = classes(arguments);
    assertThat(classes)
        .contains(Main.class.getName())
        .noneMatch(name -> HEAVY.stream().anyMatch(name::startsWith));
    return classes;
  }

  private static List<String> classes(String... arguments)
      throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xlog:class+load:stdout",
                "-cp",
                System.getProperty(
                    "surefire.test.class.path", System.getProperty("java.class.path")),
                Main.class.getName()));
    command.addAll(List.of(arguments));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isZero();
    return output
        .lines()
        .filter(line -> line.contains("[class,load]"))
        .map(line -> line.replaceFirst("^\\[.*?\\[class,load\\]\\s*", "").split(" ")[0])
        .toList();
  }
}
