package org.meadowmark.core.partition;

import java.util.Arrays;

/**
 * Beds and scars that depend on each other: no figure of one group depends on another, but for the
 * nearest other patch and for totals.
 *
 * @param groupOfBed group of each bed, numbered from 0 in order of the first bed, then of the first
 *     scar
 * @param groupOfScar group of each scar; a scar near no bed is in a group without beds
 * @param tiled whether meadows are cut in tiles, see {@link
 *     org.meadowmark.core.measure.PartRules#tiled}
 */
public record SurveyGroups(int[] groupOfBed, int[] groupOfScar, boolean tiled) {
  /** {@return number of groups} */
  public int count() {
    return 1
        + Math.max(
            Arrays.stream(groupOfBed).max().orElse(-1),
            Arrays.stream(groupOfScar).max().orElse(-1));
  }
}
