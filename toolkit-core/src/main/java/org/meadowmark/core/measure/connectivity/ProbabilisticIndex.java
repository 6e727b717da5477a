package org.meadowmark.core.measure.connectivity;

/**
 * Probability of connectivity and the area that would give the same if it were one patch.
 *
 * @param model crossing probabilities
 * @param landscapeHectares area A_L that the index is related to
 * @param numeratorSquareHectares Σᵢ Σⱼ aᵢ·aⱼ·p*ᵢⱼ
 * @param numeratorStandardErrorSquareHectares standard error of the numerator; 0 where it is exact
 * @param numeratorShortfallSquareHectares most that the cut-off can have taken from the numerator:
 *     cut-off · Σ aᵢ·aⱼ over the connected pairs that were not counted
 * @param probabilityOfConnectivity numerator / A_L²
 * @param equivalentAreaHectares square root of the numerator
 */
public record ProbabilisticIndex(
    CrossingModel model,
    double landscapeHectares,
    double numeratorSquareHectares,
    double numeratorStandardErrorSquareHectares,
    double numeratorShortfallSquareHectares,
    double probabilityOfConnectivity,
    double equivalentAreaHectares) {

  /** {@return standard error of the equivalent area, by the slope of the square root} */
  public double equivalentAreaStandardErrorHectares() {
    return equivalentAreaHectares > 0
        ? numeratorStandardErrorSquareHectares / (2 * equivalentAreaHectares)
        : 0;
  }
}
