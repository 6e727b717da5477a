package org.meadowmark.core.measure;

/**
 * What filling one scar alone would restore, at the headline crossing distance.
 *
 * @param scarId the scar
 * @param gapCount pairs of patches it separates
 * @param groupsSeparated groups of patches that it keeps apart: 1 where animals get across anyway
 * @param equivalentAreaGainHectares growth of the equivalent connected area if the patches of each
 *     pair were one
 */
public record ScarFilling(
    String scarId, int gapCount, int groupsSeparated, double equivalentAreaGainHectares) {}
