package org.meadowmark.core.measure.recovery;

/**
 * How a planted area spreads: from its edge at a rate, and by new patches from seed and drifting
 * fragments.
 *
 * <p>dA/dt = P·e + g·A, with P = 2√(π·k·A) the edge of an area that keeps its shape (k = 1 for a
 * disc). With R = √(A/π) that is dR/dt = e√k + g·R/2, so R(t) = (R₀ + 2e√k/g)·exp(g·t/2) − 2e√k/g,
 * and R₀ + e√k·t without new patches. The edge term is the rate of a rhizome times the outline; the
 * form of the second is common practice, no source. Nothing bounds the spread: what is fit for
 * grass around does, and so does a forecast of a few years.
 *
 * @param squareMetres planted area at first, 0 or more
 * @param edgeMetresPerYear how fast its edge moves outwards
 * @param newPatchesPerYear area of new patches in a year as a share of the area, 0 or more
 * @param shape perimeter² / (4π·area) at first, 1 for a disc
 */
public record PlantedSpread(
    double squareMetres, double edgeMetresPerYear, double newPatchesPerYear, double shape) {
  private static final int HALVINGS = 200;

  /**
   * Refuses figures out of their limits.
   *
   * @param squareMetres planted area at first, 0 or more
   * @param edgeMetresPerYear how fast its edge moves outwards
   * @param newPatchesPerYear area of new patches in a year as a share of the area, 0 or more
   * @param shape perimeter² / (4π·area) at first, 1 for a disc
   * @throws IllegalArgumentException if a figure is out of its limits
   */
  public PlantedSpread {
    if (!(squareMetres >= 0)
        || !(edgeMetresPerYear >= 0)
        || !(newPatchesPerYear >= 0)
        || !(shape >= 1)) {
      throw new IllegalArgumentException("no spread: " + squareMetres + ", " + shape);
    }
  }

  /**
   * {@return area after some years in square metres; nothing spreads from nothing}
   *
   * @param years years from the planting, 0 or more; parts of years count
   */
  public double squareMetresAfter(double years) {
    if (squareMetres == 0) {
      return 0;
    }
    double edge = edgeMetresPerYear * Math.sqrt(shape);
    double start = Math.sqrt(squareMetres / Math.PI);
    double grown = Math.expm1(newPatchesPerYear * years / 2);
    double fromEdge = newPatchesPerYear > 0 ? 2 * edge / newPatchesPerYear * grown : edge * years;
    double radius = start * (1 + grown) + fromEdge;
    return Math.PI * radius * radius;
  }

  /**
   * {@return edge rate alone that explains a spread, in metres a year: (√A₁ − √A₀) / (√(πk)·years)}
   *
   * @param from area at first
   * @param to area after the years, not less
   * @param years years between the two, more than 0
   * @param shape perimeter² / (4π·area) at first, 1 for a disc
   */
  public static double impliedEdgeMetresPerYear(
      double from, double to, double years, double shape) {
    return (Math.sqrt(to) - Math.sqrt(from)) / Math.sqrt(Math.PI * shape) / years;
  }

  /**
   * {@return share of new patches a year that explains a spread, beside a known edge rate; 0 where
   * the edge explains it alone}
   *
   * @param from area at first, more than 0
   * @param to area after the years, not less
   * @param years years between the two, more than 0
   * @param edgeMetresPerYear how fast the edge moves outwards, 0 or more
   * @param shape perimeter² / (4π·area) at first, 1 for a disc
   */
  public static double impliedNewPatchesPerYear(
      double from, double to, double years, double edgeMetresPerYear, double shape) {
    double low = 0;
    double high = Math.log(to / from) / years;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      double after =
          new PlantedSpread(from, edgeMetresPerYear, middle, shape).squareMetresAfter(years);
      if (after > to) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return high < 1e-12 ? 0 : high;
  }
}
