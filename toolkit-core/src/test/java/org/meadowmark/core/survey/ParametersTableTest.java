package org.meadowmark.core.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.reference.TableLibrary;
import org.meadowmark.core.reference.TableLibrary.Table;
import org.meadowmark.core.survey.Parameters.SeverityDenominator;

class ParametersTableTest {
  private final ParametersTable table = ParametersTable.bundled();

  @Test
  void everyComponentOfTheParametersHasItsRow() {
    assertThat(table.rows())
        .extracting(ParameterRow::name)
        .containsExactlyElementsOf(ParameterName.keys())
        .hasSize(
            Parameters.class.getRecordComponents().length
                - 6
                + RankingParameters.class.getRecordComponents().length
                + ZoneParameters.class.getRecordComponents().length
                + RecoveryParameters.class.getRecordComponents().length
                + RepairParameters.class.getRecordComponents().length
                + MatchingParameters.class.getRecordComponents().length
                + ComparisonParameters.class.getRecordComponents().length
                - 1);
  }

  @Test
  void defaultsAreThoseOfTheTable() {
    assertThat(table.defaults())
        .isEqualTo(
            new Parameters(
                Optional.empty(),
                true,
                SeverityDenominator.BED,
                50,
                List.of(1.0, 2.0, 5.0, 10.0, 20.0, 50.0),
                10,
                Optional.empty(),
                List.of(0.1, 0.2, 0.3, 0.4, 0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 5.0, 10.0),
                0.1,
                0.01,
                0.05,
                20,
                100,
                250,
                0.1,
                5,
                OptionalDouble.empty(),
                200,
                1,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                50_000,
                50_000,
                100,
                new RankingParameters(
                    15,
                    5,
                    30,
                    60,
                    15,
                    0.3,
                    150,
                    1,
                    999,
                    0.05,
                    0.6,
                    new ScoreWeights(
                        Map.of(
                            ScoreTerm.RATE, 5.0,
                            ScoreTerm.HOT_SPOT, 2.0,
                            ScoreTerm.EDGE, 1.0,
                            ScoreTerm.SHALLOW, 1.0,
                            ScoreTerm.SCARRED_AREA, 1.0,
                            ScoreTerm.SEVERITY, 1.0,
                            ScoreTerm.CONNECTIVITY, 1.0,
                            ScoreTerm.RE_SCARRING, 1.0)),
                    0.5,
                    1_000),
                new ZoneParameters(
                    3,
                    2_000,
                    400,
                    0.2,
                    List.of(37.04, 55.56),
                    9.26,
                    1.4,
                    5,
                    9.5,
                    0.03,
                    Optional.empty()),
                new RecoveryParameters(
                    Optional.empty(),
                    0.3,
                    0.2,
                    WithinYear.MIDDLE,
                    OptionalDouble.empty(),
                    100,
                    0.5,
                    new Range(0.37, 0.38, 0.42),
                    0.1,
                    1,
                    3,
                    20,
                    new Range(0, 0.13, 0.26),
                    Map.of()),
                new RepairParameters(
                    PlantingPattern.SQUARE,
                    5,
                    150,
                    100,
                    2000,
                    250,
                    0.2,
                    1,
                    1,
                    0.5,
                    2,
                    0.2,
                    0.5,
                    OptionalDouble.empty(),
                    4,
                    7,
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    5,
                    new RepairParameters.Placeholders(
                        List.of(
                            "planting_unit_cost",
                            "fill_cost_per_m3",
                            "monitoring_cost",
                            "mobilisation_cost"))),
                new MatchingParameters(0.05, 0.25, 30, 0.1),
                new ComparisonParameters(
                    0.95,
                    1000,
                    List.of(0.2, 0.3, 0.4, 0.6, 1.0),
                    ExposureBasis.BED,
                    9999,
                    3,
                    500,
                    1,
                    0.5,
                    0.8,
                    20,
                    60,
                    2,
                    2,
                    2,
                    10,
                    0.5)));
  }

