package org.meadowmark.core.change.bed;

import java.util.Objects;

/**
 * How the grass of one bed changed. A bed of the earlier survey has its losses, one of the later
 * survey its gains; ids of the two surveys need not agree.
 *
 * @param bedId the bed
 * @param isEarlier whether it is a bed of the earlier survey
 * @param areaSquareMetres ground area of the whole bed
 * @param notComparableSquareMetres part of it outside one of the two surveyed areas
 * @param change the change inside both
 */
public record BedChange(
    String bedId,
    boolean isEarlier,
    double areaSquareMetres,
    double notComparableSquareMetres,
    GrassChange change) {
  /**
   * Refuses a change of which a part is missing.
   *
   * @param bedId the bed
   * @param isEarlier whether it is a bed of the earlier survey
   * @param areaSquareMetres ground area of the whole bed
   * @param notComparableSquareMetres part of it outside one of the two surveyed areas
   * @param change the change inside both
   * @throws NullPointerException if anything is null
   */
  public BedChange {
    Objects.requireNonNull(bedId, "bedId");
    Objects.requireNonNull(change, "change");
  }
}
