package org.meadowmark.core.measure.uncertainty;

import java.util.Optional;
import org.locationtech.jts.geom.Geometry;

/**
 * A scar with its errors.
 *
 * @param id id of the scar; its draws follow from it and the seed alone
 * @param geometry whole line or outline on the grid
 * @param gridWidthMetres width of a line on the grid; 0 for a polygon
 * @param lengthFactor grid length divided by ground length at the scar
 * @param widthVariation coefficient of variation of the width; 0 for a polygon
 * @param sharedWidthError name of the width error that the scar shares with others, for a width
 *     that was not measured but taken from a table; empty where its error is its own
 */
public record UncertainScar(
    String id,
    Geometry geometry,
    double gridWidthMetres,
    double lengthFactor,
    double widthVariation,
    Optional<String> sharedWidthError) {}
