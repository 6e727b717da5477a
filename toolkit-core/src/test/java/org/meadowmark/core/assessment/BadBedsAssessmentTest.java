package org.meadowmark.core.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.measure.BedMeasure;
import org.meadowmark.core.measure.Fragmentation;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.survey.SurveyFile;
import org.meadowmark.core.write.AssessedSurvey;

/**
 * Beds that overlap, nest or nearly touch, a bed scarred away, and a scar longer than all of them,
 * from files to files.
 */
class BadBedsAssessmentTest {
  private static final double WEST = 350_000;
  private static final double SOUTH = 3_070_000;

  @TempDir Path folder;
  private SurveyDefinition definition;

  @BeforeEach
  void writeSurvey() throws IOException {
    Files.writeString(
        folder.resolve("beds.csv"),
        "id,wkt\n"
            + bed("a1", 0, 0, 60, 10)
            + bed("a2", 50, 0, 100, 10)
            + bed("c1", 0, 100, 100, 200)
            + bed("c2", 30, 130, 50, 150)
            + bed("d1", 230, 130, 250, 150)
            + bed("d2", 200, 100, 300, 200)
            + bed("e1", 0, 300, 50, 400)
            + bed("e2", 50.05, 300, 100, 400)
            + bed("f", 500, 0, 510, 10));
    Files.writeString(
        folder.resolve("scars.csv"),
        "id,width,wkt\n"
            + "long,0.5,\"LINESTRING (%s %s, %s %s)\"\n"
                .formatted(WEST - 1_000, SOUTH + 140, WEST + 1_000, SOUTH + 140)
            + "basin,,"
            + box(490, -10, 520, 20)
            + "\n");
    Path file =
        Files.writeString(
            folder.resolve("survey.toml"),
            """
            [layers.beds]
            file = "beds.csv"
            crs = "EPSG:32617"
            wkt_column = "wkt"
            attributes = { id = "id" }

            [layers.scars]
            file = "scars.csv"
            crs = "EPSG:32617"
            wkt_column = "wkt"
            attributes = { id = "id", width = "width" }

            [parameters]
            analysis_crs = "EPSG:32617"
            ground_scale = false
            """);
    definition = SurveyFile.read(file, ParametersTable.bundled(), ReferenceTablesReader.bundled());
  }

  private static String bed(String id, double x1, double y1, double x2, double y2) {
    return id + "," + box(x1, y1, x2, y2) + "\n";
  }

  private static String box(double x1, double y1, double x2, double y2) {
    double left = WEST + x1;
    double right = WEST + x2;
    double low = SOUTH + y1;
    double high = SOUTH + y2;
    return "\"POLYGON ((%s %s, %s %s, %s %s, %s %s, %s %s))\""
        .formatted(left, low, right, low, right, high, left, high, left, low);
  }

  private Assessment assessment() {
    return new Assessment(
        definition, ReferenceTablesReader.bundled(), Map.of(), "test", Progress.NONE);
  }

  @Test
  void everythingIsMeasuredOnceAndWhatWasWrongIsListed() {
    AssessedSurvey assessed = assessment().assess();
    assertThat(assessed.findings())
        .filteredOn(f -> f.code() == FindingCode.BED_OVERLAP)
        .extracting(f -> f.where().featureId() + " " + f.treatment())
        .containsExactly("a2 REPAIRED", "c2 SKIPPED", "d2 REPAIRED");
    assertThat(assessed.findings())
        .filteredOn(f -> f.code() == FindingCode.BED_SLIVER)
        .isNotEmpty();

    List<BedMeasure> beds = assessed.measurement().beds();
    assertThat(beds)
        .extracting(bed -> bed.bed().id())
        .containsExactly("a1", "a2", "c1", "d1", "d2", "e1", "e2", "f");
    double grass = beds.stream().mapToDouble(b -> b.damage().grassSquareMetres()).sum();
    assertThat(grass).isCloseTo(1_000 + 10_000 + 10_000 + 9_995 + 100, within(1e-6));
    assertThat(beds)
        .allSatisfy(
            bed ->
                assertThat(
                        bed.damage().scarredSquareMetres()
                            + bed.fragmentation().after().patchSquareMetres())
                    .isCloseTo(bed.damage().grassSquareMetres(), within(1e-6)));
    assertThat(beds.get(7).damage().share()).hasValue(1);
    assertThat(beds.get(7).fragmentation().after().mesh().division()).hasValue(1);

    Fragmentation whole = assessed.measurement().whole().fragmentation();
    assertThat(whole.before().patchCount()).isEqualTo(5);
    // The long scar halves c and d; f is gone.
    assertThat(whole.after().patchCount()).isEqualTo(6);
    assertThat(assessed.measurement().whole().damage().scarredSquareMetres())
        .isCloseTo(0.5 * 200 + 100, within(1e-6));
    // Closing the sliver of e moves its edges by less than the tolerance.
    assertThat(whole.totalSquareMetres()).isCloseTo(grass, within(10.0));
  }

  @Test
  void theOutputIsWritten() {
    String summary = assessment().assessInto(folder.resolve("out"), false);
    assertThat(summary).contains("Effective mesh size");
    assertThat(folder.resolve("out/tables/fragmentation.csv")).isNotEmptyFile();
    assertThat(folder.resolve("out/tables/gap_width_histogram.csv")).isNotEmptyFile();
  }

  @Test
  void anErrorFromFewCheckPointsIsQuestioned() throws IOException {
    Path file = folder.resolve("survey.toml");
    Files.writeString(
        file, Files.readString(file) + "position_rmse_m = 0.5\nposition_check_points = 12\n");
    definition = SurveyFile.read(file, ParametersTable.bundled(), ReferenceTablesReader.bundled());
    assertThat(assessment().assess().findings())
        .filteredOn(f -> f.code() == FindingCode.FEW_CHECK_POINTS)
        .singleElement()
        .satisfies(f -> assertThat(f.problem()).contains("12 check points"));
  }

  @Test
  void theSummaryNamesTheGuildThatGaveTheDistance() throws IOException {
    Path file = folder.resolve("survey.toml");
    Files.writeString(file, Files.readString(file) + "fish_guild = \"juveniles\"\n");
    definition = SurveyFile.read(file, ParametersTable.bundled(), ReferenceTablesReader.bundled());
    String summary = assessment().assessInto(folder.resolve("out"), false).replaceAll("\\s+", " ");
    assertThat(summary).contains("gaps of up to 5 m (fish guild juveniles), an animal finds");
  }
}
