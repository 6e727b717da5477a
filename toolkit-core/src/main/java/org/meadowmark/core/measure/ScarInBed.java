package org.meadowmark.core.measure;

/**
 * The part of a scar in one bed, inside the surveyed area.
 *
 * @param scarId scar
 * @param bedId bed
 * @param lengthMetres length of line ∩ bed
 * @param footprintSquareMetres area of footprint ∩ bed, this scar alone
 */
public record ScarInBed(
    String scarId, String bedId, double lengthMetres, double footprintSquareMetres) {}
