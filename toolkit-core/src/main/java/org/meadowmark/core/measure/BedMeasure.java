package org.meadowmark.core.measure;

import org.meadowmark.core.model.Bed;

/**
 * One bed.
 *
 * @param bed the bed
 * @param damage damage of the bed
 * @param fragmentation its pieces, the bed taken alone
 */
public record BedMeasure(Bed bed, Damage damage, Fragmentation fragmentation) {}
