package org.meadowmark.core.api;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.Damage;

/**
 * Damage of a management area, of the beds outside all of them, or of the whole survey.
 *
 * @param name name for people
 * @param grassSquareMetres mapped bed area
 * @param surveyedSquareMetres the part of it inside the surveyed area; damage elsewhere is unknown
 * @param scarCount scars whose footprint touches it
 * @param scarLengthMetres length of scar lines in it, each line counted separately
 * @param scarredSquareMetres area of the union of scar footprints in it
 * @param scarredShare scarred divided by surveyed area (0–1); empty where nothing was surveyed
 * @param scarredRange how sure the scarred area is; empty where nothing was surveyed or no draws
 *     were asked for
 * @param severity key of the severity class, {@code unknown} where nothing was surveyed
 */
public record AreaDamage(
    String name,
    double grassSquareMetres,
    double surveyedSquareMetres,
    int scarCount,
    double scarLengthMetres,
    double scarredSquareMetres,
    OptionalDouble scarredShare,
    Optional<AreaRange> scarredRange,
    String severity) {

  /**
   * Ninety of a hundred draws of scar widths and positions give an area in it.
   *
   * @param lowSquareMetres 5 % quantile of the draws
   * @param highSquareMetres 95 % quantile of the draws
   */
  public record AreaRange(double lowSquareMetres, double highSquareMetres) {}

  /**
   * Refuses what is missing.
   *
   * @param name name for people
   * @param grassSquareMetres mapped bed area
   * @param surveyedSquareMetres the part of it inside the surveyed area
   * @param scarCount scars whose footprint touches it
   * @param scarLengthMetres length of scar lines in it
   * @param scarredSquareMetres area of the union of scar footprints in it
   * @param scarredShare scarred divided by surveyed area (0–1)
   * @param scarredRange how sure the scarred area is
   * @param severity key of the severity class
   * @throws NullPointerException if anything is null
   */
  public AreaDamage {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(scarredShare, "scarredShare");
    Objects.requireNonNull(scarredRange, "scarredRange");
    Objects.requireNonNull(severity, "severity");
  }

  static AreaDamage of(AreaMeasure area) {
    Damage damage = area.damage();
    return new AreaDamage(
        area.label(),
        damage.grassSquareMetres(),
        damage.surveyedSquareMetres(),
        damage.scarCount(),
        damage.scarLengthMetres(),
        damage.scarredSquareMetres(),
        damage.share(),
        damage
            .interval()
            .map(i -> new AreaRange(i.areaSquareMetres().low(), i.areaSquareMetres().high())),
        damage.severityKey());
  }
}
