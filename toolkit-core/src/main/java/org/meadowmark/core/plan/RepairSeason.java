package org.meadowmark.core.plan;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What to plant in one season.
 *
 * @param number 1 is the first
 * @param from first day of the planting window; empty where the survey has no date
 * @param to last day likewise
 * @param scars in the order of visits
 * @param siteCount sites, each with its mobilisation
 * @param cost with mobilisation
 * @param benefit what its scars are worth together, planted in this season after those of earlier
 *     ones
 * @param connected what they restore of connectivity, after those of earlier seasons; not
 *     discounted; empty where that was not worked out
 * @param wayMetres length of the way between the scars, on the grid, in straight lines
 * @param shortestWayMetres no way is shorter
 */
public record RepairSeason(
    int number,
    Optional<LocalDate> from,
    Optional<LocalDate> to,
    List<RepairScar> scars,
    int siteCount,
    double cost,
    double benefit,
    Optional<Connected> connected,
    double wayMetres,
    double shortestWayMetres) {
  /**
   * Keeps a copy of the list that cannot be changed.
   *
   * @param number 1 is the first
   * @param from first day of the planting window; empty where the survey has no date
   * @param to last day likewise
   * @param scars in the order of visits
   * @param siteCount sites, each with its mobilisation
   * @param cost with mobilisation
   * @param benefit what its scars are worth together, planted in this season after those of earlier
   *     ones
   * @param connected what they restore of connectivity, after those of earlier seasons; not
   *     discounted; empty where that was not worked out
   * @param wayMetres length of the way between the scars, on the grid, in straight lines
   * @param shortestWayMetres no way is shorter
   * @throws NullPointerException if the list or an entry of it is null
   */
  public RepairSeason {
    scars = List.copyOf(scars);
  }

  /** {@return planting units} */
  public long units() {
    return scars.stream().mapToLong(RepairScar::units).sum();
  }

  /** {@return fill that is known to be needed} */
  public double fillCubicMetres() {
    return scars.stream().mapToDouble(scar -> scar.fillCubicMetres().orElse(0)).sum();
  }
}
