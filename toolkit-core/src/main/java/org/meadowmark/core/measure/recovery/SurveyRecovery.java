package org.meadowmark.core.measure.recovery;

import java.util.List;

/**
 * Recovery of every scar of a survey, and the loss until then.
 *
 * @param conventions what the loss is counted by
 * @param planting how scars are planted in the figures with planting
 * @param scars by scar id
 * @param beds by bed id
 * @param areas management areas by id, then the beds outside them, then the whole survey
 * @param worked the loss of the whole survey year by year
 */
public record SurveyRecovery(
    LossConventions conventions,
    Planting planting,
    List<ScarRecovery> scars,
    List<BedLoss> beds,
    List<AreaLoss> areas,
    WorkedLoss worked) {
  public SurveyRecovery {
    scars = List.copyOf(scars);
    beds = List.copyOf(beds);
    areas = List.copyOf(areas);
  }

  /** The line for the whole survey. */
  public AreaLoss whole() {
    return areas.get(areas.size() - 1);
  }
}
