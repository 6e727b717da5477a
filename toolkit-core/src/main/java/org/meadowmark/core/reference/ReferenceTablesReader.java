package org.meadowmark.core.reference;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.reference.TableLibrary.Table;

/** Reads and checks the reference tables that describe grass, scars, classes, markers and fish. */
public final class ReferenceTablesReader {
  private static final String KEY = "key";
  private static final String SOURCE = "source";
  private static final String UNKNOWN_SPECIES = "unknown";

  private final TableLibrary library;

  private ReferenceTablesReader(TableLibrary library) {
    this.library = library;
  }

  /**
   * Reads the tables of a library.
   *
   * @param library where the tables are read from
   * @return the tables, checked row by row and against each other
   * @throws MeadowmarkException if a table is wrong; the message names its file and line
   */
  public static ReferenceTables read(TableLibrary library) {
    ReferenceTablesReader reader = new ReferenceTablesReader(library);
    Map<String, ScarCause> causes = reader.causes();
    Map<String, Species> species = reader.species();
    return new ReferenceTables(
        species,
        causes,
        reader.severityClasses(),
        reader.deviceRules(causes.keySet()),
        fishGuilds(library),
        reader.scarRecovery(species.keySet()),
        reader.rhizomeElongation());
  }

  /**
   * Reads the table of fish guilds alone.
   *
   * @param library where the table is read from
   * @return the guilds by key, in file order
   * @throws MeadowmarkException if it is wrong; the message names its file and line
   */
  public static Map<String, FishGuild> fishGuilds(TableLibrary library) {
    return new ReferenceTablesReader(library)
        .byKey(
            Table.FISH_GUILDS,
            List.of(KEY, "label", "crossing_distance_m", SOURCE),
            row -> {
              FishGuild guild =
                  new FishGuild(
                      row.key(KEY),
                      row.requiredText("label"),
                      row.number("crossing_distance_m"),
                      row.requiredText(SOURCE));
              if (guild.crossingDistanceMetres() < 0) {
                throw row.error("crossing_distance_m", "must be 0 or more", "correct it");
              }
              return guild;
            });
  }

  /** {@return the tables packed into the toolkit} */
  public static ReferenceTables bundled() {
    return read(TableLibrary.bundled());
  }

  private Map<String, Species> species() {
    Map<String, Species> species =
        byKey(
            Table.SPECIES,
            List.of(KEY, "scientific_name", "common_name", SOURCE),
            row ->
                new Species(
                    row.key(KEY),
                    row.text("scientific_name"),
                    row.requiredText("common_name"),
                    row.requiredText(SOURCE)));
    requireRow(Table.SPECIES, species.keySet(), UNKNOWN_SPECIES);
    return species;
  }

  private Map<String, ScarCause> causes() {
    Map<String, ScarCause> causes =
        byKey(
            Table.SCAR_CAUSES,
            List.of(KEY, "label", "default_width_m", "width_variation", SOURCE),
            ReferenceTablesReader::cause);
    requireRow(Table.SCAR_CAUSES, causes.keySet(), ReferenceTables.UNKNOWN_CAUSE);
    return causes;
  }

  private static ScarCause cause(TableRow row) {
    ScarCause cause =
        new ScarCause(
            row.key(KEY),
            row.requiredText("label"),
            row.optionalNumber("default_width_m"),
            row.number("width_variation"),
            row.requiredText(SOURCE));
    if (cause.defaultWidthMetres().isPresent() && cause.defaultWidthMetres().getAsDouble() <= 0) {
      throw row.error("default_width_m", "must be more than 0", "or leave it empty");
    }
    if (cause.widthVariation() < 0) {
      throw row.error("width_variation", "must be 0 or more", "correct it");
    }
    return cause;
  }

  private Map<String, ScarRecoveryTime> scarRecovery(Set<String> species) {
    return byKey(
        Table.SCAR_RECOVERY,
        "species",
        List.of("species", "low_years", "middle_years", "high_years", "scar_width_m", SOURCE),
        row -> scarRecoveryTime(row, species));
  }

  private static ScarRecoveryTime scarRecoveryTime(TableRow row, Set<String> species) {
    String key = row.key("species");
    if (!species.contains(key)) {
      throw row.error(
          "species",
          "'" + key + "' is no species",
          "use one of: " + String.join(", ", species) + "; or add a row to species.csv");
    }
    double low = row.number("low_years");
    double middle = row.number("middle_years");
    double high = row.number("high_years");
    if (!(low > 0 && low <= middle && middle <= high)) {
      throw row.error(
          "middle_years",
          "is not between low_years and high_years, or one of them is not more than 0",
          "correct the three");
    }
    if (!(row.number("scar_width_m") > 0)) {
      throw row.error("scar_width_m", "must be more than 0", "correct it");
    }
    return new ScarRecoveryTime(
        key, new Range(low, middle, high), row.number("scar_width_m"), row.requiredText(SOURCE));
  }

