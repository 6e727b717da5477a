package org.meadowmark.core.measure;

import java.util.OptionalDouble;

/**
 * How well the patches of a scope hang together for an animal that crosses gaps.
 *
 * @param integralIndex integral index of connectivity: links of at most the crossing distance, each
 *     link on the way counts (Pascual-Hortal and Saura 2006); empty where there are too many
 *     patches
 * @param probability probability of connectivity: a gap as wide as the crossing distance is crossed
 *     half the time (Saura and Pascual-Hortal 2007)
 * @param equivalentAreaHectares equivalent connected area: the one patch that would give the same
 *     probability (Saura and others 2011)
 * @param equivalentAreaStandardErrorHectares standard error of that area; empty where it is exact
 */
public record Connectedness(
    OptionalDouble integralIndex,
    double probability,
    double equivalentAreaHectares,
    OptionalDouble equivalentAreaStandardErrorHectares) {}
