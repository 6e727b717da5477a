package org.meadowmark.core.measure.connectivity;

/**
 * Integral index of connectivity at one crossing distance.
 *
 * @param crossingMetres widest gap that is crossed
 * @param landscapeHectares area A_L that the index is related to
 * @param numeratorSquareHectares Σᵢ Σⱼ aᵢ·aⱼ / (1 + nlᵢⱼ)
 * @param integralIndexOfConnectivity numerator / A_L²
 * @param equivalentAreaHectares square root of the numerator
 */
public record BinaryIndex(
    double crossingMetres,
    double landscapeHectares,
    double numeratorSquareHectares,
    double integralIndexOfConnectivity,
    double equivalentAreaHectares) {}
