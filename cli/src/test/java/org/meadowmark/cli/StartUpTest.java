package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Map;
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
    ChildProgram.Outcome outcome =
        ChildProgram.run(ChildProgram.shortRun("-Xlog:class+load:stderr"), Map.of(), arguments);
    assertThat(outcome.exitCode()).isZero();
    return outcome
        .errorText()
        .lines()
        .filter(line -> line.contains("[class,load]"))
        .map(line -> line.replaceFirst("^\\[.*?\\[class,load\\]\\s*", "").split(" ")[0])
        .toList();
  }
}
