package org.meadowmark.core.survey;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.meadowmark.core.model.Range;

/**
 * Choices for the recovery of scars, the loss until then and the spread of planted grass; the
 * discount rate is in {@link ZoneParameters}. Defaults, limits and sources are rows of {@code
 * parameters.csv}.
 *
 * @param unlistedRecoveryYears time for a scar to close where no time is published for the species
 * @param unlistedScarWidthMetres width of a scar that closes in that time
 * @param excavationDoublingMetres depth of excavation that doubles the time
 * @param withinYear when a year's service counts
 * @param lossBaseYear calendar year that losses are discounted to, where it is stated
 * @param lossHorizonYears years after which nothing counts
 * @param plantingSpacingMetres distance between planting units
 * @param plantingSurvival share of units that live, in 0–1
 * @param plantingUnitRadiusMetres radius of what a unit covers at first
 * @param projectStartYears years until a compensating planting begins
 * @param projectGrowthYears time in which its service rises to that of whole grass
 * @param projectLifeYears years from its start after which its service no longer counts
 * @param newPatchesPerYear area of new patches from seed and fragments in a year, as a share of the
 *     planted area
 * @param observedRecoveryYears time for a scar of {@code unlistedScarWidthMetres} to close as it
 *     was seen here, by species; stands above published times
 */
public record RecoveryParameters(
    Optional<Range> unlistedRecoveryYears,
    double unlistedScarWidthMetres,
    double excavationDoublingMetres,
    WithinYear withinYear,
    OptionalDouble lossBaseYear,
    int lossHorizonYears,
    double plantingSpacingMetres,
    Range plantingSurvival,
    double plantingUnitRadiusMetres,
    int projectStartYears,
    double projectGrowthYears,
    int projectLifeYears,
    Range newPatchesPerYear,
    Map<String, Range> observedRecoveryYears) {
  /**
   * Keeps its own copy of the observed times, in order of the species' keys.
   *
   * @param unlistedRecoveryYears time for a scar to close where no time is published for the
   *     species
   * @param unlistedScarWidthMetres width of a scar that closes in that time
   * @param excavationDoublingMetres depth of excavation that doubles the time
   * @param withinYear when a year's service counts
   * @param lossBaseYear calendar year that losses are discounted to, where it is stated
   * @param lossHorizonYears years after which nothing counts
   * @param plantingSpacingMetres distance between planting units
   * @param plantingSurvival share of units that live, in 0–1
   * @param plantingUnitRadiusMetres radius of what a unit covers at first
   * @param projectStartYears years until a compensating planting begins
   * @param projectGrowthYears time in which its service rises to that of whole grass
   * @param projectLifeYears years from its start after which its service no longer counts
   * @param newPatchesPerYear area of new patches from seed and fragments in a year, as a share of
   *     the planted area
   * @param observedRecoveryYears time for a scar of {@code unlistedScarWidthMetres} to close as it
   *     was seen here, by species; stands above published times
   * @throws NullPointerException if there is no map of observed times
   */
  public RecoveryParameters {
    observedRecoveryYears = Collections.unmodifiableMap(new TreeMap<>(observedRecoveryYears));
  }
}
