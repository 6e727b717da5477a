package org.meadowmark.samples;

import org.meadowmark.core.model.Bed;

/**
 * What a crew noted at a few scars and beds of the later surveys, so that a plan has something to
 * protect first. Rare, by number: no draw is spent, so all else stays as it was.
 */
final class SampleNotes {
  private static final String YES = "yes";
  private static final long SCARS_A_NOTE = 250;
  private static final long GRAZED = 7;
  private static final long SCARRED_AGAIN = 19;
  private static final int BEDS_A_NOTE = 40;

  private SampleNotes() {}

  /** Whether leaf tips are squared off. */
  static String grazed(SampleScar scar) {
    return scar.truthId() % SCARS_A_NOTE == GRAZED ? YES : null;
  }

  /** Whether the same line is scarred again and again. */
  static String scarredAgain(SampleScar scar) {
    return scar.truthId() % SCARS_A_NOTE == SCARRED_AGAIN ? YES : null;
  }

  /** Whether the bottom of a bed is bare muck. */
  static String muck(Bed bed, int place) {
    return place % BEDS_A_NOTE == 0 && !bed.species().isEmpty() ? YES : null;
  }
}
