package org.meadowmark.core.measure;

import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.measure.uncertainty.DamageInterval;

/**
 * Damage of a bed, a management area or the whole survey.
 *
 * @param grassSquareMetres mapped bed area
 * @param surveyedSquareMetres the part of it inside the surveyed area; damage elsewhere is unknown
 * @param scarCount scars whose footprint touches it
 * @param scarLengthMetres length of scar lines in it, each line counted separately
 * @param scarredSquareMetres area of the union of footprints in it
 * @param share scarred area divided by surveyed area (0–1); empty where nothing was surveyed
 * @param severityKey key of the severity class, {@code unknown} where nothing was surveyed
 * @param severityShare the share that the class was read from; differs from {@code share} where the
 *     denominator is the outline of scar groups
 * @param severityDenominator what the scarred area was divided by for the class
 * @param interval how sure the scarred area is; empty where nothing was surveyed or no draws were
 *     asked for
 */
public record Damage(
    double grassSquareMetres,
    double surveyedSquareMetres,
    int scarCount,
    double scarLengthMetres,
    double scarredSquareMetres,
    OptionalDouble share,
    String severityKey,
    OptionalDouble severityShare,
    String severityDenominator,
    Optional<DamageInterval> interval) {}
