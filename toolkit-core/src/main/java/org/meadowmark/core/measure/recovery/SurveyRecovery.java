package org.meadowmark.core.measure.recovery;

import java.util.List;
import org.meadowmark.core.measure.AreaMeasure.Kind;

/**
 * Recovery of every scar of a survey, and the loss until then.
 *
 * @param conventions what the loss is counted by
 * @param planting how scars are planted in the figures with planting
 * @param scars by scar id
 * @param beds by bed id
 * @param areas management areas, the beds outside them, and the whole survey, as they were measured
 * @param worked the loss of the whole survey year by year
 */
public record SurveyRecovery(
    LossConventions conventions,
    Planting planting,
    List<ScarRecovery> scars,
    List<BedLoss> beds,
    List<AreaLoss> areas,
    WorkedLoss worked) {
  /**
   * Keeps copies of the lists that cannot be changed.
   *
   * @param conventions what the loss is counted by
   * @param planting how scars are planted in the figures with planting
   * @param scars by scar id
   * @param beds by bed id
   * @param areas management areas, the beds outside them, and the whole survey, as they were
   *     measured
   * @param worked the loss of the whole survey year by year
   * @throws NullPointerException if a list or an entry of one is null
   */
  public SurveyRecovery {
    scars = List.copyOf(scars);
    beds = List.copyOf(beds);
    areas = List.copyOf(areas);
  }

  /** {@return the line for the whole survey} */
  public AreaLoss whole() {
    return areas.stream()
        .filter(area -> area.kind() == Kind.WHOLE_SURVEY)
        .findFirst()
        .orElseThrow();
  }
}
