package org.meadowmark.core.survey;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.reference.FishGuild;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.reference.TableLibrary;
import org.meadowmark.core.reference.TableLibrary.Table;
import org.meadowmark.core.reference.TableRow;
import org.meadowmark.core.survey.Parameters.SeverityDenominator;

/** Defaults and limits of the parameters, read from {@code parameters.csv}. */
public final class ParametersTable {
  private static final List<String> COLUMNS =
      List.of("name", "default", "unit", "minimum", "maximum", "description", "source");

  private final Map<ParameterName, ParameterRow> rows;
  private final List<Setting> defaults;
  private final Map<String, FishGuild> guilds;

  private ParametersTable(
      Map<ParameterName, ParameterRow> rows,
      List<Setting> defaults,
      Map<String, FishGuild> guilds) {
    this.rows = rows;
    this.defaults = defaults;
    this.guilds = guilds;
  }

  /**
   * Reads the table of a library.
   *
   * @param library where the table, and that of the fish guilds, is read from
   * @return the table, whose defaults are within its own limits
   * @throws MeadowmarkException if a row is missing, unknown or twice there, or a default is
   *     outside its own limits; the message names file and line
   */
  public static ParametersTable read(TableLibrary library) {
    Map<ParameterName, ParameterRow> rows = new EnumMap<>(ParameterName.class);
    List<Setting> defaults = new ArrayList<>();
    for (TableRow row : library.rows(Table.PARAMETERS, COLUMNS)) {
      String key = row.key("name");
      ParameterName name =
          ParameterName.find(key)
              .orElseThrow(
                  () ->
                      row.error(
                          "name",
                          "'" + key + "' is no parameter",
                          NearNames.advice(key, ParameterName.keys())));
      ParameterRow parameter =
          new ParameterRow(
              key,
              row.text("default"),
              row.text("unit"),
              row.optionalNumber("minimum"),
              row.optionalNumber("maximum"),
              row.requiredText("description"),
              row.requiredText("source"));
      if (rows.put(name, parameter) != null) {
        throw row.error("name", "'" + key + "' is used twice", "remove one of the rows");
      }
      defaults.add(new Setting(key, List.of(row.text("default")), row.where("default")));
    }
    for (ParameterName name : ParameterName.values()) {
      if (!rows.containsKey(name)) {
        throw new MeadowmarkException(
            library.label(Table.PARAMETERS) + ": has no row '" + name.key() + "'; add one");
      }
    }
    ParametersTable table =
        new ParametersTable(rows, List.copyOf(defaults), ReferenceTablesReader.fishGuilds(library));
    table.defaults();
    return table;
  }

  /** {@return the table packed into the toolkit} */
  public static ParametersTable bundled() {
    return read(TableLibrary.bundled());
  }

  /** {@return the rows in the order of {@link Parameters}} */
  public List<ParameterRow> rows() {
    return List.copyOf(rows.values());
  }

  /** {@return every parameter at its default} */
  public Parameters defaults() {
    return parameters(List.of());
  }

