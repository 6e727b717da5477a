package org.meadowmark.core.measure.recovery;

import java.util.Optional;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.model.Range;

/**
 * Loss in one management area, outside all of them, or in the whole survey; overlapping scars count
 * once.
 *
 * @param kind which of the three
 * @param areaId id of the management area, or empty
 * @param label name for people
 * @param scarredSquareMetres scarred area of its beds
 * @param forecastSquareMetres the part of it by scars whose edge rate is known
 * @param alone discounted service-hectare-years lost without planting, by that part; empty where
 *     the part is 0 and there are scars
 * @param planted the same with every such scar planted in the base year
 * @param compensatingHectares area of new planting that makes good for the loss without planting
 */
public record AreaLoss(
    Kind kind,
    String areaId,
    String label,
    double scarredSquareMetres,
    double forecastSquareMetres,
    Optional<Range> alone,
    Optional<Range> planted,
    Optional<Range> compensatingHectares) {}
