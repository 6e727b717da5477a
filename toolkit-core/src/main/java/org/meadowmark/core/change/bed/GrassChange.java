package org.meadowmark.core.change.bed;

/**
 * How grass changed, in square ground metres inside both surveyed areas.
 *
 * <p>{@code lost = lostToScars + lostOtherwise + lostWithinAccuracy} and {@code gained =
 * gainedClearly + gainedWithinAccuracy}; {@code later − earlier = gained − lost}.
 *
 * @param earlierSquareMetres grass of the earlier survey
 * @param laterSquareMetres grass of the later survey
 * @param lostToScarsSquareMetres lost on footprints of scars of the later survey, widened by the
 *     combined positional accuracy
 * @param lostOtherwiseSquareMetres lost elsewhere, in pieces wider than the combined positional
 *     accuracy
 * @param lostWithinAccuracySquareMetres lost elsewhere, in slivers narrower than that: two drawings
 *     of the same edge
 * @param gainedClearlySquareMetres gained in pieces wider than the combined positional accuracy
 * @param gainedWithinAccuracySquareMetres gained in slivers narrower than that
 */
public record GrassChange(
    double earlierSquareMetres,
    double laterSquareMetres,
    double lostToScarsSquareMetres,
    double lostOtherwiseSquareMetres,
    double lostWithinAccuracySquareMetres,
    double gainedClearlySquareMetres,
    double gainedWithinAccuracySquareMetres) {
  /** Nothing anywhere. */
  public static final GrassChange NONE = new GrassChange(0, 0, 0, 0, 0, 0, 0);

  /** {@return all loss} */
  public double lostSquareMetres() {
    return lostToScarsSquareMetres + lostOtherwiseSquareMetres + lostWithinAccuracySquareMetres;
  }

  /** {@return all gain} */
  public double gainedSquareMetres() {
    return gainedClearlySquareMetres + gainedWithinAccuracySquareMetres;
  }

  /**
   * {@return the two together}
   *
   * @param other change of another piece of ground, which does not overlap this one
   */
  public GrassChange plus(GrassChange other) {
    return new GrassChange(
        earlierSquareMetres + other.earlierSquareMetres,
        laterSquareMetres + other.laterSquareMetres,
        lostToScarsSquareMetres + other.lostToScarsSquareMetres,
        lostOtherwiseSquareMetres + other.lostOtherwiseSquareMetres,
        lostWithinAccuracySquareMetres + other.lostWithinAccuracySquareMetres,
        gainedClearlySquareMetres + other.gainedClearlySquareMetres,
        gainedWithinAccuracySquareMetres + other.gainedWithinAccuracySquareMetres);
  }
}
