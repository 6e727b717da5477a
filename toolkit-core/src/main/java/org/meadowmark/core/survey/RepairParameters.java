package org.meadowmark.core.survey;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Choices for the repair plan. Defaults, limits and sources are rows of {@code parameters.csv}.
 * Money is in whatever currency the user counts in.
 *
 * @param pattern how rows of units lie
 * @param unitCost cost of a planting unit in the ground
 * @param fillCostPerCubicMetre cost of fill in place
 * @param monitoringCost cost of following one repair up
 * @param mobilisationCost cost of getting a crew to a site, shared by its scars
 * @param siteDistanceMetres scars at most this far from the first of a site belong to it
 * @param fillThresholdMetres scars dug out deeper are filled first
 * @param grassWeight benefit of a discounted service-hectare-year
 * @param connectivityWeight benefit of a hectare of equivalent connected area
 * @param markerEffect part of new scars that a marked zone keeps away, in 0–1
 * @param establishmentYears years in which a new scar undoes a planting
 * @param protectFirstChance chance a year of being scarred again from which a scar is not planted
 * @param protectFirstShare share of new scar length on ground scarred in an earlier season from
 *     which a scar is not planted, in 0–1
 * @param deepestMetres water depth beyond which light is too little, where stated
 * @param firstMonth first month of the planting window, 1–12
 * @param lastMonth its last month
 * @param budget what may be spent in all; empty for figures without a plan
 * @param seasonBudget what may be spent in one season, where that is limited
 * @param mostSeasons seasons looked ahead
 * @param placeholders names of the costs that the user has not set
 */
public record RepairParameters(
    PlantingPattern pattern,
    double unitCost,
    double fillCostPerCubicMetre,
    double monitoringCost,
    double mobilisationCost,
    double siteDistanceMetres,
    double fillThresholdMetres,
    double grassWeight,
    double connectivityWeight,
    double markerEffect,
    double establishmentYears,
    double protectFirstChance,
    double protectFirstShare,
    OptionalDouble deepestMetres,
    int firstMonth,
    int lastMonth,
    OptionalDouble budget,
    OptionalDouble seasonBudget,
    int mostSeasons,
    Placeholders placeholders) {

  /**
   * Costs at their defaults, which are placeholders.
   *
   * @param names names of the parameters
   */
  public record Placeholders(List<String> names) {
    /**
     * Keeps a copy of the list.
     *
     * @param names names of the parameters
     * @throws NullPointerException if there is no list, or a name in it is null
     */
    public Placeholders {
      names = List.copyOf(names);
    }
  }
}
