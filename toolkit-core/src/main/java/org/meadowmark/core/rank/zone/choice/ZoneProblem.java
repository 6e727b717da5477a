package org.meadowmark.core.rank.zone.choice;

import org.meadowmark.core.rank.network.SegmentNetwork;

/**
 * What to choose zones for.
 *
 * @param network how segments hang together; where two choices are as good the lower positions win,
 *     so positions must be in the order of ids
 * @param valuesMetres scar length attributed to each segment, or another value to cover
 * @param mostZones largest number of zones
 * @param totalLengthMetres largest total length of zones
 */
public record ZoneProblem(
    SegmentNetwork network, double[] valuesMetres, int mostZones, double totalLengthMetres) {

  /** Lengths that were added up in another order may differ by rounding. */
  private static final double ROUNDING = 1e-9;

  /**
   * Keeps a copy of the values, and refuses figures out of their limits.
   *
   * @param network how segments hang together; where two choices are as good the lower positions
   *     win, so positions must be in the order of ids
   * @param valuesMetres scar length attributed to each segment, or another value to cover
   * @param mostZones largest number of zones
   * @param totalLengthMetres largest total length of zones
   * @throws IllegalArgumentException if values and segments differ in number, a value is negative
   *     or not finite, or a limit is negative
   */
  public ZoneProblem {
    valuesMetres = valuesMetres.clone();
    if (valuesMetres.length != network.size()) {
      throw new IllegalArgumentException("one value for each segment");
    }
    for (double value : valuesMetres) {
      if (!(value >= 0) || Double.isInfinite(value)) {
        throw new IllegalArgumentException("no value to cover: " + value);
      }
    }
    if (mostZones < 0 || !(totalLengthMetres >= 0)) {
      throw new IllegalArgumentException("zones and length must be 0 or more");
    }
  }

  /**
   * {@return the same for another total length}
   *
   * @param otherLengthMetres largest total length of zones, 0 or more
   * @throws IllegalArgumentException if the length is negative
   */
  public ZoneProblem within(double otherLengthMetres) {
    return new ZoneProblem(network, valuesMetres, mostZones, otherLengthMetres);
  }

  /** {@return a copy of the values, one for each segment, in the order of the network} */
  @Override
  public double[] valuesMetres() {
    return valuesMetres.clone();
  }

  /** The total length with a share of 1e-9 allowed for rounding. */
  double limitMetres() {
    return totalLengthMetres * (1 + ROUNDING);
  }
}
