package org.meadowmark.core.measure.connectivity;

/**
 * What filling gaps would restore.
 *
 * @param numeratorGainSquareHectares growth of Σᵢ Σⱼ aᵢ·aⱼ·p*ᵢⱼ
 * @param equivalentAreaGainHectares growth of its square root
 */
public record FillingGain(double numeratorGainSquareHectares, double equivalentAreaGainHectares) {}
