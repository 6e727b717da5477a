package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Runs the launcher against a Java that only prints its arguments, one a line. */
@DisabledOnOs(OS.WINDOWS)
class LauncherTest {
  private static final String PATH = "/usr/bin:/bin";

  private record Outcome(int exitCode, List<String> lines) {}

  @TempDir Path folder;
  private Path home;
  private Path launcher;
  private Path javaHome;

  @BeforeEach
  void install() throws IOException {
    home = folder.toRealPath().resolve("a home with blanks");
    launcher = home.resolve("bin/meadowmark");
    Files.createDirectories(launcher.getParent());
    Files.copy(
        Path.of(System.getProperty("meadowmark.root"), "cli/src/assembly/bin/meadowmark"),
        launcher);
    runnable(launcher);
    javaHome = Files.createDirectories(folder.resolve("my java"));
    Path java = Files.createDirectories(javaHome.resolve("bin")).resolve("java");
    Files.writeString(java, "#!/bin/sh\nfor a; do printf '%s\\n' \"$a\"; done\nexit 7\n");
    runnable(java);
  }

  @Test
  void startsTheJarBesideItWithTheArgumentsAsGiven() throws Exception {
    Outcome outcome = run(launcher, Map.of("JAVA_HOME", javaHome.toString()), "a b", "", "*");

    assertThat(outcome.exitCode()).isEqualTo(7);
    assertThat(outcome.lines())
        .containsSubsequence("-jar", home.resolve("lib/cli.jar").toString(), "a b", "", "*")
        .contains("-XX:MaxRAMPercentage=70", "-Dmeadowmark.terminal=false");
  }

  @Test
  void javaOptionsStandAfterTheDefaultsAndBeforeTheJar() throws Exception {
    Outcome outcome =
        run(
            launcher,
            Map.of("JAVA_HOME", javaHome.toString(), "MEADOWMARK_JAVA_OPTS", "-Xmx8g -Dx=y"));

    assertThat(outcome.lines())
        .containsSubsequence("-XX:MaxRAMPercentage=70", "-Xmx8g", "-Dx=y", "-jar");
  }

  @Test
  void worksThroughLinksFromAnyFolder() throws Exception {
    Path far = Files.createDirectories(folder.resolve("far away/bin"));
    Path relative =
        Files.createSymbolicLink(
            far.resolve("first"), far.toRealPath().relativize(launcher.toRealPath()));
    Path absolute = Files.createSymbolicLink(folder.resolve("second"), relative.toAbsolutePath());

    for (Path link : List.of(relative, absolute)) {
      assertThat(run(link, Map.of("JAVA_HOME", javaHome.toString())).lines())
          .contains(home.resolve("lib/cli.jar").toString());
    }
  }

  @Test
  void takesJavaFromThePath() throws Exception {
    Outcome outcome = run(launcher, Map.of("PATH", javaHome.resolve("bin") + ":" + PATH), "x");

    assertThat(outcome.lines()).contains("-jar", "x");
  }

  @Test
  void saysWhatToDoWhereJavaIsNotFound() throws Exception {
    assertThat(run(launcher, Map.of("JAVA_HOME", folder.toString())))
        .isEqualTo(
            new Outcome(
                1,
                List.of(
                    "error: JAVA_HOME is "
                        + folder
                        + ", but there is no bin/java in it; correct it or unset it")));
  }

  private Outcome run(Path program, Map<String, String> environment, String... arguments)
      throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(program.toString());
    builder.command().addAll(List.of(arguments));
    builder.directory(folder.toFile()).redirectErrorStream(true);
    builder.environment().clear();
    builder.environment().put("PATH", PATH);
    builder.environment().putAll(environment);
    Process process = builder.start();
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Outcome(process.waitFor(), output.lines().toList());
  }

  private static void runnable(Path file) throws IOException {
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
  }
}
