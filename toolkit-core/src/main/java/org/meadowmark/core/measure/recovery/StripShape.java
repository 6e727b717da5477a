package org.meadowmark.core.measure.recovery;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A line scar: strips of one width with flat ends, (L − 2d)·(w − 2d) each at offset d. Exact for
 * straight lines.
 */
final class StripShape implements ScarShape {
  private final double widthMetres;
  private final double[] lengthsMetres;

  StripShape(double widthMetres, List<Double> lengthsMetres) {
    this.widthMetres = widthMetres;
    this.lengthsMetres = lengthsMetres.stream().mapToDouble(Double::doubleValue).toArray();
  }

  @Override
  public double areaSquareMetres() {
    return bareSquareMetres(0);
  }

  @Override
  public double bareSquareMetres(double offsetMetres) {
    double width = Math.max(0, widthMetres - 2 * offsetMetres);
    double sum = 0;
    for (double length : lengthsMetres) {
      sum += Math.max(0, length - 2 * offsetMetres) * width;
    }
    return sum;
  }

  @Override
  public double closingOffsetMetres() {
    double longest = 0;
    for (double length : lengthsMetres) {
      longest = Math.max(longest, length);
    }
    return Math.min(widthMetres, longest) / 2;
  }

  @Override
  public OptionalDouble stripWidthMetres() {
    return OptionalDouble.of(widthMetres);
  }
}