  /**
   * {@return the defaults with a user's values in place of some of them}
   *
   * @param settings values given; of two for the same parameter the later holds
   * @throws MeadowmarkException if a name is not known, or a value cannot be understood or is out
   *     of limits; the message says where it was given and what is allowed
   */
  public Parameters parameters(List<Setting> settings) {
    Map<ParameterName, Setting> given = new LinkedHashMap<>();
    defaults.forEach(setting -> given.put(name(setting), setting));
    settings.forEach(setting -> given.put(name(setting), setting));
    Crossing crossing = crossing(given);
    Parameters parameters =
        new Parameters(
            text(given, ParameterName.ANALYSIS_CRS)
                .map(code -> CrsCode.of(code, given.get(ParameterName.ANALYSIS_CRS).where())),
            flag(given, ParameterName.GROUND_SCALE),
            denominator(given, ParameterName.SEVERITY_DENOMINATOR),
            number(given, ParameterName.SCAR_GROUP_DISTANCE),
            numbers(given, ParameterName.CROSSING_DISTANCES),
            crossing.metres,
            crossing.guild,
            numbers(given, ParameterName.GAP_WIDTH_LIMITS),
            number(given, ParameterName.SLIVER_TOLERANCE),
            number(given, ParameterName.MINIMUM_PATCH),
            number(given, ParameterName.MINIMUM_WIDTH),
            number(given, ParameterName.MAXIMUM_WIDTH),
            number(given, ParameterName.SEGMENT_LENGTH),
            number(given, ParameterName.CHANNEL_REACH),
            number(given, ParameterName.MINIMUM_EXPOSURE),
            number(given, ParameterName.ATTRIBUTION_STEP),
            optionalNumber(given, ParameterName.PIXEL_SIZE),
            Math.toIntExact(whole(given, ParameterName.UNCERTAINTY_DRAWS)),
            whole(given, ParameterName.SEED),
            optionalNumber(given, ParameterName.POSITION_RMSE),
            optionalNumber(given, ParameterName.POSITION_RMSE_X),
            optionalNumber(given, ParameterName.POSITION_RMSE_Y),
            optionalNumber(given, ParameterName.POSITION_CHECK_POINTS),
            Math.toIntExact(whole(given, ParameterName.CONNECTIVITY_DETAIL)),
            Math.toIntExact(whole(given, ParameterName.CONNECTIVITY_EXACT)),
            Math.toIntExact(whole(given, ParameterName.CONNECTIVITY_SOURCES)),
            ranking(given),
            zones(given),
            recovery(given),
            repair(given),
            matching(given),
            comparison(given));
    if (parameters.minimumWidthMetres() > parameters.maximumWidthMetres()) {
      throw new MeadowmarkException(
          given.get(ParameterName.MINIMUM_WIDTH).where()
              + ": is more than maximum_width_m ("
              + PlainNumber.of(parameters.maximumWidthMetres())
              + "); lower it or raise the other");
    }
    checkPosition(parameters, given);
    return parameters;
  }

  private RankingParameters ranking(Map<ParameterName, Setting> given) {
    RankingParameters ranking =
        new RankingParameters(
            number(given, ParameterName.CHANNEL_HALF_WIDTH),
            number(given, ParameterName.EDGE_TOLERANCE),
            number(given, ParameterName.NEAR_PARALLEL),
            number(given, ParameterName.NEAR_ACROSS),
            number(given, ParameterName.BEND),
            number(given, ParameterName.PATTERN_SHARE),
            number(given, ParameterName.HOT_SPOT_NEIGHBOUR),
            number(given, ParameterName.HOT_SPOT_MINIMUM_EXPOSURE),
            Math.toIntExact(whole(given, ParameterName.PERMUTATIONS)),
            number(given, ParameterName.FALSE_DISCOVERY_RATE),
            number(given, ParameterName.BOAT_DRAFT),
            weights(given.get(ParameterName.SCORE_WEIGHTS)),
            number(given, ParameterName.SCORE_WEIGHT_SPREAD),
            Math.toIntExact(whole(given, ParameterName.SCORE_DRAWS)));
    if (ranking.nearParallelDegrees() > ranking.nearAcrossDegrees()) {
      throw new MeadowmarkException(
          given.get(ParameterName.NEAR_PARALLEL).where()
              + ": is more than near_across_deg ("
              + PlainNumber.of(ranking.nearAcrossDegrees())
              + "); lower it or raise the other");
    }
    return ranking;
  }

