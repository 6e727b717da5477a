package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The whole program on real beds in US survey feet, with management areas in degrees.
 *
 * <p>Source: Southwest Florida Water Management District seagrass mapping of 1999, as published by
 * the Tampa Bay Estuary Program, doi:10.5281/zenodo.5507336. Published class totals: its table of
 * coverage by year. Overlay table: computed from the two files with R sf 1.0-9 (GEOS 3.11.1, PROJ
 * 9.1.0), planar areas in EPSG:2882. Both are grid figures of EPSG:2882; ours are ground figures
 * unless told.
 */
class RealBedsTest {
  private static final Path DATA =
      Path.of(System.getProperty("meadowmark.root")).resolveSibling("shared").resolve("data");
  private static final Path BEDS = DATA.resolve("tampa-bay-seagrass-1999.gpkg");
  private static final Path AREAS = DATA.resolve("tampa-bay-segments.gpkg");
  private static final Path OVERLAY = DATA.resolve("tampa-bay-overlay-1999.csv");

  /** 4046.872609874252 m² = 43,560 square US survey feet of (1200/3937 m)² each. */
  private static final double SQUARE_METRES_PER_ACRE = 43_560 * Math.pow(1200.0 / 3937.0, 2);

  private static final String PATCHY = "9113";
  private static final String CONTINUOUS = "9116";

  @TempDir static Path folder;

  @BeforeAll
  static void needsTheData() {
    Assumptions.assumeTrue(
        Files.exists(BEDS),
        "skipped: the open bed data are not beside the project, in ../shared/data");
    makeScars(BEDS, 300, folder.resolve("scars"));
  }

  private static void makeScars(Path beds, int count, Path output) {
    Terminal.Outcome made =
        run(
            "make-sample",
            "--on-beds=" + beds,
            "--scars=" + count,
            "--seed=11",
            "--output=" + output);
    assertThat(made.exitCode()).as(made.err()).isZero();
  }

  private static Terminal.Outcome run(String... arguments) {
    return Terminal.run(Main.commandLine(), arguments);
  }

  private static List<CSVRecord> rows(Path file) throws IOException {
    try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      return CSVFormat.RFC4180
          .builder()
          .setHeader()
          .setSkipHeaderRecord(true)
          .get()
          .parse(reader)
          .getRecords();
    }
  }

  private static Path run(String command, Path survey, Path output, String... more) {
    String[] arguments =
        Stream.concat(
                Stream.of(
                    command,
                    survey.toString(),
                    "--areas=" + AREAS,
                    "--attribute=management_areas.name=segment",
                    "--attribute=beds.texture=FLUCCSCODE",
                    "--quiet",
                    "--output=" + output),
                Arrays.stream(more))
            .toArray(String[]::new);
    Terminal.Outcome outcome = run(arguments);
    assertThat(outcome.exitCode()).as(outcome.err()).isZero();
    return output;
  }

  private static Map<String, Double> acresByClass(Path output) throws IOException {
    Map<String, Double> acres = new TreeMap<>();
    for (CSVRecord row : rows(output.resolve("tables/area_classes.csv"))) {
      acres.put(
          row.get("area_name") + "/" + row.get("texture"),
          Double.parseDouble(row.get("grass_area_m2")) / SQUARE_METRES_PER_ACRE);
    }
    return acres;
  }

  @Test
  void groundAreasReproduceThePublishedTotalsAndTheOverlay() throws IOException {
    Map<String, Double> acres =
        acresByClass(
            run(
                "assess",
                folder.resolve("scars"),
                folder.resolve("ground"),
                "--set=connectivity_detail_patches=0",
                "--set=uncertainty_draws=0"));
    assertThat(acres.get("whole survey/" + PATCHY))
        .isCloseTo(10_201.68, Percentage.withPercentage(0.2));
    assertThat(acres.get("whole survey/" + CONTINUOUS))
        .isCloseTo(14_637.62, Percentage.withPercentage(0.2));
    List<CSVRecord> overlay = rows(OVERLAY);
    assertThat(overlay).hasSize(14);
    for (CSVRecord row : overlay) {
      String key = row.get("segment") + "/" + row.get("FLUCCSCODE");
      assertThat(acres.get(key))
          .as(key)
          .isCloseTo(
              Double.parseDouble(row.get("acres_us_survey")), Percentage.withPercentage(0.2));
    }
    assertThat(
            acres.get("outside every management area/" + PATCHY)
                + acres.get("outside every management area/" + CONTINUOUS))
        .isCloseTo(660, within(10.0));
  }

  /** On the 679 beds in the south, where each has more scars than it would have of all beds. */
  @Test
  void inPartsEveryTableIsTheSame() throws IOException, SQLException {
    Path survey = folder.resolve("south");
    makeScars(southernBeds(), 500, survey);
    String draws = "--set=uncertainty_draws=40";
    Path whole = run("assess", survey, folder.resolve("whole"), draws);
    Path inParts =
        run("assess-in-parts", survey, folder.resolve("in-parts"), draws, "--part-scars=60");
    assertThat(Files.readAllLines(inParts.resolve("parts.csv"))).hasSizeGreaterThan(5);
    try (Stream<Path> tables = Files.list(whole.resolve("tables"))) {
      assertThat(tables)
          .isNotEmpty()
          .allSatisfy(
              table ->
                  assertThat(inParts.resolve("tables").resolve(table.getFileName()))
                      .hasSameBinaryContentAs(table));
    }
  }

  /** A copy of the beds that keeps those south of a line, in feet of the grid. */
  private static Path southernBeds() throws IOException, SQLException {
    Path copy = Files.copy(BEDS, folder.resolve("southern-beds.gpkg"));
    assertThat(copy.toFile().setWritable(true)).isTrue();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + copy.toUri());
        Statement statement = connection.createStatement()) {
      // The triggers call functions of the program that wrote the file.
      for (String trigger :
          List.of("rtree_sg1999_geom_delete", "trigger_delete_feature_count_sg1999")) {
        statement.execute("DROP TRIGGER " + trigger);
      }
      statement.execute(
          "DELETE FROM sg1999 WHERE fid NOT IN"
              + " (SELECT id FROM rtree_sg1999_geom WHERE miny <= 1180000)");
      try (ResultSet left = statement.executeQuery("SELECT count(*) FROM sg1999")) {
        assertThat(left.getInt(1)).isEqualTo(679);
      }
    }
    return copy;
  }

  /** Measured on the grid that the overlay was made on, without ground scale: far closer. */
  @Test
  void gridAreasInSurveyFeetReproduceTheOverlay() throws IOException {
    Map<String, Double> acres =
        acresByClass(
            run(
                "assess",
                folder.resolve("scars"),
                folder.resolve("grid"),
                "--analysis-crs=EPSG:2882",
                "--set=ground_scale=false",
                "--set=connectivity_detail_patches=0",
                "--set=uncertainty_draws=0"));
    assertThat(acres.get("whole survey/" + PATCHY)).isCloseTo(10_202.59, within(0.01));
    assertThat(acres.get("whole survey/" + CONTINUOUS)).isCloseTo(14_637.62, within(0.01));
    for (CSVRecord row : rows(OVERLAY)) {
      String key = row.get("segment") + "/" + row.get("FLUCCSCODE");
      assertThat(acres.get(key))
          .as(key)
          .isCloseTo(
              Double.parseDouble(row.get("acres_us_survey")), Percentage.withPercentage(0.01));
    }
  }
}
