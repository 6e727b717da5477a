package org.meadowmark.core.rank.evidence;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.meadowmark.core.measure.BedMeasure;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.ScarFilling;

/**
 * What the measuring stage found that speaks about channel segments.
 *
 * @param severityByBed key of the severity class by bed id
 * @param gainHectaresByScar what filling a scar alone would restore of the equivalent connected
 *     area, by scar id; scars that make no gap are left out; empty where the survey has too many
 *     patches to work it out
 * @param earlier what earlier surveys tell of the scars; empty with one survey
 */
public record MeasuredEvidence(
    Map<String, String> severityByBed,
    Optional<Map<String, Double>> gainHectaresByScar,
    Optional<EarlierScars> earlier) {

  /**
   * Takes what one survey tells, without earlier ones.
   *
   * @param severityByBed key of the severity class by bed id
   * @param gainHectaresByScar what filling a scar alone would restore of the equivalent connected
   *     area, by scar id; empty where it was not worked out
   */
  public MeasuredEvidence(
      Map<String, String> severityByBed, Optional<Map<String, Double>> gainHectaresByScar) {
    this(severityByBed, gainHectaresByScar, Optional.empty());
  }

  /**
   * {@return the same with what earlier surveys tell}
   *
   * @param scars what is known of this survey's scars from earlier surveys
   */
  public MeasuredEvidence withEarlier(EarlierScars scars) {
    return new MeasuredEvidence(severityByBed, gainHectaresByScar, Optional.of(scars));
  }

  /**
   * {@return evidence from a measurement, without what earlier surveys tell}
   *
   * @param measurement beds with their damage, and connectivity scar by scar
   */
  public static MeasuredEvidence of(Measurement measurement) {
    Map<String, String> severity = new HashMap<>();
    for (BedMeasure bed : measurement.beds()) {
      severity.put(bed.bed().id(), bed.damage().severityKey());
    }
    return new MeasuredEvidence(
        severity,
        measurement
            .connectivity()
            .map(
                detail -> {
                  Map<String, Double> gains = new HashMap<>();
                  for (ScarFilling filling : detail.scars()) {
                    gains.put(filling.scarId(), filling.equivalentAreaGainHectares());
                  }
                  return gains;
                }));
  }
}
