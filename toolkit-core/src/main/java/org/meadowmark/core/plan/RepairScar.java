package org.meadowmark.core.plan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.model.Range;

/**
 * What repairing one scar takes, costs and gains.
 *
 * @param measure the scar
 * @param siteId site that it shares the mobilisation with
 * @param species key of the species of its bed, or empty
 * @param areaSquareMetres footprint inside beds
 * @param rows rows of units across it; 0 for a polygon
 * @param units planting units
 * @param survivors units expected to live
 * @param excavationMetres how deep it is dug out, where mapped
 * @param fillCubicMetres fill that it takes first; empty where the excavation is not known
 * @param cost cost without mobilisation
 * @param gain discounted service-hectare-years that planting gives back while it is not scarred
 *     again; empty where no rate of regrowth is known
 * @param gainBasis where the gain comes from, or why there is none
 * @param connectivityGainHectares growth of the equivalent connected area if this scar alone were
 *     filled; empty where that was not worked out
 * @param risk of being scarred again
 * @param benefit weighted gains times the chance that it is not scarred again while it establishes
 * @param fitness whether to plant
 * @param reasons why not, or what to do first; empty where nothing speaks against it
 * @param unknowns what the survey does not tell
 */
public record RepairScar(
    ScarMeasure measure,
    String siteId,
    String species,
    double areaSquareMetres,
    int rows,
    long units,
    Range survivors,
    OptionalDouble excavationMetres,
    OptionalDouble fillCubicMetres,
    RepairCost cost,
    Optional<Range> gain,
    String gainBasis,
    OptionalDouble connectivityGainHectares,
    RescarRisk risk,
    double benefit,
    Fitness fitness,
    List<String> reasons,
    List<String> unknowns) {
  /**
   * Keeps copies of the lists that cannot be changed.
   *
   * @param measure the scar
   * @param siteId site that it shares the mobilisation with
   * @param species key of the species of its bed, or empty
   * @param areaSquareMetres footprint inside beds
   * @param rows rows of units across it; 0 for a polygon
   * @param units planting units
   * @param survivors units expected to live
   * @param excavationMetres how deep it is dug out, where mapped
   * @param fillCubicMetres fill that it takes first; empty where the excavation is not known
   * @param cost cost without mobilisation
   * @param gain discounted service-hectare-years that planting gives back while it is not scarred
   *     again; empty where no rate of regrowth is known
   * @param gainBasis where the gain comes from, or why there is none
   * @param connectivityGainHectares growth of the equivalent connected area if this scar alone were
   *     filled; empty where that was not worked out
   * @param risk of being scarred again
   * @param benefit weighted gains times the chance that it is not scarred again while it
   *     establishes
   * @param fitness whether to plant
   * @param reasons why not, or what to do first; empty where nothing speaks against it
   * @param unknowns what the survey does not tell
   * @throws NullPointerException if a list or an entry of one is null
   */
  public RepairScar {
    reasons = List.copyOf(reasons);
    unknowns = List.copyOf(unknowns);
  }

  /** {@return id of the scar} */
  public String scarId() {
    return measure.scar().id();
  }
}
