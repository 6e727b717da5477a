package org.meadowmark.core.assessment;

import java.util.List;
import java.util.Optional;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.SurveyInputException;

/**
 * A survey as read, checked and projected.
 *
 * @param survey what can be measured; empty if a finding is an error
 * @param findings everything that was found, in {@link Finding#ORDER}
 * @param counts features by layer
 */
public record LoadedSurvey(
    Optional<MetricSurvey> survey, List<Finding> findings, List<LayerCount> counts) {
  /**
   * Keeps copies of the lists.
   *
   * @param survey what can be measured; empty if a finding is an error
   * @param findings everything that was found, in {@link Finding#ORDER}
   * @param counts features by layer
   * @throws NullPointerException if a list or an entry of it is null
   */
  public LoadedSurvey {
    findings = List.copyOf(findings);
    counts = List.copyOf(counts);
  }

  /**
   * {@return the survey}
   *
   * @throws SurveyInputException if a finding is an error: the first one, with how many more there
   *     are
   */
  public MetricSurvey orThrow() {
    return survey.orElseThrow(() -> new SurveyInputException(firstError()));
  }

  private Finding firstError() {
    List<Finding> errors = findings.stream().filter(f -> f.level() == Finding.Level.ERROR).toList();
    Finding first = errors.get(0);
    if (errors.size() == 1) {
      return first;
    }
    return new Finding(
        first.code(),
        first.level(),
        first.treatment(),
        first.role(),
        first.where(),
        first.problem(),
        first.action() + " (and " + (errors.size() - 1) + " more; the check command lists all)");
  }
}
