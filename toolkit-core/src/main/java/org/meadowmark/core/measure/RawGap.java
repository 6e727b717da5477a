package org.meadowmark.core.measure;

import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.MultiLineString;

/**
 * A scar that separates two pieces.
 *
 * @param scar position of the scar in the survey
 * @param first position of one piece
 * @param second position of the other, larger
 * @param minimumWidthMetres smallest bare width across it, on the ground
 * @param meanWidthMetres mean of that width weighted by length; empty for a polygon scar
 * @param lengthMetres length of scar line that separates them, on the ground
 * @param runs the steps of the line that do, see {@link ScarSteps#stretches}; none for a polygon
 *     scar
 * @param way for a polygon scar the shortest way across
 */
record RawGap(
    int scar,
    int first,
    int second,
    double minimumWidthMetres,
    OptionalDouble meanWidthMetres,
    double lengthMetres,
    int[] runs,
    Optional<MultiLineString> way) {
  static final Comparator<RawGap> ORDER =
      Comparator.comparingInt(RawGap::scar)
          .thenComparingInt(RawGap::first)
          .thenComparingInt(RawGap::second);

  /** The same gap between pieces that are numbered anew. */
  RawGap between(int a, int b) {
    return new RawGap(
        scar,
        Math.min(a, b),
        Math.max(a, b),
        minimumWidthMetres,
        meanWidthMetres,
        lengthMetres,
        runs,
        way);
  }
}