  private ZoneParameters zones(Map<ParameterName, Setting> given) {
    ZoneParameters zones =
        new ZoneParameters(
            Math.toIntExact(whole(given, ParameterName.MOST_ZONES)),
            number(given, ParameterName.ZONE_TOTAL_LENGTH),
            number(given, ParameterName.MARKER_SPACING),
            number(given, ParameterName.ZONE_DEVICE_SHARE),
            numbers(given, ParameterName.USUAL_SPEEDS),
            number(given, ParameterName.SLOW_SPEED),
            number(given, ParameterName.RECOVERY_LOW),
            number(given, ParameterName.RECOVERY_MIDDLE),
            number(given, ParameterName.RECOVERY_HIGH),
            number(given, ParameterName.DISCOUNT_RATE),
            text(given, ParameterName.LEGAL_BASIS));
    if (zones.recoveryLowYears() > zones.recoveryMiddleYears()
        || zones.recoveryMiddleYears() > zones.recoveryHighYears()) {
      throw new MeadowmarkException(
          given.get(ParameterName.RECOVERY_MIDDLE).where()
              + ": is not between recovery_low_years ("
              + PlainNumber.of(zones.recoveryLowYears())
              + ") and recovery_high_years ("
              + PlainNumber.of(zones.recoveryHighYears())
              + "); change one of the three");
    }
    return zones;
  }

  private RecoveryParameters recovery(Map<ParameterName, Setting> given) {
    return new RecoveryParameters(
        text(given, ParameterName.UNLISTED_RECOVERY).isEmpty()
            ? Optional.empty()
            : Optional.of(range(given, ParameterName.UNLISTED_RECOVERY)),
        number(given, ParameterName.UNLISTED_SCAR_WIDTH),
        number(given, ParameterName.EXCAVATION_DOUBLING),
        withinYear(given),
        optionalNumber(given, ParameterName.LOSS_BASE_YEAR),
        Math.toIntExact(whole(given, ParameterName.LOSS_HORIZON)),
        number(given, ParameterName.PLANTING_SPACING),
        range(given, ParameterName.PLANTING_SURVIVAL),
        number(given, ParameterName.PLANTING_UNIT_RADIUS),
        Math.toIntExact(whole(given, ParameterName.PROJECT_START)),
        number(given, ParameterName.PROJECT_GROWTH),
        Math.toIntExact(whole(given, ParameterName.PROJECT_LIFE)),
        range(given, ParameterName.NEW_PATCHES),
        observed(given.get(ParameterName.OBSERVED_RECOVERY)));
  }

  private RepairParameters repair(Map<ParameterName, Setting> given) {
    return new RepairParameters(
        pattern(given),
        number(given, ParameterName.PLANTING_UNIT_COST),
        number(given, ParameterName.FILL_COST),
        number(given, ParameterName.MONITORING_COST),
        number(given, ParameterName.MOBILISATION_COST),
        number(given, ParameterName.REPAIR_SITE_DISTANCE),
        number(given, ParameterName.FILL_THRESHOLD),
        number(given, ParameterName.GRASS_WEIGHT),
        number(given, ParameterName.CONNECTIVITY_WEIGHT),
        number(given, ParameterName.MARKER_EFFECT),
        number(given, ParameterName.ESTABLISHMENT),
        number(given, ParameterName.PROTECT_FIRST_CHANCE),
        number(given, ParameterName.PROTECT_FIRST_SHARE),
        optionalNumber(given, ParameterName.DEEPEST_PLANTING),
        Math.toIntExact(whole(given, ParameterName.PLANTING_FIRST_MONTH)),
        Math.toIntExact(whole(given, ParameterName.PLANTING_LAST_MONTH)),
        optionalNumber(given, ParameterName.REPAIR_BUDGET),
        optionalNumber(given, ParameterName.REPAIR_SEASON_BUDGET),
        Math.toIntExact(whole(given, ParameterName.REPAIR_SEASONS)),
        new RepairParameters.Placeholders(
            Stream.of(
                    ParameterName.PLANTING_UNIT_COST,
                    ParameterName.FILL_COST,
                    ParameterName.MONITORING_COST,
                    ParameterName.MOBILISATION_COST)
                .filter(name -> defaults.contains(given.get(name)))
                .map(ParameterName::key)
                .toList()));
  }

  private MatchingParameters matching(Map<ParameterName, Setting> given) {
    return new MatchingParameters(
        number(given, ParameterName.MATCH_LEAST_TOLERANCE),
        number(given, ParameterName.MATCH_SHARE),
        number(given, ParameterName.MATCH_DIRECTION),
        number(given, ParameterName.MATCH_LENGTH_CHANGE));
  }

