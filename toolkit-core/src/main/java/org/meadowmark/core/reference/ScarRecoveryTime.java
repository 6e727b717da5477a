package org.meadowmark.core.reference;

import org.meadowmark.core.model.Range;

/**
 * How long scars in a species were seen to take to close.
 *
 * <p>This is not the growth of a rhizome: at 0.69 m a year a scar of 0.30 m would close from both
 * sides in a few months, and years were seen.
 *
 * @param speciesKey key of the species
 * @param years time to close, more than 0
 * @param scarWidthMetres width of the scars it was seen at, more than 0
 * @param source where the row comes from
 */
public record ScarRecoveryTime(
    String speciesKey, Range years, double scarWidthMetres, String source) {

  /**
   * {@return how fast an edge moves on a side: half the width over the time; low is the slow one}
   */
  public Range edgeMetresPerYear() {
    double half = scarWidthMetres / 2;
    return new Range(half / years.high(), half / years.middle(), half / years.low());
  }
}
