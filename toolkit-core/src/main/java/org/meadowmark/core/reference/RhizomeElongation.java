package org.meadowmark.core.reference;

/**
 * Published growth of a species' rhizomes, for the spread of planted grass. Scars close far slower:
 * see {@link ScarRecoveryTime}.
 *
 * @param key key of the species, or a name of its own where no bed is mapped as it
 * @param scientificName binomial
 * @param metresPerYear horizontal elongation, more than 0
 * @param source where the row comes from
 */
public record RhizomeElongation(
    String key, String scientificName, double metresPerYear, String source) {}
