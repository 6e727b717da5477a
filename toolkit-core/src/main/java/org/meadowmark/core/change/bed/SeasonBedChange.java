package org.meadowmark.core.change.bed;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.meadowmark.core.model.Ids;

/**
 * Change of the beds between two surveys. Lists are in {@link Ids#ORDER} of ids, beds of the
 * earlier survey before those of the later one.
 *
 * @param earlierDate date of the earlier survey
 * @param laterDate date of the later survey
 * @param toleranceMetres combined positional accuracy at 95 %: slivers are narrower, and footprints
 *     of scars are widened by it
 * @param beds every bed of both surveys
 * @param areas every management area of the later survey; areas may overlap, and need not cover all
 * @param whole the two surveys as a whole
 */
public record SeasonBedChange(
    LocalDate earlierDate,
    LocalDate laterDate,
    double toleranceMetres,
    List<BedChange> beds,
    List<AreaChange> areas,
    GrassChange whole) {
  /**
   * Refuses a change of which a part is missing, and keeps copies of the lists.
   *
   * @param earlierDate date of the earlier survey
   * @param laterDate date of the later survey
   * @param toleranceMetres combined positional accuracy at 95 %: slivers are narrower, and
   *     footprints of scars are widened by it
   * @param beds every bed of both surveys
   * @param areas every management area of the later survey; areas may overlap, and need not cover
   *     all
   * @param whole the two surveys as a whole
   * @throws NullPointerException if anything is null
   */
  public SeasonBedChange {
    Objects.requireNonNull(earlierDate, "earlierDate");
    Objects.requireNonNull(laterDate, "laterDate");
    Objects.requireNonNull(whole, "whole");
    beds = List.copyOf(beds);
    areas = List.copyOf(areas);
  }
}
