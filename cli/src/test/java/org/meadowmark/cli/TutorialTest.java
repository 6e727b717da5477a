package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * Follows {@code docs/tutorial.md} as a reader would, in a shell, in a new folder.
 *
 * <p>Blocks marked {@code sh} are run, with the exit code that a comment {@code exit n} above them
 * announces; blocks under a comment {@code file: path} are saved there; blocks marked {@code text}
 * must be found in what the last command printed, line by line, where a line of three dots stands
 * for what is left out.
 */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the tutorial's commands are for a POSIX shell")
class TutorialTest {
  private static final Path ROOT = Path.of(System.getProperty("meadowmark.root"));
  private static final Path DOCUMENT = ROOT.resolve("docs/tutorial.md");
  private static final String LEFT_OUT = "...";
  private static final String FILE = "file: ";
  private static final String EXIT = "exit ";
  private static final Pattern NAMED_FILE = Pattern.compile("`((?:results|plan|change)/[^`*]+)`");
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#:]+)(?:#[^)]*)?\\)");

  @TempDir static Path folder;
  private static String document;
  private static int commands;
  private static int quotes;

  @BeforeAll
  static void follow() throws IOException, InterruptedException {
    document = Files.readString(DOCUMENT, StandardCharsets.UTF_8);
    Files.createSymbolicLink(folder.resolve("gis-samples"), ROOT.resolve("gis-samples"));
    Path program = folder.resolve("cli/target/meadowmark/bin/meadowmark");
    Files.createDirectories(program.getParent());
    Files.writeString(
        program,
        "#!/bin/sh\nexec \"%s\" %s -Djava.awt.headless=true -cp '%s' %s \"$@\"\n"
            .formatted(
                Path.of(System.getProperty("java.home"), "bin", "java"),
                String.join(" ", ChildProgram.shortRun()),
                ChildProgram.classPath(),
                Main.class.getName()));
    assertThat(program.toFile().setExecutable(true)).isTrue();
    String printed = "";
    StringBuilder shell = new StringBuilder();
    for (MarkdownBlocks.Block block : MarkdownBlocks.of(document)) {
      if (block.remark().startsWith(FILE)) {
        Path file = folder.resolve(block.remark().substring(FILE.length()));
        Files.writeString(file, block.text(), StandardCharsets.UTF_8);
      } else if (block.language().equals("sh")) {
        int expected =
            block.remark().startsWith(EXIT)
                ? Integer.parseInt(block.remark().substring(EXIT.length()))
                : 0;
        printed = run(shell + block.text(), expected);
        if (block.text().startsWith("export ")) {
          shell.append(block.text());
        }
        commands++;
      } else {
        assertThat(block.language()).as(block.text()).isEqualTo("text");
        assertQuoted(block.text(), printed);
        quotes++;
      }
    }
  }

  private static String run(String text, int expected) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder("sh", "-e", "-c", text);
    builder.environment().put("LC_ALL", "C.UTF-8");
    Process process = builder.directory(folder.toFile()).redirectErrorStream(true).start();
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(text + printed).isEqualTo(expected);
    return printed;
  }

  private static void assertQuoted(String quote, String printed) {
    int from = 0;
    for (String part : ("\n" + quote).split("\n" + Pattern.quote(LEFT_OUT) + "(?=\n)")) {
      String lines = part.endsWith("\n") ? part : part + "\n";
      int found = ("\n" + printed).indexOf(lines, from);
      assertThat(found).as("\"%s\" in:%n%s", lines, printed).isNotNegative();
      from = found + lines.length() - 1;
    }
  }

  @Test
  void itHasCommandsAndQuotesWhatTheyPrint() {
    assertThat(commands).isGreaterThan(6);
    assertThat(quotes).isGreaterThan(6);
  }

  @Test
  void everyOutputFileThatItNamesIsThere() {
    List<String> names = NAMED_FILE.matcher(document).results().map(m -> m.group(1)).toList();
    assertThat(names).hasSizeGreaterThan(6);
    for (String name : names) {
      assertThat(folder.resolve(name)).exists();
    }
  }

  @Test
  void theComparisonOfBothSeasonsIsAsItWas() throws IOException {
    Golden.assertSame(
        "quillmere-sound-seasons.txt", Files.readString(folder.resolve("change/summary.txt")));
  }

  /** Every scar of either season has one row; the truth of the sample names the scar itself. */
  @Test
  void mostFatesOfScarsAreThoseOfTheTruth() throws IOException {
    List<String> rows = Files.readAllLines(folder.resolve("change/tables/scar_changes.csv"));
    List<String> truth =
        Files.readAllLines(ROOT.resolve("gis-samples/data/quillmere-sound/truth/scar-fates.csv"));
    long seenNew =
        rows.stream().filter(row -> row.contains(",later,") && row.contains(",new,")).count();
    long trulyNew =
        truth.stream().filter(row -> row.startsWith("2,") && row.endsWith(",new")).count();
    assertThat(trulyNew).isGreaterThan(500);
    assertThat(seenNew).isBetween((long) (0.75 * trulyNew), (long) (1.05 * trulyNew));
  }

  @Test
  void everyLinkLeadsToAFile() {
    Matcher links = LINK.matcher(document);
    int count = 0;
    while (links.find()) {
      assertThat(DOCUMENT.resolveSibling(links.group(1))).exists();
      count++;
    }
    assertThat(count).isGreaterThan(4);
  }
}
