package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a repair plan makes of budgets, rates and surveys that lack something. */
class RepairInputTest {
  private static final String BED =
      "\"POLYGON ((500000 3000000, 500200 3000000, 500200 3000200, 500000 3000200,"
          + " 500000 3000000))\"\n";

  @TempDir Path folder;
  private Path scars;
  private Path beds;
  private Path output;

  @BeforeEach
  void files() throws IOException {
    scars = scars("0.5", "0.6");
    beds = write("beds.csv", "id,species,wkt\nb1,turtlegrass," + BED);
    output = folder.resolve("out");
  }

  private Path scars(String... widths) throws IOException {
    StringBuilder text = new StringBuilder("id,cause,width_m,wkt\n");
    for (int i = 0; i < widths.length; i++) {
      double y = 3_000_050.0 + 50 * i;
      text.append("s" + (i + 1) + ",propeller," + widths[i] + ",\"LINESTRING (499990 " + y)
          .append(", 500210 " + y + ")\"\n");
    }
    return write("scars.csv", text.toString());
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text, StandardCharsets.UTF_8);
  }

  private Terminal.Outcome assess(String... settings) {
    Stream<String> sets = Arrays.stream(settings).map(setting -> "--set=" + setting);
    List<String> arguments =
        Stream.concat(
                Stream.of(
                    "assess",
                    "--name=Repairs",
                    "--scars=" + scars,
                    "--beds=" + beds,
                    "--crs=beds=EPSG:32617",
                    "--crs=scars=EPSG:32617",
                    "--set=uncertainty_draws=0",
                    "--overwrite",
                    "--output=" + output),
                sets)
            .toList();
    return Terminal.run(Main.commandLine(), arguments.toArray(String[]::new));
  }

  private void run(String... settings) {
    Terminal.Outcome outcome = assess(settings);
    assertThat(outcome.exitCode()).as(outcome.err()).isZero();
  }

  /** Lines broken anywhere become one. */
  private String summary() throws IOException {
    return Files.readString(output.resolve("summary.txt")).replaceAll("\\s+", " ");
  }

  private List<CSVRecord> table(String name) throws IOException {
    Path file = output.resolve("tables").resolve(name + ".csv");
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (CSVParser parser = CSVParser.parse(file, StandardCharsets.UTF_8, format)) {
      return parser.getRecords();
    }
  }

  @Test
  void aNegativeBudgetIsRefusedWithItsLimit() {
    Terminal.Outcome outcome = assess("repair_budget=-1");
    assertThat(outcome.exitCode()).isNotZero();
    assertThat(outcome.err())
        .contains("repair_budget: -1 is out of limits; give a number from 0")
        .hasLineCount(1);
    assertThat(output).doesNotExist();
  }

  @Test
  void aBudgetOfZeroPlansNothingAndSaysSo() throws IOException {
    run("repair_budget=0");
    assertThat(summary())
        .contains("A budget of 0 plants 0 scars")
        .contains("The budget is 0: nothing that costs money can be planned.");
    assertThat(table("repair_seasons")).isEmpty();
    assertThat(table("repair_choice").get(0).get("benefit")).isEqualTo("0.0");
    assertThat(table("repair_sites")).hasSize(2);
  }

  @Test
  void aBudgetShowsWhatIsRestoredTogetherAndAlone() throws IOException {
    run("repair_budget=100000");
    CSVRecord choice = table("repair_choice").get(0);
    double together = Double.parseDouble(choice.get("connectivity_gain_ha"));
    double separate = Double.parseDouble(choice.get("connectivity_gain_separate_ha"));
    // Two lanes in a row cut the bed in three: more together than each alone.
    assertThat(together).isGreaterThan(separate * (1 + 1e-6)).isPositive();
    assertThat(choice.get("proof")).isEqualTo("all sets");
    assertThat(choice.get("gap_pct")).isEqualTo("0.0");
    assertThat(summary()).contains("Filled together they restore");
  }

  @Test
  void aBedWithoutSpeciesHasNoForecastAndTheReasonIsGiven() throws IOException {
    beds = write("beds.csv", "id,wkt\nb1," + BED);
    run("repair_budget=100000");
    assertThat(summary())
        .contains("No recovery is forecast for 2 of 2 scars: their gain in grass is not counted.");
    assertThat(table("repair_sites").get(0).get("gain_ha_years")).isEmpty();
    assertThat(table("repair_sites").get(0).get("gain_basis"))
        .startsWith("no species mapped: no published recovery time");
    assertThat(table("repair_sites").get(0).get("unknown")).contains("gain in grass");
  }

  @Test
  void aWidthOfZeroIsReplacedWithAFinding() throws IOException {
    scars = scars("0", "0.6");
    run("repair_budget=100000");
    assertThat(table("findings"))
        .anySatisfy(
            finding -> {
              assertThat(finding.get("feature_id")).isEqualTo("s1");
              assertThat(finding.get("problem")).isEqualTo("width 0 m is not above 0");
            });
    assertThat(Long.parseLong(table("repair_sites").get(0).get("units"))).isPositive();
  }

  @Test
  void anUnknownDepthSpeaksNeitherForNorAgainst() throws IOException {
    run("repair_budget=100000", "deepest_planting_m=1");
    for (CSVRecord site : table("repair_sites")) {
      assertThat(site.get("water_depth_m")).isEmpty();
      assertThat(site.get("unknown")).contains("water depth and light");
      assertThat(site.get("fitness")).isEqualTo("plant");
    }
  }

  @Test
  void withoutDiscountingLaterSeasonsLoseOnlyWhatCloses() throws IOException {
    scars = scars("0.5", "0.5");
    String[] seasons = {
      "repair_budget=100000", "repair_season_budget=4500", "connectivity_weight=0"
    };
    double[] kept = new double[2];
    for (int i = 0; i < 2; i++) {
      run(seasons[0], seasons[1], seasons[2], "discount_rate=" + (i == 0 ? "0" : "0.2"));
      List<CSVRecord> rows = table("repair_seasons");
      assertThat(rows).hasSize(2);
      double first = Double.parseDouble(rows.get(0).get("benefit"));
      double second = Double.parseDouble(rows.get(1).get("benefit"));
      assertThat(second).isLessThan(first).isPositive();
      kept[i] = second / first;
    }
    assertThat(kept[1]).isLessThan(kept[0]);
    run("discount_rate=0");
    assertThat(Files.readString(output.resolve("loss-worked.txt")))
        .contains("so nothing is discounted");
  }
}