  private ComparisonParameters comparison(Map<ParameterName, Setting> given) {
    return new ComparisonParameters(
        number(given, ParameterName.COMPARISON_CONFIDENCE),
        Math.toIntExact(whole(given, ParameterName.BOOTSTRAP_DRAWS)),
        numbers(given, ParameterName.WIDTH_CLASS_LIMITS),
        exposure(given),
        Math.toIntExact(whole(given, ParameterName.EFFECT_PERMUTATIONS)),
        number(given, ParameterName.CONTROL_RATE_FACTOR),
        number(given, ParameterName.CONTROL_DISTANCE),
        number(given, ParameterName.CONTROL_MINIMUM_EXPOSURE),
        number(given, ParameterName.DETECTABLE_DROP),
        number(given, ParameterName.DETECTION_POWER),
        Math.toIntExact(whole(given, ParameterName.MOST_FURTHER_SEASONS)),
        number(given, ParameterName.UNSAFE_SEASON_DAYS),
        number(given, ParameterName.UNSAFE_EFFORT_RATIO),
        number(given, ParameterName.UNSAFE_CLARITY_RATIO),
        number(given, ParameterName.UNSAFE_PIXEL_RATIO),
        number(given, ParameterName.UNSAFE_POSITION),
        number(given, ParameterName.UNSAFE_COMMON_SHARE));
  }

  private static ExposureBasis exposure(Map<ParameterName, Setting> given) {
    String value = requiredText(given, ParameterName.EFFECT_EXPOSURE);
    return ExposureBasis.find(value)
        .orElseThrow(
            () ->
                error(
                    given.get(ParameterName.EFFECT_EXPOSURE),
                    "'" + value + "' is not known",
                    NearNames.advice(value, ExposureBasis.keys())));
  }

  /** Species with three times each, {@code species:low:middle:high}. */
  private Map<String, Range> observed(Setting setting) {
    Map<String, Range> observed = new TreeMap<>();
    for (String value : setting.values()) {
      for (String entry : value.strip().split("[\\s,]+")) {
        if (!entry.isEmpty()) {
          String[] parts = entry.split(":", -1);
          if (parts.length != 4) {
            throw error(
                setting, "'" + entry + "' is no entry", "write it like turtlegrass:3.6:5:9.5");
          }
          double low = inLimits(setting, ParameterName.OBSERVED_RECOVERY, parts[1]);
          double middle = inLimits(setting, ParameterName.OBSERVED_RECOVERY, parts[2]);
          double high = inLimits(setting, ParameterName.OBSERVED_RECOVERY, parts[3]);
          if (low > middle || middle > high) {
            throw error(setting, "'" + entry + "' is not ascending", "give low, middle and high");
          }
          if (observed.put(parts[0], new Range(low, middle, high)) != null) {
            throw error(setting, "'" + parts[0] + "' is there twice", "remove one");
          }
        }
      }
    }
    return observed;
  }

  private static PlantingPattern pattern(Map<ParameterName, Setting> given) {
    String value = requiredText(given, ParameterName.PLANTING_PATTERN);
    return PlantingPattern.find(value)
        .orElseThrow(
            () ->
                error(
                    given.get(ParameterName.PLANTING_PATTERN),
                    "'" + value + "' is not known",
                    NearNames.advice(value, PlantingPattern.keys())));
  }

  private static WithinYear withinYear(Map<ParameterName, Setting> given) {
    String value = requiredText(given, ParameterName.WITHIN_YEAR);
    List<String> known = new ArrayList<>();
    for (WithinYear moment : WithinYear.values()) {
      if (moment.key().equals(value)) {
        return moment;
      }
      known.add(moment.key());
    }
    throw error(
        given.get(ParameterName.WITHIN_YEAR),
        "'" + value + "' is not known",
        NearNames.advice(value, known));
  }

