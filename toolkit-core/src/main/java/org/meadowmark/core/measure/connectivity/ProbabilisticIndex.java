package org.meadowmark.core.measure.connectivity;

/**
 * Probability of connectivity and the area that would give the same if it were one patch.
 *
 * @param model crossing probabilities
 * @param landscapeHectares area A_L that the index is related to
 * @param numeratorSquareHectares Σᵢ Σⱼ aᵢ·aⱼ·p*ᵢⱼ
 * @param numeratorShortfallSquareHectares most that the cut-off can have taken from the numerator:
 *     cut-off · Σ aᵢ·aⱼ over the connected pairs that were not counted
 * @param probabilityOfConnectivity numerator / A_L²
 * @param equivalentAreaHectares square root of the numerator
 */
public record ProbabilisticIndex(
    CrossingModel model,
    double landscapeHectares,
    double numeratorSquareHectares,
    double numeratorShortfallSquareHectares,
    double probabilityOfConnectivity,
    double equivalentAreaHectares) {}
