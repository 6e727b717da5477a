package org.meadowmark.core.rank.evidence;

/**
 * What was seen along the part of a scar that belongs to one segment. Lengths are ground metres;
 * sums over pieces are plain sums, so parts add up.
 *
 * @param metres length of the part
 * @param nearestMetres smallest distance to the channel's centreline over the sample points
 * @param angleMetres angle to the channel in degrees (0–90) times length
 * @param alongMetres length at a small angle to the channel
 * @param alongEdgeMetres the part of that near the channel's edge
 * @param insideBendMetres the part of that on the inside of a bend
 * @param acrossMetres length at a large angle to the channel
 * @param depthKnownMetres length where the water's depth is known
 * @param depthMetres depth in metres times length, where it is known
 * @param shallowMetres length where the water is shallower than the boat's draft
 */
public record PartEvidence(
    double metres,
    double nearestMetres,
    double angleMetres,
    double alongMetres,
    double alongEdgeMetres,
    double insideBendMetres,
    double acrossMetres,
    double depthKnownMetres,
    double depthMetres,
    double shallowMetres) {

  /** Nothing seen yet. */
  public static final PartEvidence NONE =
      new PartEvidence(0, Double.POSITIVE_INFINITY, 0, 0, 0, 0, 0, 0, 0, 0);

  /**
   * {@return both together: lengths and weighted sums added, the smaller of the nearest distances}
   *
   * @param other evidence of another piece
   */
  public PartEvidence plus(PartEvidence other) {
    return new PartEvidence(
        metres + other.metres,
        Math.min(nearestMetres, other.nearestMetres),
        angleMetres + other.angleMetres,
        alongMetres + other.alongMetres,
        alongEdgeMetres + other.alongEdgeMetres,
        insideBendMetres + other.insideBendMetres,
        acrossMetres + other.acrossMetres,
        depthKnownMetres + other.depthKnownMetres,
        depthMetres + other.depthMetres,
        shallowMetres + other.shallowMetres);
  }
}
