package org.meadowmark.core.plan;

import java.util.Optional;

/**
 * What a budget buys.
 *
 * @param budget the budget
 * @param cost what the greedy choice costs
 * @param benefit what it is worth together
 * @param upperBound no choice is worth more
 * @param scars scars planted
 * @param units planting units
 * @param connected what it restores of connectivity; empty where that was not worked out
 */
public record CurvePoint(
    double budget,
    double cost,
    double benefit,
    double upperBound,
    int scars,
    long units,
    Optional<Connected> connected) {}
