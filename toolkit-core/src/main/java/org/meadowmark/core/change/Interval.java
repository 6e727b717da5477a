package org.meadowmark.core.change;

/**
 * Limits between which a figure lies with a stated confidence.
 *
 * @param low lower limit
 * @param high upper limit
 */
public record Interval(double low, double high) {
  /**
   * {@return whether a value lies between the limits}
   *
   * @param value a figure in the same unit; a limit itself lies between them
   */
  public boolean holds(double value) {
    return low <= value && value <= high;
  }
}
