package org.meadowmark.core.measure.connectivity;

/** How much of a pair of patches counts, by the length of the shortest path between them. */
interface Decay {
  double of(double length);

  /** Longest path that counts. */
  double limit();

  /** Integral index of connectivity: 1/(1 + number of links). */
  record ByLinks() implements Decay {
    @Override
    public double of(double length) {
      return 1 / (1 + length);
    }

    @Override
    public double limit() {
      return Double.MAX_VALUE;
    }
  }

  /**
   * Probability of connectivity: exp(−rate · length) down to a cut-off.
   *
   * @param rate per unit of length
   * @param cutoff smallest probability that counts
   */
  record Exponential(double rate, double cutoff) implements Decay {
    @Override
    public double of(double length) {
      return Math.exp(-rate * length);
    }

    /** A hair beyond the cut-off, so that a path of exactly that probability counts. */
    @Override
    public double limit() {
      return -Math.log(cutoff) / rate * (1 + 1e-12);
    }
  }
}
