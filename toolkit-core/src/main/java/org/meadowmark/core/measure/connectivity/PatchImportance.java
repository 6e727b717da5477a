package org.meadowmark.core.measure.connectivity;

/**
 * What an index loses when one patch goes, in percent of the index: 100·(I − I without k) / I.
 *
 * <p>The three parts add up to the whole: Saura and Rubio (2010), <i>A common currency for the
 * different ways in which patches and links can contribute to habitat availability and connectivity
 * in the landscape</i>, Ecography 33:523–537. All are NaN where the index is 0.
 *
 * @param node the patch
 * @param totalPercent the loss
 * @param withinPercent part of the patch's own area, a_k²
 * @param fluxPercent part of the paths that start or end in the patch
 * @param connectorPercent part of the paths between others that lead over the patch and have no
 *     equal way round
 */
public record PatchImportance(
    int node,
    double totalPercent,
    double withinPercent,
    double fluxPercent,
    double connectorPercent) {}
