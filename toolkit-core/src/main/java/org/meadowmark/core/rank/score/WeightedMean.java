package org.meadowmark.core.rank.score;

import java.util.Arrays;

/** Weighted means of known terms; the sum of weights is kept by which terms are missing. */
final class WeightedMean {
  private final double[] weights;
  private final double[] sumByMissingBits;

  WeightedMean(double[] weights) {
    this.weights = weights;
    this.sumByMissingBits = new double[1 << weights.length];
    Arrays.fill(sumByMissingBits, Double.NaN);
  }

  /** Mean of a segment's known terms; 0 where none with a weight is known. */
  double of(TermTable terms, int segment) {
    return mean(sum(terms, segment, -1), terms.missingBits(segment));
  }

  /** Sum of weight times term over known terms, one left out. */
  double sum(TermTable terms, int segment, int leftOut) {
    double sum = 0;
    int missing = terms.missingBits(segment);
    for (int t = 0; t < weights.length; t++) {
      if (t != leftOut && (missing & 1 << t) == 0) {
        sum += weights[t] * terms.value(t, segment);
      }
    }
    return sum;
  }

  double weight(int term) {
    return weights[term];
  }

  double mean(double sum, int missingBits) {
    double weight = sumByMissingBits[missingBits];
    if (Double.isNaN(weight)) {
      weight = 0;
      for (int t = 0; t < weights.length; t++) {
        weight += (missingBits & 1 << t) == 0 ? weights[t] : 0;
      }
      sumByMissingBits[missingBits] = weight;
    }
    return weight > 0 ? sum / weight : 0;
  }
}
