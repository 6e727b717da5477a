package org.meadowmark.core.plan.layout;

import org.locationtech.jts.geom.Point;

/**
 * A planting unit in its place.
 *
 * @param scarId the scar
 * @param number from 1 along the rows of the scar
 * @param row row from 1
 * @param geometry where it goes, on the analysis grid
 */
public record PlantingUnit(String scarId, int number, int row, Point geometry) {}
