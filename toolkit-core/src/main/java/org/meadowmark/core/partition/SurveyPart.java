package org.meadowmark.core.partition;

import java.util.Arrays;
import java.util.List;
import org.meadowmark.core.model.MetricSurvey;

/**
 * One or more groups that are measured together.
 *
 * @param beds positions of its beds in the survey, ascending
 * @param scars positions of its scars in the survey, ascending
 * @param groups number of groups in it
 */
public record SurveyPart(int[] beds, int[] scars, int groups) {
  /**
   * {@return the part as a survey of its own: its scars and beds, and every management area,
   * surveyed area and barrier. Channels are left out: nothing that is measured depends on them}
   *
   * @param whole the survey that the positions count in
   */
  public MetricSurvey of(MetricSurvey whole) {
    return new MetricSurvey(
        whole.gridLabel(),
        whole.gridWkt(),
        Arrays.stream(scars).mapToObj(whole.scars()::get).toList(),
        Arrays.stream(beds).mapToObj(whole.beds()::get).toList(),
        List.of(),
        whole.managementAreas(),
        whole.surveyedArea(),
        whole.barriers(),
        whole.depth(),
        whole.scale());
  }
}
