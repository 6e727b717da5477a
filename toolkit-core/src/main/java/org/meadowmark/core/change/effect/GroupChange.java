package org.meadowmark.core.change.effect;

/**
 * Mean change of the rates of a group of segments, weighted by exposure.
 *
 * @param number segments
 * @param mean Σwᵢcᵢ / Σwᵢ
 * @param variance variance of the mean, n/(n − 1)·Σ(wᵢ/Σw)²(cᵢ − mean)²; NaN with one segment
 * @param degreesOfFreedom (Σw)²/Σw² − 1: n − 1 where all weigh the same
 */
record GroupChange(int number, double mean, double variance, double degreesOfFreedom) {

  static GroupChange of(double[] changes, double[] weights, int number) {
    double weight = 0;
    double squares = 0;
    double sum = 0;
    for (int i = 0; i < number; i++) {
      weight += weights[i];
      squares += weights[i] * weights[i];
      sum += weights[i] * changes[i];
    }
    double mean = sum / weight;
    double spread = 0;
    for (int i = 0; i < number; i++) {
      double part = weights[i] / weight * (changes[i] - mean);
      spread += part * part;
    }
    return new GroupChange(
        number,
        mean,
        number > 1 ? spread * number / (number - 1) : Double.NaN,
        weight * weight / squares - 1);
  }
}
