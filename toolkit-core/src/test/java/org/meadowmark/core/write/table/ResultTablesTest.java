package org.meadowmark.core.write.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.recovery.SurveyRecovery;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Column;
import org.meadowmark.core.write.CsvTableWriter;
import org.meadowmark.core.write.InventedSurvey;
import org.meadowmark.core.write.ResultTable;

class ResultTablesTest {
  @TempDir Path folder;

  @Test
  void makesTheTablesOfTheDictionary() {
    assertThat(ResultTables.of(InventedSurvey.survey()))
        .extracting(ResultTable::name)
        .containsExactly(
            "beds",
            "areas",
            "area_classes",
            "area_severity",
            "scars",
            "scars_in_beds",
            "scarred_grass",
            "patches",
            "gaps",
            "fragmentation",
            "gap_width_histogram",
            "crossing_distances",
            "patch_importance",
            "scar_fillings",
            "segments",
            "scar_shares",
            "zones",
            "zone_segments",
            "zone_markers",
            "zone_devices",
            "zone_cover",
            "scar_recovery",
            "bed_loss",
            "area_loss",
            "loss_years",
            "planted_spread",
            "repair_sites",
            "repair_units",
            "repair_choice",
            "repair_budget_curve",
            "repair_seasons",
            "layers",
            "findings")
        .isEqualTo(ResultTables.layouts().map(TableLayout::name).toList());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void bytesDoNotDependOnTheOrderOfLists(long seed) throws IOException {
    Map<String, byte[]> ordered = csv(InventedSurvey.survey(), "ordered");
    Map<String, byte[]> shuffled = csv(shuffled(new Random(seed)), "shuffled");
    assertThat(shuffled.keySet()).isEqualTo(ordered.keySet());
    ordered.forEach((name, bytes) -> assertThat(shuffled.get(name)).as(name).isEqualTo(bytes));
  }

  @Test
  void rowsComeInTheOrderOfNumbersAndIds() {
    assertThat(column("beds", "bed_id")).containsExactly("1", "2", "11");
    assertThat(column("scars", "scar_id")).containsExactly("2", "10", "A1", "B7");
    assertThat(column("patches", "patch_id")).containsExactly("P1", "P2", "P10");
    assertThat(column("gaps", "gap_id")).containsExactly("G1", "G2", "G10");
    assertThat(column("areas", "scope"))
        .containsExactly("management area", "management area", "outside", "whole survey");
    assertThat(column("segments", "segment_id")).containsExactly("S2", "S10", "S3");
  }

  @Test
  void whatIsNotKnownHasNoValue() {
    assertThat(column("beds", "share_scarred_pct")).containsExactly(0.946, 20.5, null);
    assertThat(column("beds", "severity_class")).containsExactly("light", "severe", "unknown");
    assertThat(column("beds", "unsurveyed_area_m2")).containsExactly(0.0, 500.0, 1600.0);
    assertThat(column("beds", "species")).containsExactly("thalassia", "halodule", null);
    assertThat(column("scars", "width_m")).containsExactly(0.3, 0.8, null, 0.4);
    assertThat(column("segments", "rank")).containsExactly(1L, 2L, null);
    assertThat(column("segments", "damage_rate_m_per_ha")).containsExactly(100.0, 14.0, null);
    assertThat(column("segments", "scar_pattern"))
        .containsExactly("corner-cutting", "corner-cutting", null);
    assertThat(column("segments", "shallow_pct")).containsExactly(80.0, null, null);
    assertThat(column("segments", "scar_angle_deg")).containsExactly(28.5, 28.5, null);
    assertThat(column("segments", "re_scarred_pct")).containsExactly(null, null, null);
    assertThat(column("segments", "hot_spot")).containsExactly(true, true, null);
    assertThat(column("segments", "score")).containsExactly(0.65, 0.325, null);
    assertThat(column("segments", "score_shallow")).containsExactly(null, null, null);
    assertThat(column("segments", "missing_terms")).containsExactly(null, "shallow", null);
    assertThat(column("segments", "high_for_want_of_data")).containsExactly(false, true, null);
    assertThat(column("segments", "top_ten_share")).containsExactly(0.98, 0.49, null);
    assertThat(column("segments", "share_anchor_pct")).containsExactly(25.0, 0.0, null);
    assertThat(column("segments", "exposure_light_ha")).containsExactly(1.2, 2.5, 0.1);
    assertThat(column("segments", "data_gaps"))
        .containsExactly(
            "depth known for 90 % of scar length; one season: re-scarring unknown",
            "no depth known at its scars; one season: re-scarring unknown",
            "no depth known at its scars; one season: re-scarring unknown");
    assertThat(column("areas", "area_name"))
        .containsExactly("Heron Bight", "2", "outside every management area", "whole survey");
  }

  @Test
  void intervalsStandBesideTheMeasuredDamage() {
    assertThat(column("beds", "likeliest_class")).containsExactly("light", "severe", null);
    assertThat(column("beds", "draws_light_pct")).containsExactly(87.5, 0.0, null);
    assertThat(column("beds", "share_scarred_low_pct")).containsExactly(0.7568, 16.4, null);
    assertThat(column("beds", "share_scarred_high_pct")).containsExactly(1.2298, 26.65, null);
    assertThat(column("beds", "larger_error")).containsExactly("width", "width", null);
    assertThat(column("beds", "width_variance_pct")).containsOnlyNulls();
  }

  @Test
  void onlySummaryLinesHaveNoGeometry() {
    List<Boolean> has = new ArrayList<>();
    table("areas").rows().forEach(row -> has.add(row.geometry().isPresent()));
    assertThat(has).containsExactly(true, true, false, false);
  }

  @Test
  void tablesWithoutRowsHaveTheColumnsOfEverySurvey() {
    AssessedSurvey survey = InventedSurvey.survey();
    List<ResultTable> tables = ResultTables.of(survey);
    List<ResultTable> empty =
        ResultTables.withoutRows(survey.definition().parameters(), survey.references());
    assertThat(empty)
        .extracting(ResultTable::name)
        .isEqualTo(tables.stream().map(ResultTable::name).toList());
    for (int i = 0; i < empty.size(); i++) {
      assertThat(empty.get(i).rows()).isEmpty();
      assertThat(empty.get(i).geometryKind()).isEqualTo(tables.get(i).geometryKind());
      assertThat(empty.get(i).columns()).containsSubsequence(tables.get(i).columns());
      if (!empty.get(i).name().equals("segments")) {
        assertThat(empty.get(i).columns()).isEqualTo(tables.get(i).columns());
      }
    }
    assertThat(empty.get(14).columns())
        .extracting(Column::name)
        .containsAll(
            survey.references().causes().keySet().stream()
                .map(cause -> "scar_length_" + cause + "_m")
                .toList());
  }

  @Test
  void causesThatOccurAreColumnsInTheOrderOfTheCauseTable() {
    assertThat(table("segments").columns())
        .extracting(Column::name)
        .containsSubsequence("scar_length_m", "scar_length_propeller_m", "scar_length_anchor_m")
        .doesNotContain("scar_length_grounding_m");
    assertThat(column("segments", "scar_length_anchor_m")).containsExactly(30.0, 0.0, 0.0);
  }

  @Test
  void crossingDistancesCoverTheWholeEachAreaAndSplitBeds() {
    assertThat(column("crossing_distances", "scope"))
        .containsExactly(
            "whole survey",
            "whole survey",
            "management area",
            "management area",
            "management area",
            "management area",
            "outside",
            "outside",
            "bed",
            "bed");
    assertThat(column("crossing_distances", "id").get(8)).isEqualTo("1");
    assertThat(column("crossing_distances", "groups_after").subList(8, 10)).containsExactly(3L, 1L);
  }

  /** The invented survey states a pixel of 0.5 m and no positional error. */
  @Test
  void widthsBelowAPixelAreMarkedAndWhatIsNotStatedHasNoValue() {
    assertThat(column("scars", "width_m")).containsExactly(0.3, 0.8, null, 0.4);
    assertThat(column("scars", "narrower_than_pixel")).containsExactly(true, false, null, true);
    assertThat(column("gaps", "minimum_width_m")).containsExactly(0.3, 0.3, 0.8);
    assertThat(column("gaps", "narrower_than_pixel")).containsExactly(true, true, false);
    assertThat(column("gaps", "narrower_than_position_accuracy")).containsOnlyNulls();
  }

  @Test
  void fragmentationGivesBeforeAfterAndChangeForEveryPart() {
    assertThat(column("fragmentation", "scope"))
        .containsExactly(
            "whole survey", "management area", "management area", "outside", "bed", "bed", "bed");
    assertThat(column("fragmentation", "patch_count_change").get(0)).isEqualTo(3L);
    double before = (double) column("fragmentation", "mesh_size_before_m2").get(0);
    double after = (double) column("fragmentation", "mesh_size_after_m2").get(0);
    double change = (double) column("fragmentation", "mesh_size_change_m2").get(0);
    assertThat(before).isEqualTo(3_200);
    assertThat(change).isCloseTo(after - before, within(1e-5)).isNegative();
  }

  @Test
  void gapWidthClassesAddUpToTheGaps() {
    assertThat(column("gap_width_histogram", "scope").subList(0, 2))
        .containsExactly("whole survey", "whole survey");
    assertThat(column("gap_width_histogram", "from_m").subList(0, 2)).containsExactly(0.0, 0.5);
    assertThat(column("gap_width_histogram", "to_m").subList(0, 2)).containsExactly(0.5, null);
    assertThat(column("gap_width_histogram", "gap_count").subList(0, 2)).containsExactly(2L, 1L);
  }

  @Test
  void refusesANumberThatIsNotFinite() {
    Measurement m = InventedSurvey.measurement();
    Measurement broken =
        new Measurement(
            m.scars(),
            m.scarsInBeds(),
            m.beds(),
            m.areas(),
            m.patches(),
            m.gaps(),
            List.of(new Measurement.ScarredGrass("1", InventedSurvey.square(0, 0, 1), Double.NaN)),
            m.connectivity());
    ResultTable table =
        ResultTables.of(InventedSurvey.with(broken, InventedSurvey.ranking(), List.of())).stream()
            .filter(t -> t.name().equals("scarred_grass"))
            .findFirst()
            .orElseThrow();
    assertThatThrownBy(() -> table.rows().iterator().next())
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("scarred_grass.scarred_area_m2");
  }

  private static ResultTable table(String name) {
    return ResultTables.of(InventedSurvey.survey()).stream()
        .filter(table -> table.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static List<Object> column(String tableName, String columnName) {
    ResultTable table = table(tableName);
    int at = table.columns().stream().map(Column::name).toList().indexOf(columnName);
    List<Object> values = new ArrayList<>();
    table.rows().forEach(row -> values.add(row.values().get(at)));
    return values;
  }

  private Map<String, byte[]> csv(AssessedSurvey survey, String name) throws IOException {
    Path place = Files.createDirectories(folder.resolve(name));
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (ResultTable table : ResultTables.of(survey)) {
      Path file = place.resolve(table.name() + ".csv");
      CsvTableWriter.write(file, true, table, true);
      files.put(table.name(), Files.readAllBytes(file));
    }
    return files;
  }

  private static AssessedSurvey shuffled(Random random) {
    Measurement m = InventedSurvey.measurement();
    ChannelRanking r = InventedSurvey.ranking();
    AssessedSurvey ordered = InventedSurvey.survey();
    return new AssessedSurvey(
        ordered.definition(),
        ordered.survey(),
        new Measurement(
            shuffled(m.scars(), random),
            shuffled(m.scarsInBeds(), random),
            shuffled(m.beds(), random),
            shuffled(m.areas(), random),
            shuffled(m.patches(), random),
            shuffled(m.gaps(), random),
            shuffled(m.scarredGrass(), random),
            m.connectivity()),
        new ChannelRanking(
            shuffled(r.segments(), random),
            shuffled(r.shares(), random),
            r.scarLengthMetres(),
            r.attributedMetres(),
            r.outOfReachMetres(),
            r.blockedMetres(),
            r.polygonScarCount()),
        ordered.zones(),
        new SurveyRecovery(
            ordered.recovery().conventions(),
            ordered.recovery().planting(),
            shuffled(ordered.recovery().scars(), random),
            shuffled(ordered.recovery().beds(), random),
            shuffled(ordered.recovery().areas(), random),
            ordered.recovery().worked()),
        ordered.repairs(),
        shuffled(InventedSurvey.findings(), random),
        shuffled(InventedSurvey.counts(), random),
        ordered.references());
  }

  private static <T> List<T> shuffled(List<T> list, Random random) {
    List<T> copy = new ArrayList<>(list);
    Collections.shuffle(copy, random);
    return copy;
  }
}