  /** Three numbers in ascending order. */
  private Range range(Map<ParameterName, Setting> given, ParameterName name) {
    List<Double> three = numbers(given, name);
    if (three.size() != 3 || three.get(0) > three.get(1) || three.get(1) > three.get(2)) {
      throw error(
          given.get(name), "is no range", "give three numbers: low, middle and high, ascending");
    }
    return new Range(three.get(0), three.get(1), three.get(2));
  }

  /** Pairs of term and weight; terms that are not named weigh nothing. */
  private static ScoreWeights weights(Setting setting) {
    Map<ScoreTerm, Double> weights = new EnumMap<>(ScoreTerm.class);
    for (String value : setting.values()) {
      for (String pair : value.strip().split("[\\s,]+")) {
        if (!pair.isEmpty()) {
          int colon = pair.indexOf(':');
          String key = colon < 0 ? pair : pair.substring(0, colon);
          ScoreTerm term =
              ScoreTerm.find(key)
                  .orElseThrow(
                      () ->
                          error(
                              setting,
                              "'" + key + "' is no term of the score",
                              NearNames.advice(key, ScoreTerm.keys())));
          if (weights.put(term, weight(setting, pair, colon)) != null) {
            throw error(setting, "'" + key + "' is there twice", "remove one");
          }
        }
      }
    }
    if (weights.values().stream().noneMatch(weight -> weight > 0)) {
      throw error(setting, "no term has a weight above 0", "write pairs such as rate:3 edge:1");
    }
    return new ScoreWeights(weights);
  }

  private static double weight(Setting setting, String pair, int colon) {
    double weight = -1;
    try {
      weight = colon < 0 ? -1 : new BigDecimal(pair.substring(colon + 1)).doubleValue();
    } catch (NumberFormatException e) {
      weight = -1;
    }
    if (!(weight >= 0) || Double.isInfinite(weight)) {
      throw error(setting, "'" + pair + "' has no weight of 0 or more", "write it like rate:3");
    }
    return weight;
  }

  private static void checkPosition(Parameters parameters, Map<ParameterName, Setting> given) {
    boolean x = parameters.positionRmseXMetres().isPresent();
    boolean y = parameters.positionRmseYMetres().isPresent();
    if (x != y) {
      throw error(
          given.get(x ? ParameterName.POSITION_RMSE_X : ParameterName.POSITION_RMSE_Y),
          "is the error of one axis",
          "give that of the other too, or position_rmse_m alone");
    }
    if (x && parameters.positionRmseMetres().isPresent()) {
      throw error(
          given.get(ParameterName.POSITION_RMSE),
          "is given beside the errors of the axes",
          "give one or the other");
    }
    if (!parameters.position().map(PositionalAccuracy::hasAccuracy95).orElse(true)) {
      throw error(
          given.get(ParameterName.POSITION_RMSE_X),
          "differs too much from position_rmse_y_m: the smaller is less than 0.6 of the larger, and"
              + " FGDC-STD-007.3-1998 has no formula for that",
          "look for a systematic error in one axis");
    }
  }

  private record Crossing(double metres, Optional<String> guild) {}

  /** A distance that was given stands above the distance of a guild, and this above the default. */
  private Crossing crossing(Map<ParameterName, Setting> given) {
    double distance = number(given, ParameterName.CROSSING_DISTANCE);
    Optional<String> key = text(given, ParameterName.FISH_GUILD);
    if (key.isEmpty()) {
      return new Crossing(distance, Optional.empty());
    }
    FishGuild guild = guilds.get(key.get());
    if (guild == null) {
      throw error(
          given.get(ParameterName.FISH_GUILD),
          "'" + key.get() + "' is no fish guild",
          NearNames.advice(key.get(), List.copyOf(guilds.keySet())));
    }
    boolean distanceGiven = !defaults.contains(given.get(ParameterName.CROSSING_DISTANCE));
    return distanceGiven
        ? new Crossing(distance, Optional.empty())
        : new Crossing(guild.crossingDistanceMetres(), key);
  }

