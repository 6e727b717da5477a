package org.meadowmark.core.api;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Compiles and runs the program in {@code docs/java-api.md} as it stands there. */
class JavaExampleTest {
  private static final Path ROOT = Path.of(System.getProperty("meadowmark.root"));

  @TempDir Path folder;

  @Test
  void printsWhatTheDocumentSays() throws IOException, InterruptedException {
    String document = Files.readString(ROOT.resolve("docs/java-api.md"));
    Path program = folder.resolve("AssessFolder.java");
    Files.writeString(program, block(document, "java"), StandardCharsets.UTF_8);

    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx1g",
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Djava.awt.headless=true",
                "-Dfile.encoding=UTF-8",
                "-Duser.language=en",
                "-cp",
                System.getProperty("java.class.path"),
                program.toString(),
                ROOT.resolve("gis-samples/data/quillmere-sound/season-2").toString())
            .redirectErrorStream(true)
            .start();
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

    assertThat(process.waitFor()).as(printed).isZero();
    assertThat(printed.replace("\r\n", "\n")).isEqualTo(block(document, "text"));
  }

  @Test
  void theProgramHasTenLinesAtMostBetweenItsFirstAndLast() throws IOException {
    String program = block(Files.readString(ROOT.resolve("docs/java-api.md")), "java");
    String body = program.substring(program.indexOf('{'), program.lastIndexOf('}'));

    assertThat(body.lines().filter(line -> !line.isBlank()).count() - 1).isLessThanOrEqualTo(10);
  }

  private static String block(String document, String language) {
    Matcher matcher = Pattern.compile("(?ms)^```" + language + "\\n(.*?)^```$").matcher(document);
    assertThat(matcher.find()).as("a block of " + language).isTrue();
    return matcher.group(1);
  }
}
