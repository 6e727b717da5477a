package org.meadowmark.cluster.bay;

import java.util.List;
import org.meadowmark.core.write.record.FileDigest;

/**
 * What is known of a bay before its parts are measured.
 *
 * @param grid label of its analysis grid
 * @param scarCount its scars
 * @param tiled whether meadows are cut in tiles
 * @param rows digests of the rows that it was read from, by layer
 */
record BayFacts(String grid, int scarCount, boolean tiled, List<FileDigest> rows) {}
