package org.meadowmark.core.survey;

/**
 * The moment of a year at which the year's service counts.
 *
 * <p>Counting at the start understates the loss and overstates the gain when recovery is linear:
 * Thur (2007), <i>Refining the Use of Habitat Equivalency Analysis</i>, Environmental Management
 * 40:161–170 (abstract read).
 */
public enum WithinYear {
  /** Discounted from the first day of the year. */
  START("start", 0),
  /** Discounted from the middle of the year. */
  MIDDLE("middle", 0.5),
  /** Discounted from the last day of the year. */
  END("end", 1);

  private final String key;
  private final double years;

  WithinYear(String key, double years) {
    this.key = key;
    this.years = years;
  }

  /** {@return name used in a survey file and printed with every result} */
  public String key() {
    return key;
  }

  /** {@return years from the start of the year} */
  public double years() {
    return years;
  }
}
