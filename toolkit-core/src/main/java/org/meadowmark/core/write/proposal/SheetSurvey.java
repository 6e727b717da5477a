package org.meadowmark.core.write.proposal;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.reference.ReferenceTables;

/**
 * What the sheets of one survey have in common. Sheets should share one instance: what is drawn
 * from it is prepared once.
 *
 * @param name name of the survey
 * @param date date of the survey, where stated
 * @param map geometry for the map, with the grid it is on
 * @param severityByBed key of the severity class by bed id; a bed that is absent is drawn without a
 *     class
 * @param references names and order of causes and severity classes
 * @param inputs files that were read
 * @param seed seed of everything that was drawn at random
 * @param toolVersion version of the program
 */
public record SheetSurvey(
    String name,
    Optional<LocalDate> date,
    MetricSurvey map,
    Map<String, String> severityByBed,
    ReferenceTables references,
    List<SheetInput> inputs,
    long seed,
    String toolVersion) {

  /**
   * Keeps copies of classes and inputs that cannot be changed.
   *
   * @param name name of the survey
   * @param date date of the survey, where stated
   * @param map geometry for the map, with the grid it is on
   * @param severityByBed key of the severity class by bed id
   * @param references names and order of causes and severity classes
   * @param inputs files that were read
   * @param seed seed of everything that was drawn at random
   * @param toolVersion version of the program
   * @throws NullPointerException if anything is null
   */
  public SheetSurvey {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(date, "date");
    Objects.requireNonNull(map, "map");
    Objects.requireNonNull(references, "references");
    Objects.requireNonNull(toolVersion, "toolVersion");
    severityByBed = Map.copyOf(severityByBed);
    inputs = List.copyOf(inputs);
  }
}
