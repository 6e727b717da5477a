package org.meadowmark.core.measure.connectivity;

import java.util.OptionalDouble;

/**
 * How the probability of crossing a gap falls with its width.
 *
 * <p>p = exp(−k·d) with k = ln 2 / median, so that half of the animals cross a gap as wide as the
 * median crossing distance: the negative exponential of Saura and Pascual-Hortal (2007), <i>A new
 * habitat availability index to integrate connectivity in landscape conservation planning</i>,
 * Landscape and Urban Planning 83:91–103.
 *
 * @param medianCrossingMetres gap that half of the animals cross; empty where the graph gives the
 *     probabilities itself
 * @param probabilityCutoff paths less probable than this count as impossible; above 0, below 1
 */
public record CrossingModel(OptionalDouble medianCrossingMetres, double probabilityCutoff) {
  /**
   * Cut-off unless another is asked for. Numerators are too small by at most this share of the
   * squared area, and the results give the bound that applies.
   */
  public static final double DEFAULT_CUTOFF = 1e-6;

  /**
   * Refuses figures out of their limits.
   *
   * @param medianCrossingMetres gap that half of the animals cross; empty where the graph gives the
   *     probabilities itself
   * @param probabilityCutoff paths less probable than this count as impossible; above 0, below 1
   * @throws IllegalArgumentException if the median is not above 0 or not finite, or the cut-off is
   *     not above 0 and below 1
   */
  public CrossingModel {
    if (medianCrossingMetres.isPresent()) {
      double median = medianCrossingMetres.getAsDouble();
      if (!(median > 0) || Double.isInfinite(median)) {
        throw new IllegalArgumentException("median crossing distance is " + median + " m");
      }
    }
    if (!(probabilityCutoff >= Double.MIN_NORMAL && probabilityCutoff < 1)) {
      throw new IllegalArgumentException("probability cut-off is " + probabilityCutoff);
    }
  }

  /**
   * {@return the model for graphs of distances, with the usual cut-off}
   *
   * @param medianCrossingMetres gap that half of the animals cross, more than 0
   * @throws IllegalArgumentException if the distance is not above 0 or not finite
   */
  public static CrossingModel ofMedianMetres(double medianCrossingMetres) {
    return new CrossingModel(OptionalDouble.of(medianCrossingMetres), DEFAULT_CUTOFF);
  }

  /**
   * {@return the model for graphs that give the probabilities themselves, with the usual cut-off}
   */
  public static CrossingModel asGiven() {
    return new CrossingModel(OptionalDouble.empty(), DEFAULT_CUTOFF);
  }

  /**
   * {@return the same with another cut-off}
   *
   * @param cutoff paths less probable than this count as impossible; above 0, below 1
   * @throws IllegalArgumentException if it is out of these limits
   */
  public CrossingModel withCutoff(double cutoff) {
    return new CrossingModel(medianCrossingMetres, cutoff);
  }

  Decay.Exponential decay(HabitatGraph graph) {
    boolean distances = graph.kind() == HabitatGraph.Lengths.METRES;
    if (distances != medianCrossingMetres.isPresent()) {
      throw new IllegalArgumentException(
          distances
              ? "a graph of distances needs a median crossing distance"
              : "a graph of probabilities takes no median crossing distance");
    }
    return new Decay.Exponential(
        distances ? Math.log(2) / medianCrossingMetres.getAsDouble() : 1, probabilityCutoff);
  }
}
