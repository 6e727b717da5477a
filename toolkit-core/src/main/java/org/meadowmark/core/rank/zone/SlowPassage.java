package org.meadowmark.core.rank.zone;

/**
 * What a slow zone costs a boat that passes through it.
 *
 * @param usualKilometresPerHour speed without the zone
 * @param slowKilometresPerHour speed in the zone
 * @param extraMinutes additional time for one passage over the zone's length
 */
public record SlowPassage(
    double usualKilometresPerHour, double slowKilometresPerHour, double extraMinutes) {}
