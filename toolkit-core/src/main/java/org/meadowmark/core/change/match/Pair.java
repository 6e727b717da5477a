package org.meadowmark.core.change.match;

/**
 * Two scars that may be the same, over some stretches. Lengths are ground metres, stretches are
 * grid positions.
 *
 * @param earlier position of the scar in the earlier survey
 * @param later position of the scar in the later survey
 * @param earlierSpans stretches of the earlier scar that the later one covers; none for a polygon,
 *     whose metres have no place
 * @param laterSpans the reverse
 * @param earlierMetres length of the earlier stretches
 * @param laterMetres length of the later stretches
 * @param closeness 1 for scars that lie on each other, towards 0 at the tolerance
 * @param meanSquare mean square distance in square ground metres; not a number with a polygon
 * @param pace metres on the later scar per metre on the earlier one, where they run side by side
 */
record Pair(
    int earlier,
    int later,
    double[] earlierSpans,
    double[] laterSpans,
    double earlierMetres,
    double laterMetres,
    double closeness,
    double meanSquare,
    double pace) {

  /** Metres that one can be the other for, at most. */
  double commonMetres() {
    return Math.min(earlierMetres, laterMetres);
  }
}
