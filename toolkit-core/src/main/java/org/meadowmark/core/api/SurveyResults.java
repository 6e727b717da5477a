package org.meadowmark.core.api;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.write.AssessedSurvey;

/**
 * The leading figures of an assessed survey.
 *
 * <p>They rest on what was mapped: "no scar seen" is not "no scar". Lengths and areas are ground
 * values unless the survey sets {@code ground_scale=false}.
 *
 * @param name name of the survey
 * @param date date of the survey, where given
 * @param whole damage of the whole survey
 * @param areas damage by management area, then that outside all of them; empty without areas
 * @param segments channel segments, highest score first, those without a rank last, ties by id;
 *     empty without channels
 * @param findings what was wrong or doubtful in the input, a line each: {@code file: layer: feature
 *     id: what is wrong; what was done}
 */
public record SurveyResults(
    String name,
    Optional<LocalDate> date,
    AreaDamage whole,
    List<AreaDamage> areas,
    List<SegmentDamage> segments,
    List<String> findings) {

  /**
   * Keeps copies of the lists that cannot be changed.
   *
   * @param name name of the survey
   * @param date date of the survey, where given
   * @param whole damage of the whole survey
   * @param areas damage by area
   * @param segments channel segments in order
   * @param findings a line each
   * @throws NullPointerException if anything is null
   */
  public SurveyResults {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(date, "date");
    Objects.requireNonNull(whole, "whole");
    areas = List.copyOf(areas);
    segments = List.copyOf(segments);
    findings = List.copyOf(findings);
  }

  static SurveyResults of(AssessedSurvey assessed) {
    return new SurveyResults(
        assessed.definition().name(),
        assessed.definition().date(),
        AreaDamage.of(assessed.measurement().whole()),
        assessed.measurement().areas().stream()
            .filter(area -> area.kind() != AreaMeasure.Kind.WHOLE_SURVEY)
            .map(AreaDamage::of)
            .toList(),
        assessed.ranking().segments().stream().map(SegmentDamage::of).toList(),
        assessed.findings().stream().map(Finding::message).toList());
  }
}
