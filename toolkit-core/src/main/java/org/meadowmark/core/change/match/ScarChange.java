package org.meadowmark.core.change.match;

import java.util.Objects;

/**
 * What became of one scar of one of the two surveys. {@code lengthMetres = assignedMetres +
 * unassignedMetres + notComparableMetres}.
 *
 * <p>On an earlier scar unassigned metres have healed; on a later one they are new.
 *
 * @param id the scar
 * @param isLine whether it is a line; a polygon counts half its perimeter
 * @param change its class
 * @param lengthMetres ground length
 * @param assignedMetres the part that the other survey has too
 * @param unassignedMetres the part that only this survey has
 * @param notComparableMetres the part outside one of the two surveyed areas
 * @param crowded whether so many scars lie within tolerance that only the nearest were weighed
 */
public record ScarChange(
    String id,
    boolean isLine,
    ChangeClass change,
    double lengthMetres,
    double assignedMetres,
    double unassignedMetres,
    double notComparableMetres,
    boolean crowded) {
  /**
   * Refuses a change of which a part is missing.
   *
   * @param id the scar
   * @param isLine whether it is a line; a polygon counts half its perimeter
   * @param change its class
   * @param lengthMetres ground length
   * @param assignedMetres the part that the other survey has too
   * @param unassignedMetres the part that only this survey has
   * @param notComparableMetres the part outside one of the two surveyed areas
   * @param crowded whether so many scars lie within tolerance that only the nearest were weighed
   * @throws NullPointerException if anything is null
   */
  public ScarChange {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(change, "change");
  }
}
