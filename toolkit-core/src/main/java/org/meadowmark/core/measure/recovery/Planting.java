package org.meadowmark.core.measure.recovery;

import org.meadowmark.core.model.Range;
import org.meadowmark.core.survey.RecoveryParameters;

/**
 * How a scar is planted: units in rows along it, each of which lives with some chance and then
 * spreads as fast as the scar's edge.
 *
 * <p>Model, common practice, no source: a unit is a disc of a radius at first; whether it lives is
 * decided at once and for each alone; discs widen at the scar's edge rate while the edge closes in
 * from outside. The ground that is bare is the chance that no living disc covers a point; for one
 * row that is exact. Rows side by side are taken as shifted at random.
 *
 * @param spacingMetres distance between units in a row, and between rows, more than 0
 * @param survival chance that a unit lives, in 0–1
 * @param unitRadiusMetres radius of what one unit covers when it is planted
 * @param filled whether the scar is filled to grade first, so that its depth no longer slows it
 */
public record Planting(
    double spacingMetres, Range survival, double unitRadiusMetres, boolean filled) {
  /**
   * Refuses figures out of their limits.
   *
   * @param spacingMetres distance between units in a row, and between rows, more than 0
   * @param survival chance that a unit lives, in 0–1
   * @param unitRadiusMetres radius of what one unit covers when it is planted
   * @param filled whether the scar is filled to grade first, so that its depth no longer slows it
   * @throws IllegalArgumentException if a figure is out of its limits
   */
  public Planting {
    if (!(spacingMetres > 0)
        || Double.isInfinite(spacingMetres)
        || !(unitRadiusMetres >= 0)
        || Double.isInfinite(unitRadiusMetres)
        || survival.low() < 0
        || survival.high() > 1) {
      throw new IllegalArgumentException("no planting: " + spacingMetres + ", " + survival);
    }
  }

  /**
   * {@return planting as a user chose it, filled to grade first}
   *
   * @param recovery choices of the user: spacing, survival, size of a unit
   */
  public static Planting of(RecoveryParameters recovery) {
    return new Planting(
        recovery.plantingSpacingMetres(),
        recovery.plantingSurvival(),
        recovery.plantingUnitRadiusMetres(),
        true);
  }

  /**
   * {@return rows that stand side by side in a strip: its width over the spacing, rounded, at least
   * 1}
   *
   * @param widthMetres width of the strip
   */
  public int rows(double widthMetres) {
    return (int) Math.max(1, Math.round(widthMetres / spacingMetres));
  }
}
