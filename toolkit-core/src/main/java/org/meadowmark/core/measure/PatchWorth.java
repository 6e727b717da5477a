package org.meadowmark.core.measure;

/**
 * What the probability of connectivity of the survey loses when a patch goes, in percent of it, and
 * the three parts that add up to it (Saura and Rubio 2010).
 *
 * @param patchId the patch
 * @param lossPercent the loss
 * @param withinPercent part of the patch's own area
 * @param fluxPercent part of ways that start or end in it
 * @param connectorPercent part of ways between others that lead over it and have no equal way round
 */
public record PatchWorth(
    String patchId,
    double lossPercent,
    double withinPercent,
    double fluxPercent,
    double connectorPercent) {}
