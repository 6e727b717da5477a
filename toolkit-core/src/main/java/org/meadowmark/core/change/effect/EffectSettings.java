package org.meadowmark.core.change.effect;

import org.meadowmark.core.survey.ExposureBasis;

/**
 * Choices for the effect of markers.
 *
 * @param basis what new scar metres are divided by
 * @param confidence share of intervals that are to hold the truth, such as 0.95
 * @param mostPermutations arrangements of the marks that are counted; all of them where there are
 *     no more, else so many draws
 * @param seed seed of the draws
 * @param rateFactor a control's rate before is at most so many times that of the marked segments,
 *     and at least the same part of it
 * @param distanceMetres a control is farther than this along the channels from every marked segment
 * @param leastBedHectares a segment with less bed in reach in any season takes no part
 * @param drop drop of the rate that is to be detected, in 0–1
 * @param power chance of detecting it that is asked for, in 0–1
 * @param mostFurtherSeasons further seasons that are looked ahead
 */
public record EffectSettings(
    ExposureBasis basis,
    double confidence,
    int mostPermutations,
    long seed,
    double rateFactor,
    double distanceMetres,
    double leastBedHectares,
    double drop,
    double power,
    int mostFurtherSeasons) {}
