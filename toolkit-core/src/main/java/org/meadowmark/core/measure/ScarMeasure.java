package org.meadowmark.core.measure;

import java.util.OptionalDouble;
import org.meadowmark.core.model.Scar;

/**
 * One scar, measured alone: overlaps with other scars are not taken off here.
 *
 * @param scar the scar
 * @param lengthMetres length of the line; for a polygon 0
 * @param lengthInBedsMetres length of the line inside beds
 * @param lengthOutsideBedsMetres length of the line outside every bed
 * @param lengthOutsideSurveyMetres length of the line outside the surveyed area
 * @param footprintSquareMetres area of the footprint
 * @param footprintInBedsSquareMetres area of the footprint inside beds
 * @param bedCount beds touched by the footprint
 * @param gapCount gaps between patches that the scar makes or helps to make
 * @param depthMetres water depth at the scar's middle, where known
 */
public record ScarMeasure(
    Scar scar,
    double lengthMetres,
    double lengthInBedsMetres,
    double lengthOutsideBedsMetres,
    double lengthOutsideSurveyMetres,
    double footprintSquareMetres,
    double footprintInBedsSquareMetres,
    int bedCount,
    int gapCount,
    OptionalDouble depthMetres) {
  /**
   * {@return the same figures with another record of the scar}
   *
   * @param other the scar, mapped alike
   */
  public ScarMeasure withScar(Scar other) {
    return new ScarMeasure(
        other,
        lengthMetres,
        lengthInBedsMetres,
        lengthOutsideBedsMetres,
        lengthOutsideSurveyMetres,
        footprintSquareMetres,
        footprintInBedsSquareMetres,
        bedCount,
        gapCount,
        depthMetres);
  }
}