  private Map<String, RhizomeElongation> rhizomeElongation() {
    return byKey(
        Table.RHIZOME_ELONGATION,
        List.of(KEY, "scientific_name", "elongation_m_per_year", SOURCE),
        row -> {
          double metres = row.number("elongation_m_per_year");
          if (!(metres > 0)) {
            throw row.error("elongation_m_per_year", "must be more than 0", "correct it");
          }
          return new RhizomeElongation(
              row.key(KEY), row.requiredText("scientific_name"), metres, row.requiredText(SOURCE));
        });
  }

  private List<SeverityClass> severityClasses() {
    List<TableRow> rows =
        library.rows(
            Table.SEVERITY_CLASSES,
            List.of(
                KEY,
                "label",
                "lowest_share",
                "lowest_included",
                "highest_share",
                "highest_included",
                SOURCE));
    List<SeverityClass> classes = new ArrayList<>();
    Set<String> keys = new HashSet<>();
    double reached = 0;
    boolean reachedIncluded = false;
    for (TableRow row : rows) {
      SeverityClass next =
          new SeverityClass(
              row.key(KEY),
              row.requiredText("label"),
              row.number("lowest_share"),
              row.flag("lowest_included"),
              row.number("highest_share"),
              row.flag("highest_included"),
              row.requiredText(SOURCE));
      if (!keys.add(next.key())) {
        throw row.error(KEY, "'" + next.key() + "' is used twice", "remove one of the rows");
      }
      if (next.lowestShare() != reached || next.lowestIncluded() == reachedIncluded) {
        throw row.error(
            "lowest_share",
            "leaves a gap or an overlap with the class before",
            "start at " + reached + (reachedIncluded ? ", not included" : ", included"));
      }
      boolean single = next.highestShare() == next.lowestShare();
      if (next.highestShare() < next.lowestShare()
          || single && !(next.lowestIncluded() && next.highestIncluded())) {
        throw row.error("highest_share", "leaves nothing in the class", "correct the limits");
      }
      reached = next.highestShare();
      reachedIncluded = next.highestIncluded();
      classes.add(next);
    }
    if (reached != 1 || !reachedIncluded) {
      throw rows.get(rows.size() - 1)
          .error("highest_share", "does not end at 1", "let the last class end at 1, included");
    }
    return List.copyOf(classes);
  }

  private List<DeviceRule> deviceRules(Set<String> causes) {
    List<DeviceRule> rules = new ArrayList<>();
    for (TableRow row :
        library.rows(
            Table.DEVICE_RULES, List.of("cause", "pattern", "device", "shape", "reason", SOURCE))) {
      String cause = row.key("cause");
      if (!causes.contains(cause)) {
        throw row.error(
            "cause",
            "'" + cause + "' is no scar cause",
            "use one of: " + String.join(", ", causes));
      }
      String shape = row.key("shape");
      if (!DeviceRule.SHAPES.contains(shape)) {
        throw row.error(
            "shape",
            "'" + shape + "' is no shape of a mark",
            "use one of: " + String.join(", ", DeviceRule.SHAPES));
      }
      rules.add(
          new DeviceRule(
              cause,
              row.key("pattern"),
              row.requiredText("device"),
              shape,
              row.requiredText("reason"),
              row.requiredText(SOURCE)));
    }
    return List.copyOf(rules);
  }

  private <T> Map<String, T> byKey(Table table, List<String> columns, Function<TableRow, T> make) {
    return byKey(table, KEY, columns, make);
  }

  private <T> Map<String, T> byKey(
      Table table, String keyColumn, List<String> columns, Function<TableRow, T> make) {
    Map<String, T> byKey = new LinkedHashMap<>();
    for (TableRow row : library.rows(table, columns)) {
      String key = row.key(keyColumn);
      if (byKey.put(key, make.apply(row)) != null) {
        throw row.error(keyColumn, "'" + key + "' is used twice", "remove one of the rows");
      }
    }
    return Collections.unmodifiableMap(byKey);
  }

  private void requireRow(Table table, Set<String> keys, String required) {
    if (!keys.contains(required)) {
      throw new MeadowmarkException(
          library.label(table) + ": has no row '" + required + "'; add one");
    }
  }
}
