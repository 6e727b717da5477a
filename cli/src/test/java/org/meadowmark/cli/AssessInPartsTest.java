package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Several surveys one after the other, and what is refused. */
class AssessInPartsTest {
  @TempDir private Path folder;
  private Path temporary;

  @BeforeEach
  void makeTemporaryFolder() throws IOException {
    temporary = Files.createDirectory(folder.resolve("temporary"));
  }

  /** Two beds a long way from each other, 100 m on a side, each crossed by scars 0.5 m wide. */
  private Path survey(String name, int scarCount) throws IOException {
    Path place = Files.createDirectories(folder.resolve(name));
    Files.writeString(
        place.resolve("survey.toml"),
        """
        [survey]
        name = "%s"
        date = 2026-06-14

        [parameters]
        analysis_crs = "EPSG:32617"

        [layers.scars]
        file = "scars.csv"
        crs = "EPSG:32617"

        [layers.scars.attributes]
        id = "id"
        width = "width"

        [layers.beds]
        file = "beds.csv"
        crs = "EPSG:32617"
        """
            .formatted(name));
    Files.writeString(
        place.resolve("beds.csv"),
        """
        id,wkt
        1,"POLYGON ((400000 3000000, 400100 3000000, 400100 3000100, 400000 3000100, 400000 3000000))"
        2,"POLYGON ((402000 3000000, 402100 3000000, 402100 3000100, 402000 3000100, 402000 3000000))"
        """);
    StringBuilder scars = new StringBuilder("id,width,wkt\n");
    for (int i = 0; i < scarCount; i++) {
      int x = 400_000 + 2_000 * (i % 2);
      int y = 3_000_010 + 5 * i;
      scars.append("%d,0.5,\"LINESTRING (%d %d, %d %d)\"\n".formatted(i, x - 10, y, x + 110, y));
    }
    Files.writeString(place.resolve("scars.csv"), scars);
    return place;
  }

  private Terminal.Outcome run(String... arguments) {
    return Terminal.run(
        Main.commandLine(),
        Stream.concat(
                Stream.of("assess-in-parts", "--temporary-files=" + temporary),
                Stream.of(arguments))
            .toArray(String[]::new));
  }

  @Test
  void oneThatFailsIsReportedAndTheOthersGoOn() throws IOException {
    Path first = survey("heron-sound", 4);
    Path broken = survey("kelp-bay", 1);
    Files.delete(broken.resolve("scars.csv"));
    Path last = survey("otter-inlet", 2);
    Path output = folder.resolve("out");

    Terminal.Outcome outcome =
        run(first + "", broken + "", last + "", "--output=" + output, "--part-scars=1");

    assertThat(outcome.exitCode()).isEqualTo(ExitCode.INPUT.value());
    assertThat(outcome.err()).contains("error: kelp-bay: ", "scars.csv");
    assertThat(output.resolve("heron-sound/run-record.json")).isNotEmptyFile();
    assertThat(output.resolve("heron-sound/parts.csv")).content().hasLineCount(3);
    assertThat(output.resolve("otter-inlet/run-record.json")).isNotEmptyFile();
    assertThat(output.resolve("kelp-bay")).doesNotExist();
    List<String> totals = Files.readAllLines(output.resolve("totals.csv"));
    assertThat(totals).hasSize(5);
    // A scar parts its bed, so n scars make n more patches.
    assertThat(totals.get(1)).startsWith("heron-sound,done,2,4,").endsWith(",2,6,");
    assertThat(totals.get(2)).startsWith("kelp-bay,failed,,");
    assertThat(totals.get(3)).startsWith("otter-inlet,done,2,2,").endsWith(",2,4,");
    assertThat(totals.get(4)).startsWith("all of these,incomplete,4,6,").endsWith(",4,10,");
    assertThat(outcome.out())
        .contains("2 survey(s) assessed: 4 beds, 6 scars", "Failed: kelp-bay.");
    try (Stream<Path> left = Files.list(temporary)) {
      assertThat(left).isEmpty();
    }
  }

  @Test
  void anOutputIsKeptUnlessToldOtherwise() throws IOException {
    Path first = survey("heron-sound", 1);
    Path last = survey("otter-inlet", 2);
    Path output = folder.resolve("out");
    assertThat(run(first + "", last + "", "--output=" + output).exitCode()).isZero();

    Terminal.Outcome again = run(first + "", last + "", "--output=" + output);
    assertThat(again.exitCode()).isEqualTo(ExitCode.OUTPUT_EXISTS.value());
    assertThat(run(first + "", last + "", "--overwrite", "--output=" + output).exitCode()).isZero();
  }

  @Test
  void optionsOfOneSurveyAreRefusedForSeveral() throws IOException {
    Path first = survey("heron-sound", 1);
    Path last = survey("otter-inlet", 2);

    Terminal.Outcome outcome =
        run(first + "", last + "", "--name=both", "--output=" + folder.resolve("out"));

    assertThat(outcome.exitCode()).isEqualTo(ExitCode.USAGE.value());
    assertThat(outcome.err()).contains("hold for one survey only");
  }

  @Test
  void badSizesAndFoldersAreRefused() throws IOException {
    Path first = survey("heron-sound", 1);
    Path output = folder.resolve("out");

    assertThat(run(first + "", "--part-scars=0", "--output=" + output).exitCode())
        .isEqualTo(ExitCode.USAGE.value());
    Terminal.Outcome nowhere =
        run(first + "", "--temporary-files=" + folder.resolve("none"), "--output=" + output);
    assertThat(nowhere.exitCode()).isEqualTo(ExitCode.USAGE.value());
  }
}
