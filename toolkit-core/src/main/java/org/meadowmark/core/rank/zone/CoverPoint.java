package org.meadowmark.core.rank.zone;

/**
 * A point of the cover-against-length curve.
 *
 * @param lengthMetres total zone length that was allowed
 * @param usedMetres total zone length of the choice
 * @param coveredMetres scar length that the best choice covers
 * @param upperBoundMetres no choice covers more than this
 * @param worstFirstMetres scar length that "worst segments first" covers with as many zones and as
 *     much length
 */
public record CoverPoint(
    double lengthMetres,
    double usedMetres,
    double coveredMetres,
    double upperBoundMetres,
    double worstFirstMetres) {

  /** {@return whether the choice is proven best} */
  public boolean isProvenBest() {
    return upperBoundMetres <= coveredMetres * (1 + 1e-9);
  }
}
