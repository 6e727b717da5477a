package org.meadowmark.cluster.bay;

import java.util.List;
import org.meadowmark.core.model.MapArea;

/**
 * What putting the parts of a bay together takes.
 *
 * @param grid label of its analysis grid
 * @param managementAreas its management areas
 * @param scarCount its scars
 * @param tiled whether meadows are cut in tiles
 */
record BayFacts(String grid, List<MapArea> managementAreas, int scarCount, boolean tiled) {}
