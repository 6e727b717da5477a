package org.meadowmark.core.survey;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The parameters, in the order of {@link Parameters} and the records inside it. Defaults, limits
 * and sources are rows of {@code parameters.csv}.
 */
public enum ParameterName {
  /** Reference system to measure in, such as EPSG:32617; empty takes the best UTM zone. */
  ANALYSIS_CRS("analysis_crs"),
  /**
   * Whether lengths and areas are corrected from the grid to the ground with the projection's scale
   * factor.
   */
  GROUND_SCALE("ground_scale"),
  /** What a scarred area is divided by to get the severity class: bed or scar-group. */
  SEVERITY_DENOMINATOR("severity_denominator"),
  /** Scars at most this far apart are one group; in metres. */
  SCAR_GROUP_DISTANCE("scar_group_distance_m"),
  /** Gaps that an animal can cross, for the sweep; in metres. */
  CROSSING_DISTANCES("crossing_distances_m"),
  /** The one crossing distance that headline figures use; in metres. */
  CROSSING_DISTANCE("crossing_distance_m"),
  /**
   * Fish guild whose crossing distance headline figures use, a key of the table fish-guilds; a
   * {@code crossing_distance_m} that is given stands above it.
   */
  FISH_GUILD("fish_guild"),
  /**
   * Limits between the classes that gap widths are counted in; a limit belongs to the class above
   * it; in metres.
   */
  GAP_WIDTH_LIMITS("gap_width_limits_m"),
  /** Beds closer than this touch: the gap is a digitising sliver; in metres. */
  SLIVER_TOLERANCE("sliver_tolerance_m"),
  /** Smaller pieces of grass are crumbs, not patches; in square metres. */
  MINIMUM_PATCH("minimum_patch_m2"),
  /** Narrower scars are questioned; in metres. */
  MINIMUM_WIDTH("minimum_width_m"),
  /** Wider line scars are questioned; in metres. */
  MAXIMUM_WIDTH("maximum_width_m"),
  /** Nominal length of a channel segment; in metres. */
  SEGMENT_LENGTH("segment_length_m"),
  /** Scars farther over water from every channel are not attributed to one; in metres. */
  CHANNEL_REACH("channel_reach_m"),
  /** Segments with less bed in reach get no rate; in hectares. */
  MINIMUM_EXPOSURE("minimum_exposure_ha"),
  /** Longest piece of a scar whose nearest segment is looked up at once; in metres. */
  ATTRIBUTION_STEP("attribution_step_m"),
  /**
   * Ground size of a pixel of the imagery that was mapped from; empty where it is not known; in
   * metres.
   */
  PIXEL_SIZE("pixel_size_m"),
  /** Draws of scar widths and positions for intervals of the damage; 0 for none. */
  UNCERTAINTY_DRAWS("uncertainty_draws"),
  /** Seed of everything that is drawn. */
  SEED("seed"),
  /**
   * Radial root mean square error of mapped positions; empty where it is not stated, and positions
   * are not varied; in metres.
   */
  POSITION_RMSE("position_rmse_m"),
  /**
   * Root mean square error of mapped positions in easting, in place of {@code position_rmse_m};
   * needs the other axis too; in metres.
   */
  POSITION_RMSE_X("position_rmse_x_m"),
  /** Root mean square error of mapped positions in northing; in metres. */
  POSITION_RMSE_Y("position_rmse_y_m"),
  /**
   * Number of check points that the positional error was taken from; fewer than 20 are questioned.
   */
  POSITION_CHECK_POINTS("position_check_points"),
  /**
   * Most patches of a survey for which the importance of each patch and the filling of each scar
   * are worked out; 0 for never.
   */
  CONNECTIVITY_DETAIL("connectivity_detail_patches"),
  /**
   * Most patches of the survey, an area or a bed for which connectivity is exact, a fiftieth of it
   * where the survey has more than 300000 scars; beyond it is estimated from a sample of patches,
   * and the integral index is left out.
   */
  CONNECTIVITY_EXACT("connectivity_exact_patches"),
  /** Patches, drawn by area, from which connectivity is estimated where it is not exact. */
  CONNECTIVITY_SOURCES("connectivity_sources"),
  /**
   * Distance of a channel's edge from its centreline, since layers of channels rarely give a width;
   * in metres.
   */
  CHANNEL_HALF_WIDTH("channel_half_width_m"),
  /** A scar that comes this close to the channel's edge reaches it; in metres. */
  EDGE_TOLERANCE("edge_tolerance_m"),
  /** A scar at a smaller angle to the channel runs along it; in degrees. */
  NEAR_PARALLEL("near_parallel_deg"),
  /** A scar at a larger angle to the channel runs across it; in degrees. */
  NEAR_ACROSS("near_across_deg"),
  /**
   * A channel that turns at least this much over a segment and its neighbours bends there; in
   * degrees.
   */
  BEND("bend_deg"),
  /**
   * Part of a segment's scar length from which a pattern (corner-cutting, along-edge, short-cut) is
   * named.
   */
  PATTERN_SHARE("pattern_share"),
  /**
   * Segments whose middles are at most so far apart along the channels are neighbours in the
   * hot-spot test; in metres.
   */
  HOT_SPOT_NEIGHBOUR("hot_spot_neighbour_m"),
  /** Segments with less bed in reach are not tested for a hot spot; in hectares. */
  HOT_SPOT_MINIMUM_EXPOSURE("hot_spot_minimum_exposure_ha"),
  /** Random arrangements for each pseudo p-value of the hot-spot test. */
  PERMUTATIONS("permutations"),
  /** Share of flagged hot spots that may be false alarms, on average. */
  FALSE_DISCOVERY_RATE("false_discovery_rate"),
  /** Typical draft of the boats; a scar in shallower water counts as shallow; in metres. */
  BOAT_DRAFT("boat_draft_m"),
  /** Weights of the terms of a segment's score; a term that is not named weighs nothing. */
  SCORE_WEIGHTS("score_weights"),
  /** Each weight is drawn from this share below to this share above its value. */
  SCORE_WEIGHT_SPREAD("score_weight_spread"),
  /** Draws of weights and scar widths for how often a segment stays in the top ten; 0 for none. */
  SCORE_DRAWS("score_draws"),
  /** Most zones to propose for marking; 0 for none. */
  MOST_ZONES("most_zones"),
  /** Total length of the zones proposed; in metres. */
  ZONE_TOTAL_LENGTH("zone_total_length_m"),
  /** Marks along a zone are at most so far apart; in metres. */
  MARKER_SPACING("marker_spacing_m"),
  /**
   * Part of a zone's scar length from which a cause, or a pattern of it, gets a device proposed.
   */
  ZONE_DEVICE_SHARE("zone_device_share"),
  /** Speeds at which boats pass today, for the extra time in a slow zone; in kilometres an hour. */
  USUAL_SPEEDS("usual_speeds_kmh"),
  /** Speed in a slow zone; in kilometres an hour. */
  SLOW_SPEED("slow_speed_kmh"),
  /** Short time for a scar to close; in years. */
  RECOVERY_LOW("recovery_low_years"),
  /** Middle time for a scar to close; in years. */
  RECOVERY_MIDDLE("recovery_middle_years"),
  /** Long time for a scar to close; in years. */
  RECOVERY_HIGH("recovery_high_years"),
  /** How much less a service of next year is worth than one of today. */
  DISCOUNT_RATE("discount_rate"),
  /**
   * Established legal basis of regulatory marks, such as the section of a code; shown as missing
   * until it is stated.
   */
  LEGAL_BASIS("legal_basis"),
  /**
   * Short, middle and long time for a scar to close where the table scar-recovery has no row for
   * the species: three numbers; empty leaves those scars without a forecast; in years.
   */
  UNLISTED_RECOVERY("unlisted_recovery_years"),
  /** Width of a scar that closes in {@code unlisted_recovery_years}; in metres. */
  UNLISTED_SCAR_WIDTH("unlisted_scar_width_m"),
  /**
   * Depth of excavation that doubles the time a scar takes to close; half of it adds half as much;
   * in metres.
   */
  EXCAVATION_DOUBLING("excavation_doubling_m"),
  /** When a year's service counts: start, middle or end of the year. */
  WITHIN_YEAR("within_year"),
  /**
   * Calendar year that losses are discounted to and in which scars are taken as fresh; empty takes
   * the year of the survey.
   */
  LOSS_BASE_YEAR("loss_base_year"),
  /** Years after which nothing is counted any more. */
  LOSS_HORIZON("loss_horizon_years"),
  /** Distance between planting units in a row and between rows; in metres. */
  PLANTING_SPACING("planting_spacing_m"),
  /** Share of planting units that live: low, middle and high. */
  PLANTING_SURVIVAL("planting_survival"),
  /** Radius of the ground that a planting unit covers at first; in metres. */
  PLANTING_UNIT_RADIUS("planting_unit_radius_m"),
  /** Years from the base year until a planting that makes good for the loss begins. */
  PROJECT_START("project_start_years"),
  /** Time in which its service rises from none to all, in a straight line; in years. */
  PROJECT_GROWTH("project_growth_years"),
  /** Years from its start after which its service is no longer counted. */
  PROJECT_LIFE("project_life_years"),
  /**
   * Area of new patches from seed and drifting fragments in a year, as a share of the planted area:
   * low, middle and high.
   */
  NEW_PATCHES("new_patches_per_year"),
  /**
   * Short, middle and long time for a scar of {@code unlisted_scar_width_m} to close as seen here,
   * by species, such as turtlegrass:3.6:5:9.5; stands above the table scar-recovery; in years.
   */
  OBSERVED_RECOVERY("observed_recovery_years"),
  /**
   * How rows of planting units lie: square, or hexagonal with units of every second row between
   * those of the next.
   */
  PLANTING_PATTERN("planting_pattern"),
  /** Cost of a planting unit in the ground, in your currency; a placeholder until you set it. */
  PLANTING_UNIT_COST("planting_unit_cost"),
  /** Cost of a cubic metre of fill in place; a placeholder until you set it. */
  FILL_COST("fill_cost_per_m3"),
  /** Cost of following one repaired scar up; a placeholder until you set it. */
  MONITORING_COST("monitoring_cost"),
  /**
   * Cost of getting crew and gear to a site and back, shared by the scars of the site; a
   * placeholder until you set it.
   */
  MOBILISATION_COST("mobilisation_cost"),
  /**
   * Scars whose middles are at most this far from the first of a site belong to the site; in
   * metres.
   */
  REPAIR_SITE_DISTANCE("repair_site_distance_m"),
  /** Scars dug out deeper than this are filled before planting; in metres. */
  FILL_THRESHOLD("fill_threshold_m"),
  /** Benefit of one discounted service-hectare-year that planting gives back. */
  GRASS_WEIGHT("grass_weight"),
  /** Benefit of one hectare of equivalent connected area that filling a scar restores. */
  CONNECTIVITY_WEIGHT("connectivity_weight"),
  /** Part of new scars that a marked zone keeps away. */
  MARKER_EFFECT("marker_effect"),
  /** Years after planting in which a new scar undoes the repair. */
  ESTABLISHMENT("establishment_years"),
  /**
   * Chance a year that the ground is scarred again from which a scar is to be protected before it
   * is planted.
   */
  PROTECT_FIRST_CHANCE("protect_first_chance"),
  /**
   * Share of new scar length on ground scarred in an earlier season from which a scar is to be
   * protected before it is planted.
   */
  PROTECT_FIRST_SHARE("protect_first_share"),
  /**
   * Water depth beyond which there is too little light to plant; empty leaves depth out of the
   * choice; in metres.
   */
  DEEPEST_PLANTING("deepest_planting_m"),
  /** First month of the planting window. */
  PLANTING_FIRST_MONTH("planting_first_month"),
  /**
   * Last month of the planting window; earlier than the first where the window passes the new year.
   */
  PLANTING_LAST_MONTH("planting_last_month"),
  /** What may be spent on repairs in all, in your currency; empty for figures without a plan. */
  REPAIR_BUDGET("repair_budget"),
  /** What may be spent in one season; empty puts the whole plan into one season. */
  REPAIR_SEASON_BUDGET("repair_season_budget"),
  /** Most seasons that the plan looks ahead. */
  REPAIR_SEASONS("repair_seasons"),
  /**
   * What the combined positional accuracy of two surveys is taken as at least when their scars are
   * matched; in metres.
   */
  MATCH_LEAST_TOLERANCE("match_least_tolerance_m"),
  /** Share of the shorter of two scars from which metres in common make one of them the other. */
  MATCH_SHARE("match_share"),
  /**
   * Largest mean angle between two scars along their overlap; scars that cross do not match; in
   * degrees.
   */
  MATCH_DIRECTION("match_direction_deg"),
  /**
   * Share of a scar's length above which a change of length, if it also passes the tolerance, makes
   * a scar extended or shortened.
   */
  MATCH_LENGTH_CHANGE("match_length_change"),
  /** Share of the intervals of a comparison of seasons that are to hold the truth. */
  COMPARISON_CONFIDENCE("comparison_confidence"),
  /** Draws of beds for intervals of sums over beds; 0 for none. */
  BOOTSTRAP_DRAWS("bootstrap_draws"),
  /**
   * Limits between the classes of scar width that healing is counted in; a limit belongs to the
   * class above it; in metres.
   */
  WIDTH_CLASS_LIMITS("width_class_limits_m"),
  /**
   * What new scar metres beside a marker are divided by: bed (hectares in reach) or channel
   * (kilometres).
   */
  EFFECT_EXPOSURE("effect_exposure"),
  /**
   * Arrangements of the markers that are counted for the p-value: all where there are no more, else
   * so many draws.
   */
  EFFECT_PERMUTATIONS("effect_permutations"),
  /**
   * A control segment's rate before is at most so many times that of the marked ones, and at least
   * the same part of it.
   */
  CONTROL_RATE_FACTOR("control_rate_factor"),
  /**
   * A control segment is farther than this along the channels from every marked one, since damage
   * may move; in metres.
   */
  CONTROL_DISTANCE("control_distance_m"),
  /** Segments with less bed in reach take no part in judging a marker; in hectares. */
  CONTROL_MINIMUM_EXPOSURE("control_minimum_exposure_ha"),
  /** Drop of the rate that the power of the comparison is worked out for. */
  DETECTABLE_DROP("detectable_drop"),
  /** Chance of detecting the drop that is asked for. */
  DETECTION_POWER("detection_power"),
  /** Further seasons that are looked ahead for that power. */
  MOST_FURTHER_SEASONS("most_further_seasons"),
  /** Surveys made farther apart than this within the year are not compared unless told; in days. */
  UNSAFE_SEASON_DAYS("unsafe_season_days"),
  /**
   * Surveys whose hours for each hectare of bed differ by more than this factor are not compared
   * unless told.
   */
  UNSAFE_EFFORT_RATIO("unsafe_effort_ratio"),
  /** Surveys whose Secchi depths differ by more than this factor are not compared unless told. */
  UNSAFE_CLARITY_RATIO("unsafe_clarity_ratio"),
  /** Surveys whose pixel sizes differ by more than this factor are not compared unless told. */
  UNSAFE_PIXEL_RATIO("unsafe_pixel_ratio"),
  /**
   * Surveys whose combined positional accuracy at 95 % is larger are not compared unless told; in
   * metres.
   */
  UNSAFE_POSITION("unsafe_position_m"),
  /**
   * Surveys with less than this share of the surveyed bed in common are not compared unless told.
   */
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
