package org.meadowmark.core.survey;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The parameters, in the order of {@link Parameters} and the records inside it. */
public enum ParameterName {
  ANALYSIS_CRS("analysis_crs"),
  GROUND_SCALE("ground_scale"),
  SEVERITY_DENOMINATOR("severity_denominator"),
  SCAR_GROUP_DISTANCE("scar_group_distance_m"),
  CROSSING_DISTANCES("crossing_distances_m"),
  CROSSING_DISTANCE("crossing_distance_m"),
  FISH_GUILD("fish_guild"),
  GAP_WIDTH_LIMITS("gap_width_limits_m"),
  SLIVER_TOLERANCE("sliver_tolerance_m"),
  MINIMUM_PATCH("minimum_patch_m2"),
  MINIMUM_WIDTH("minimum_width_m"),
  MAXIMUM_WIDTH("maximum_width_m"),
  SEGMENT_LENGTH("segment_length_m"),
  CHANNEL_REACH("channel_reach_m"),
  MINIMUM_EXPOSURE("minimum_exposure_ha"),
  ATTRIBUTION_STEP("attribution_step_m"),
  PIXEL_SIZE("pixel_size_m"),
  UNCERTAINTY_DRAWS("uncertainty_draws"),
  SEED("seed"),
  POSITION_RMSE("position_rmse_m"),
  POSITION_RMSE_X("position_rmse_x_m"),
  POSITION_RMSE_Y("position_rmse_y_m"),
  POSITION_CHECK_POINTS("position_check_points"),
  CONNECTIVITY_DETAIL("connectivity_detail_patches"),
  CONNECTIVITY_EXACT("connectivity_exact_patches"),
  CONNECTIVITY_SOURCES("connectivity_sources"),
  CHANNEL_HALF_WIDTH("channel_half_width_m"),
  EDGE_TOLERANCE("edge_tolerance_m"),
  NEAR_PARALLEL("near_parallel_deg"),
  NEAR_ACROSS("near_across_deg"),
  BEND("bend_deg"),
  PATTERN_SHARE("pattern_share"),
  HOT_SPOT_NEIGHBOUR("hot_spot_neighbour_m"),
  HOT_SPOT_MINIMUM_EXPOSURE("hot_spot_minimum_exposure_ha"),
  PERMUTATIONS("permutations"),
  FALSE_DISCOVERY_RATE("false_discovery_rate"),
  BOAT_DRAFT("boat_draft_m"),
  SCORE_WEIGHTS("score_weights"),
  SCORE_WEIGHT_SPREAD("score_weight_spread"),
  SCORE_DRAWS("score_draws"),
  MOST_ZONES("most_zones"),
  ZONE_TOTAL_LENGTH("zone_total_length_m"),
  MARKER_SPACING("marker_spacing_m"),
  ZONE_DEVICE_SHARE("zone_device_share"),
  USUAL_SPEEDS("usual_speeds_kmh"),
  SLOW_SPEED("slow_speed_kmh"),
  RECOVERY_LOW("recovery_low_years"),
  RECOVERY_MIDDLE("recovery_middle_years"),
  RECOVERY_HIGH("recovery_high_years"),
  DISCOUNT_RATE("discount_rate"),
  LEGAL_BASIS("legal_basis"),
  UNLISTED_RECOVERY("unlisted_recovery_years"),
  UNLISTED_SCAR_WIDTH("unlisted_scar_width_m"),
  EXCAVATION_DOUBLING("excavation_doubling_m"),
  WITHIN_YEAR("within_year"),
  LOSS_BASE_YEAR("loss_base_year"),
  LOSS_HORIZON("loss_horizon_years"),
  PLANTING_SPACING("planting_spacing_m"),
  PLANTING_SURVIVAL("planting_survival"),
  PLANTING_UNIT_RADIUS("planting_unit_radius_m"),
  PROJECT_START("project_start_years"),
  PROJECT_GROWTH("project_growth_years"),
  PROJECT_LIFE("project_life_years"),
  NEW_PATCHES("new_patches_per_year"),
  OBSERVED_RECOVERY("observed_recovery_years"),
  PLANTING_PATTERN("planting_pattern"),
  PLANTING_UNIT_COST("planting_unit_cost"),
  FILL_COST("fill_cost_per_m3"),
  MONITORING_COST("monitoring_cost"),
  MOBILISATION_COST("mobilisation_cost"),
  REPAIR_SITE_DISTANCE("repair_site_distance_m"),
  FILL_THRESHOLD("fill_threshold_m"),
  GRASS_WEIGHT("grass_weight"),
  CONNECTIVITY_WEIGHT("connectivity_weight"),
  MARKER_EFFECT("marker_effect"),
  ESTABLISHMENT("establishment_years"),
  PROTECT_FIRST_CHANCE("protect_first_chance"),
  PROTECT_FIRST_SHARE("protect_first_share"),
  DEEPEST_PLANTING("deepest_planting_m"),
  PLANTING_FIRST_MONTH("planting_first_month"),
  PLANTING_LAST_MONTH("planting_last_month"),
  REPAIR_BUDGET("repair_budget"),
  REPAIR_SEASON_BUDGET("repair_season_budget"),
  REPAIR_SEASONS("repair_seasons"),
  MATCH_LEAST_TOLERANCE("match_least_tolerance_m"),
  MATCH_SHARE("match_share"),
  MATCH_DIRECTION("match_direction_deg"),
  MATCH_LENGTH_CHANGE("match_length_change"),
  COMPARISON_CONFIDENCE("comparison_confidence"),
  BOOTSTRAP_DRAWS("bootstrap_draws"),
  WIDTH_CLASS_LIMITS("width_class_limits_m"),
  EFFECT_EXPOSURE("effect_exposure"),
  EFFECT_PERMUTATIONS("effect_permutations"),
  CONTROL_RATE_FACTOR("control_rate_factor"),
  CONTROL_DISTANCE("control_distance_m"),
  CONTROL_MINIMUM_EXPOSURE("control_minimum_exposure_ha"),
  DETECTABLE_DROP("detectable_drop"),
  DETECTION_POWER("detection_power"),
  MOST_FURTHER_SEASONS("most_further_seasons"),
  UNSAFE_SEASON_DAYS("unsafe_season_days"),
  UNSAFE_EFFORT_RATIO("unsafe_effort_ratio"),
  UNSAFE_CLARITY_RATIO("unsafe_clarity_ratio"),
  UNSAFE_PIXEL_RATIO("unsafe_pixel_ratio"),
  UNSAFE_POSITION("unsafe_position_m"),
  UNSAFE_COMMON_SHARE("unsafe_common_share");

  private final String key;

  ParameterName(String key) {
    this.key = key;
  }

  /** {@return name used in a survey file and on the command line} */
  public String key() {
    return key;
  }

  static Optional<ParameterName> find(String key) {
    return Arrays.stream(values()).filter(name -> name.key.equals(key)).findFirst();
  }

  static List<String> keys() {
    return Arrays.stream(values()).map(ParameterName::key).toList();
  }
}
