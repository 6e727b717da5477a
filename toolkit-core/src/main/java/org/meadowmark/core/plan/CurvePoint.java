package org.meadowmark.core.plan;

/**
 * What a budget buys.
 *
 * @param budget the budget
 * @param cost what the greedy choice costs
 * @param benefit what it is worth
 * @param upperBound no choice is worth more
 * @param scars scars planted
 * @param units planting units
 */
public record CurvePoint(
    double budget, double cost, double benefit, double upperBound, int scars, long units) {}
