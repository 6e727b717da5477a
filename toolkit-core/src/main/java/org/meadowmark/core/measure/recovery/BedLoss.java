package org.meadowmark.core.measure.recovery;

import java.util.Optional;
import org.meadowmark.core.model.Range;

/**
 * Loss in one bed; overlapping scars count once.
 *
 * @param bedId the bed
 * @param species key of its species, or empty
 * @param scarredSquareMetres area of the union of footprints in it
 * @param forecastSquareMetres the part of it by scars whose edge rate is known
 * @param alone discounted service-hectare-years lost without planting, by that part; empty where
 *     there is none but there are scars
 * @param planted the same with every such scar planted in the base year
 */
public record BedLoss(
    String bedId,
    String species,
    double scarredSquareMetres,
    double forecastSquareMetres,
    Optional<Range> alone,
    Optional<Range> planted) {}
