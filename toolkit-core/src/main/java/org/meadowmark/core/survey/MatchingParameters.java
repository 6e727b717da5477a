package org.meadowmark.core.survey;

/**
 * Choices for matching scars of two surveys. Defaults, limits and sources are rows of {@code
 * parameters.csv}.
 *
 * @param leastToleranceMetres what the combined positional accuracy is taken as at least
 * @param leastShare share of the shorter of two scars, in 0–1, from which metres in common make one
 *     of them the other
 * @param directionDegrees largest mean angle between two scars along their overlap
 * @param lengthChange share of a scar's length, in 0–1, above which a change is no longer put down
 *     to mapping
 */
public record MatchingParameters(
    double leastToleranceMetres, double leastShare, double directionDegrees, double lengthChange) {}