  @Test
  void everyParameterCanBeSet() {
    Parameters set =
        table.parameters(
            List.of(
                setting("analysis_crs", "epsg:32617"),
                setting("ground_scale", "false"),
                setting("severity_denominator", "scar-group"),
                setting("scar_group_distance_m", "51"),
                setting("crossing_distances_m", "30", "3, 4"),
                setting("crossing_distance_m", "11"),
                setting("gap_width_limits_m", "2 0.5"),
                setting("sliver_tolerance_m", "0.2"),
                setting("minimum_patch_m2", "0.02"),
                setting("minimum_width_m", "0.06"),
                setting("maximum_width_m", "21"),
                setting("segment_length_m", "101"),
                setting("channel_reach_m", "251"),
                setting("minimum_exposure_ha", "1e-1"),
                setting("attribution_step_m", "6"),
                setting("pixel_size_m", "0.25"),
                setting("uncertainty_draws", "50"),
                setting("seed", "77"),
                setting("position_rmse_m", "1.5"),
                setting("position_check_points", "25"),
                setting("connectivity_detail_patches", "4000"),
                setting("connectivity_exact_patches", "3000"),
                setting("connectivity_sources", "60"),
                setting("channel_half_width_m", "20"),
                setting("edge_tolerance_m", "6"),
                setting("near_parallel_deg", "20"),
                setting("near_across_deg", "70"),
                setting("bend_deg", "25"),
                setting("pattern_share", "0.4"),
                setting("hot_spot_neighbour_m", "300"),
                setting("hot_spot_minimum_exposure_ha", "2"),
                setting("permutations", "99"),
                setting("false_discovery_rate", "0.1"),
                setting("boat_draft_m", "0.9"),
                setting("score_weights", "rate:2.5, edge:1"),
                setting("score_weight_spread", "0.25"),
                setting("score_draws", "99"),
                setting("most_zones", "4"),
                setting("zone_total_length_m", "2100"),
                setting("marker_spacing_m", "410"),
                setting("zone_device_share", "0.1"),
                setting("usual_speeds_kmh", "50 40"),
                setting("slow_speed_kmh", "8"),
                setting("recovery_low_years", "2"),
                setting("recovery_middle_years", "3"),
                setting("recovery_high_years", "4"),
                setting("discount_rate", "0.04"),
                setting("legal_basis", "Harbour order 7"),
                setting("unlisted_recovery_years", "2 4 8"),
                setting("unlisted_scar_width_m", "0.4"),
                setting("excavation_doubling_m", "0.3"),
                setting("within_year", "start"),
                setting("loss_base_year", "2024"),
                setting("loss_horizon_years", "50"),
                setting("planting_spacing_m", "0.6"),
                setting("planting_survival", "0.2, 0.3 0.5"),
                setting("planting_unit_radius_m", "0.2"),
                setting("project_start_years", "2"),
                setting("project_growth_years", "4"),
                setting("project_life_years", "30"),
                setting("new_patches_per_year", "0.1 0.2 0.3"),
                setting("planting_pattern", "hexagonal"),
                setting("planting_unit_cost", "6"),
                setting("fill_cost_per_m3", "160"),
                setting("monitoring_cost", "110"),
                setting("repair_site_distance_m", "260"),
                setting("fill_threshold_m", "0.3"),
                setting("grass_weight", "2"),
                setting("connectivity_weight", "3"),
                setting("marker_effect", "0.6"),
                setting("establishment_years", "3"),
                setting("protect_first_chance", "0.3"),
                setting("protect_first_share", "0.6"),
                setting("deepest_planting_m", "2.5"),
                setting("planting_first_month", "11"),
                setting("planting_last_month", "2"),
                setting("repair_budget", "0"),
                setting("repair_season_budget", "900"),
                setting("repair_seasons", "6"),
                setting("match_least_tolerance_m", "0.1"),
                setting("match_share", "0.3"),
                setting("match_direction_deg", "20"),
                setting("match_length_change", "0.2"),
                setting("observed_recovery_years", "turtlegrass:2:3:4"),
                setting("comparison_confidence", "0.9"),
                setting("bootstrap_draws", "500"),
                setting("width_class_limits_m", "0.25 0.5"),
                setting("effect_exposure", "channel"),
                setting("effect_permutations", "999"),
                setting("control_rate_factor", "4"),
                setting("control_distance_m", "600"),
                setting("control_minimum_exposure_ha", "2"),
                setting("detectable_drop", "0.4"),
                setting("detection_power", "0.9"),
                setting("most_further_seasons", "10"),
                setting("unsafe_season_days", "30"),
                setting("unsafe_effort_ratio", "3"),
                setting("unsafe_clarity_ratio", "4"),
                setting("unsafe_pixel_ratio", "5"),
                setting("unsafe_position_m", "6"),
                setting("unsafe_common_share", "0.7")));

    assertThat(set)
        .isEqualTo(
            new Parameters(
                Optional.of("EPSG:32617"),
                false,
                SeverityDenominator.SCAR_GROUP,
                51,
                List.of(3.0, 4.0, 30.0),
                11,
                Optional.empty(),
                List.of(0.5, 2.0),
                0.2,
                0.02,
                0.06,
                21,
                101,
                251,
                0.1,
                6,
                OptionalDouble.of(0.25),
                50,
                77,
                OptionalDouble.of(1.5),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(25),
                4_000,
                3_000,
                60,
                new RankingParameters(
                    20,
                    6,
                    20,
                    70,
                    25,
                    0.4,
                    300,
                    2,
                    99,
                    0.1,
                    0.9,
                    new ScoreWeights(Map.of(ScoreTerm.RATE, 2.5, ScoreTerm.EDGE, 1.0)),
                    0.25,
                    99),
                new ZoneParameters(
                    4,
                    2_100,
                    410,
                    0.1,
                    List.of(40.0, 50.0),
                    8,
                    2,
                    3,
                    4,
                    0.04,
                    Optional.of("Harbour order 7")),
                new RecoveryParameters(
                    Optional.of(new Range(2, 4, 8)),
                    0.4,
                    0.3,
                    WithinYear.START,
                    OptionalDouble.of(2024),
                    50,
                    0.6,
                    new Range(0.2, 0.3, 0.5),
                    0.2,
                    2,
                    4,
                    30,
                    new Range(0.1, 0.2, 0.3),
                    Map.of("turtlegrass", new Range(2, 3, 4))),
                new RepairParameters(
                    PlantingPattern.HEXAGONAL,
                    6,
                    160,
                    110,
                    2000,
                    260,
                    0.3,
                    2,
                    3,
                    0.6,
                    3,
                    0.3,
                    0.6,
                    OptionalDouble.of(2.5),
                    11,
                    2,
                    OptionalDouble.of(0),
                    OptionalDouble.of(900),
                    6,
                    new RepairParameters.Placeholders(List.of("mobilisation_cost"))),
                new MatchingParameters(0.1, 0.3, 20, 0.2),
                new ComparisonParameters(
                    0.9,
                    500,
                    List.of(0.25, 0.5),
                    ExposureBasis.CHANNEL,
                    999,
                    4,
                    600,
                    2,
                    0.4,
                    0.9,
                    10,
                    30,
                    3,
                    4,
                    5,
                    6,
                    0.7)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "within_year | noon | 'noon' is not known",
        "planting_survival | 0.3 0.4 | is no range",
        "unlisted_recovery_years | 5 4 6 | is no range",
        "planting_survival | 0.3 0.4 1.5 | 1.5 is out of limits"
      })
  void refusesWhatIsNoChoiceForRecovery(String name, String value, String problem) {
    assertThatThrownBy(() -> table.parameters(List.of(setting(name, value))))
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining(problem);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "repair_budget | -1 | -1 is out of limits; give a number from 0",
        "planting_pattern | rows | 'rows' is not known",
        "planting_first_month | 13 | 13 is out of limits; give a number from 1 to 12",
        "planting_last_month | 4.5 | 4.5 is no whole number"
      })
  void refusesWhatIsNoChoiceForRepair(String name, String value, String problem) {
    assertThatThrownBy(() -> table.parameters(List.of(setting(name, value))))
        .hasMessageContaining(problem);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "effect_exposure | water | 'water' is not known",
        "observed_recovery_years | turtlegrass:2:3 | 'turtlegrass:2:3' is no entry",
        "observed_recovery_years | turtlegrass:4:3:5 | 'turtlegrass:4:3:5' is not ascending",
        "observed_recovery_years | a:1:2:3 a:1:2:3 | 'a' is there twice",
        "detectable_drop | 1 | 1 is out of limits; give a number from 0.01 to 0.99"
      })
  void refusesWhatIsNoChoiceForComparisons(String name, String value, String problem) {
    assertThatThrownBy(() -> table.parameters(List.of(setting(name, value))))
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining(problem);
  }

  @Test
  void aMiddleRecoveryTimeOutsideItsRangeIsRefused() {
    assertThatThrownBy(() -> table.parameters(List.of(setting("recovery_middle_years", "10"))))
        .hasMessageContaining(
            "is not between recovery_low_years (1.4) and recovery_high_years (9.5)");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "rates:3 | 'rates' is no term of the score; did you mean rate?",
        "rate | 'rate' has no weight of 0 or more; write it like rate:3",
        "rate:x | 'rate:x' has no weight of 0 or more; write it like rate:3",
        "rate:-1 | 'rate:-1' has no weight of 0 or more; write it like rate:3",
        "rate:1 rate:2 | 'rate' is there twice; remove one",
        "rate:0 | no term has a weight above 0; write pairs such as rate:3 edge:1"
      })
  void weightsThatCannotBeUsedAreNamed(String given, String problem) {
    assertThatThrownBy(() -> table.parameters(List.of(setting("score_weights", given))))
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining(problem);
  }

  @Test
  void theLaterOfTwoValuesHolds() {
    assertThat(
            table
                .parameters(
                    List.of(
                        setting("crossing_distance_m", "3"), setting("crossing_distance_m", "4")))
                .crossingDistanceMetres())
        .isEqualTo(4);
  }

  /** Radial accuracy at 95 % of RMSE 0.469042 m is 0.811817 m (arithmetic after the NSSDA). */
  @Test
  void positionAccuracyFollowsFromTheError() {
    Parameters parameters = table.parameters(List.of(setting("position_rmse_m", "0.469042")));
    assertThat(parameters.position().orElseThrow().accuracy95Metres())
        .isCloseTo(0.811817, within(1e-6));
    assertThat(table.defaults().position()).isEmpty();
  }

  /** 2.4477 × half the sum of both errors, while the smaller is 0.6 of the larger (NSSDA). */
  @Test
  void errorsOfTheAxesMayDiffer() {
    Parameters parameters =
        table.parameters(
            List.of(
                setting("position_rmse_x_m", "0.6"),
                setting("position_rmse_y_m", "1"),
                setting("position_check_points", "12")));
    assertThat(parameters.position().orElseThrow().accuracy95Metres())
        .isCloseTo(2.4477 * 0.8, within(1e-9));
    assertThat(parameters.positionCheckPoints()).hasValue(12);
    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(
            () ->
                table.parameters(
                    List.of(
                        setting("position_rmse_x_m", "0.59"), setting("position_rmse_y_m", "1"))))
        .withMessageContaining("less than 0.6");
    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(() -> table.parameters(List.of(setting("position_rmse_y_m", "1"))))
        .withMessageContaining("one axis");
    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(
            () ->
                table.parameters(
                    List.of(
                        setting("position_rmse_m", "1"),
                        setting("position_rmse_x_m", "1"),
                        setting("position_rmse_y_m", "1"))))
        .withMessageContaining("one or the other");
  }

  @Test
  void aGuildGivesTheHeadlineDistanceUnlessADistanceIsGiven() {
    Parameters guild = table.parameters(List.of(setting("fish_guild", "juveniles")));
    assertThat(guild.crossingDistanceMetres()).isEqualTo(5);
    assertThat(guild.fishGuild()).contains("juveniles");
    assertThat(guild.allCrossingDistancesMetres()).contains(5.0);

    Parameters both =
        table.parameters(
            List.of(setting("fish_guild", "juveniles"), setting("crossing_distance_m", "10")));
    assertThat(both.crossingDistanceMetres()).isEqualTo(10);
    assertThat(both.fishGuild()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "fish_guild | juvenile | 'juvenile' is no fish guild; did you mean juveniles?",
        "crossing_distance | 1 | unknown parameter; did you mean crossing_distance_m or"
            + " crossing_distances_m? use one of: analysis_crs, ",
        "Segment-Length-M | 1 | unknown parameter; did you mean segment_length_m? use one of: ",
        "colour | red | unknown parameter; use one of: analysis_crs, ",
        "segment_length_m | 0 | 0 is out of limits; give a number from 1 m to 100000 m",
        "pixel_size_m | -1 | -1 is out of limits; give a number from 0.001 m to 1000 m",
        "crossing_distances_m | 1 200000 | 200000 is out of limits; give a number from 0 m to",
        "uncertainty_draws | 1.5 | 1.5 is no whole number; give one without decimals",
        "segment_length_m | NaN | 'NaN' is no number; give a number from 1 m to 100000 m",
        "segment_length_m | '' | has no value; give one",
        "crossing_distances_m | '' | has no value; give one or more",
        "ground_scale | yes | 'yes' is neither true nor false; use one",
        "severity_denominator | beds | 'beds' is not known; did you mean bed? use one of: bed, scar-group",
        "analysis_crs | UTM 17 | 'UTM 17' is no reference system; write it like EPSG:32617",
        "minimum_width_m | 50 | is more than maximum_width_m (20); lower it or raise the other",
      })
  void aWrongSettingIsRefusedWithPlaceAndRemedy(String name, String value, String message) {
    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(() -> table.parameters(List.of(setting(name, value))))
        .satisfies(e -> assertThat(e.getMessage()).startsWith("here: " + name + ": " + message));
  }

  @Test
  void aListForASingleValueIsRefused() {
    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(() -> table.parameters(List.of(setting("segment_length_m", "1", "2"))))
        .withMessage("here: segment_length_m: takes one value, not 2; give one");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "segment_length_m,100 | segment_length_m,0.5 |"
            + " line 14: default: 0.5 is out of limits; give a number from 1 m to 100000 m",
        "segment_length_m | segment_len_m |"
            + " line 14: name 'segment_len_m' is no parameter; did you mean segment_length_m?",
        "segment_length_m | channel_reach_m | line 15: name 'channel_reach_m' is used twice",
      })
  void aTableThatBreaksItsRulesIsRefused(
      String old, String replacement, String message, @TempDir Path folder) throws IOException {
    Path file = folder.resolve(Table.PARAMETERS.fileName());
    Files.writeString(
        file,
        TableLibrary.bundled().text(Table.PARAMETERS).replace("\n" + old, "\n" + replacement));

    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(() -> ParametersTable.read(TableLibrary.of(folder)))
        .satisfies(e -> assertThat(e.getMessage()).startsWith(file + ": " + message));
  }

  @Test
  void aMissingRowIsRefused(@TempDir Path folder) throws IOException {
    Path file = folder.resolve(Table.PARAMETERS.fileName());
    Files.writeString(
        file,
        TableLibrary.bundled().text(Table.PARAMETERS).replaceAll("(?m)^pixel_size_m.*\n", ""));

    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(() -> ParametersTable.read(TableLibrary.of(folder)))
        .withMessage(file + ": has no row 'pixel_size_m'; add one");
  }

  private static Setting setting(String name, String... values) {
    return new Setting(name, List.of(values), "here: " + name);
  }
}
