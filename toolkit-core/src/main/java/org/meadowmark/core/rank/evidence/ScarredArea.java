package org.meadowmark.core.rank.evidence;

import java.util.Map;

/**
 * Length times width of the scar lines of a segment, overlaps counted each time.
 *
 * @param measuredSquareMetres from measured widths, which err scar by scar
 * @param measuredDeviationSquareMetres standard deviation of that
 * @param defaultSquareMetres from default widths, by cause: all of a cause err together
 */
public record ScarredArea(
    double measuredSquareMetres,
    double measuredDeviationSquareMetres,
    Map<String, Double> defaultSquareMetres) {

  /** {@return all of it} */
  public double squareMetres() {
    double sum = measuredSquareMetres;
    for (double area : defaultSquareMetres.values()) {
      sum += area;
    }
    return sum;
  }
}
