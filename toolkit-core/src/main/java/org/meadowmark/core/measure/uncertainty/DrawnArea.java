package org.meadowmark.core.measure.uncertainty;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

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

  /**
   * Areas are added in multiples of 2⁻²⁷ m², so that sums are exact up to 67 km² and do not depend
   * on the order: parts of a survey add up to the survey.
   */
  private static final double STEPS_PER_SQUARE_METRE = 1L << 27;

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

  /**
   * {@return pieces together, draw by draw, so that what they share is not averaged away}
   *
   * @param pieces pieces that do not overlap, in any order, all drawn with the same model
   * @param draws number of draws of the model
   */
  public static DrawnArea sum(List<DrawnArea> pieces, int draws) {
    double measured = 0;
    double[][] sums = new double[Errors.values().length][draws];
    for (DrawnArea piece : pieces) {
      measured += piece.measured;
      for (Errors errors : Errors.values()) {
        double[] row = sums[errors.ordinal()];
        for (int draw = 0; draw < draws; draw++) {
          row[draw] += inSteps(piece.area(errors, draw));
        }
      }
    }
    return new DrawnArea(measured, sums);
  }

  private static double inSteps(double area) {
    return Math.rint(area * STEPS_PER_SQUARE_METRE) / STEPS_PER_SQUARE_METRE;
  }

  /**
   * {@return the areas of all draws in square metres, a row with all errors, one with those of
   * widths alone, and one with those of positions alone}
   *
   * @param draws number of draws of the model
   */
  public List<double[]> rows(int draws) {
    return Arrays.stream(Errors.values())
        .map(errors -> IntStream.range(0, draws).mapToDouble(i -> area(errors, i)).toArray())
        .toList();
  }

  /**
   * {@return an area whose draws are known}
   *
   * @param measured measured area
   * @param rows as {@link #rows} gave them
   */
  public static DrawnArea ofRows(double measured, List<double[]> rows) {
    return new DrawnArea(measured, rows.toArray(double[][]::new));
  }

  double area(Errors errors, int draw) {
    return drawn == null ? measured : drawn[errors.ordinal()][draw];
  }
}
