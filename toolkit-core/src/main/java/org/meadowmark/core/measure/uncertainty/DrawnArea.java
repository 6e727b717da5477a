package org.meadowmark.core.measure.uncertainty;

import java.util.List;

/**
 * Scarred area of a piece of grass, or of several, in every draw, in ground units: with all errors,
 * with width errors alone, and with position errors alone.
 */
public final class DrawnArea {
  /** Which errors are drawn. */
  enum Errors {
    ALL,
    WIDTH,
    POSITION
  }

  private final double measured;
  private final double[][] drawn;

  private DrawnArea(double measured, double[][] drawn) {
    this.measured = measured;
    this.drawn = drawn;
  }

  /** An area that no error changes. */
  static DrawnArea constant(double measured) {
    return new DrawnArea(measured, null);
  }

  /**
   * An area with its changes.
   *
   * @param measured measured area
   * @param largest no draw is larger
   * @param changes change by draw, a row for each of {@link Errors}
   */
  static DrawnArea of(double measured, double largest, double[][] changes) {
    double[][] drawn = new double[changes.length][];
    for (int i = 0; i < changes.length; i++) {
      drawn[i] = new double[changes[i].length];
      for (int draw = 0; draw < drawn[i].length; draw++) {
        double area = measured + changes[i][draw];
        drawn[i][draw] = Math.min(Math.max(largest, measured), Math.max(0, area));
      }
    }
    return new DrawnArea(measured, drawn);
  }

  /** {@return pieces together, draw by draw, so that what they share is not averaged away} */
  public static DrawnArea sum(List<DrawnArea> pieces, int draws) {
    double measured = 0;
    double[][] sums = new double[Errors.values().length][draws];
    for (DrawnArea piece : pieces) {
      measured += piece.measured;
      for (Errors errors : Errors.values()) {
        double[] row = sums[errors.ordinal()];
        for (int draw = 0; draw < draws; draw++) {
          row[draw] += piece.area(errors, draw);
        }
      }
    }
    return new DrawnArea(measured, sums);
  }

  double area(Errors errors, int draw) {
    return drawn == null ? measured : drawn[errors.ordinal()][draw];
  }
}