  private static ParameterName name(Setting setting) {
    return ParameterName.find(setting.name())
        .orElseThrow(
            () ->
                new MeadowmarkException(
                    setting.where()
                        + ": unknown parameter; "
                        + NearNames.advice(setting.name(), ParameterName.keys())));
  }

  private static Optional<String> text(Map<ParameterName, Setting> given, ParameterName name) {
    Setting setting = given.get(name);
    if (setting.values().size() > 1) {
      throw error(setting, "takes one value, not " + setting.values().size(), "give one");
    }
    return setting.values().stream().map(String::strip).filter(v -> !v.isEmpty()).findFirst();
  }

  private static String requiredText(Map<ParameterName, Setting> given, ParameterName name) {
    return text(given, name).orElseThrow(() -> error(given.get(name), "has no value", "give one"));
  }

  private static boolean flag(Map<ParameterName, Setting> given, ParameterName name) {
    String value = requiredText(given, name);
    return switch (value) {
      case "true" -> true;
      case "false" -> false;
      default ->
          throw error(given.get(name), "'" + value + "' is neither true nor false", "use one");
    };
  }

  private static SeverityDenominator denominator(
      Map<ParameterName, Setting> given, ParameterName name) {
    String value = requiredText(given, name);
    List<String> known = new ArrayList<>();
    for (SeverityDenominator denominator : SeverityDenominator.values()) {
      if (denominator.key().equals(value)) {
        return denominator;
      }
      known.add(denominator.key());
    }
    throw error(given.get(name), "'" + value + "' is not known", NearNames.advice(value, known));
  }

  private double number(Map<ParameterName, Setting> given, ParameterName name) {
    return inLimits(given.get(name), name, requiredText(given, name));
  }

  private long whole(Map<ParameterName, Setting> given, ParameterName name) {
    double value = number(given, name);
    if (value != Math.rint(value)) {
      throw error(
          given.get(name),
          PlainNumber.of(value) + " is no whole number",
          "give one without decimals");
    }
    return (long) value;
  }

  private OptionalDouble optionalNumber(Map<ParameterName, Setting> given, ParameterName name) {
    Optional<String> value = text(given, name);
    return value.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(inLimits(given.get(name), name, value.get()));
  }

  private List<Double> numbers(Map<ParameterName, Setting> given, ParameterName name) {
    Setting setting = given.get(name);
    List<Double> numbers = new ArrayList<>();
    for (String value : setting.values()) {
      for (String part : value.strip().split("[\\s,]+")) {
        if (!part.isEmpty()) {
          numbers.add(inLimits(setting, name, part));
        }
      }
    }
    if (numbers.isEmpty()) {
      throw error(setting, "has no value", "give one or more");
    }
    return numbers;
  }

  private double inLimits(Setting setting, ParameterName name, String text) {
    ParameterRow row = rows.get(name);
    double value;
    try {
      value = new BigDecimal(text).doubleValue();
    } catch (NumberFormatException e) {
      throw error(setting, "'" + text + "' is no number", "give a number " + limits(row));
    }
    boolean low = row.minimum().isPresent() && value < row.minimum().getAsDouble();
    boolean high = row.maximum().isPresent() && value > row.maximum().getAsDouble();
    if (low || high || Double.isInfinite(value)) {
      throw error(setting, text + " is out of limits", "give a number " + limits(row));
    }
    return value;
  }

  private static String limits(ParameterRow row) {
    String unit = row.unit().isEmpty() ? "" : " " + row.unit();
    StringBuilder text = new StringBuilder();
    row.minimum().ifPresent(low -> text.append("from ").append(PlainNumber.of(low)).append(unit));
    row.maximum()
        .ifPresent(
            high ->
                text.append(text.isEmpty() ? "" : " ")
                    .append("to ")
                    .append(PlainNumber.of(high))
                    .append(unit));
    return text.toString();
  }

  private static MeadowmarkException error(Setting setting, String problem, String remedy) {
    return new MeadowmarkException(setting.where() + ": " + problem + "; " + remedy);
  }
}
