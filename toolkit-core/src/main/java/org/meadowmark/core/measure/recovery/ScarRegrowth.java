package org.meadowmark.core.measure.recovery;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.meadowmark.core.model.Range;

/**
 * How one scar closes: its outline moves inwards at the edge rate, slower where it was dug out.
 *
 * <p>Time counts in years from the base, when the scar is taken as wholly bare.
 *
 * @param shape the scar's footprint
 * @param edgeMetresPerYear how fast the outline moves on a side in a scar that was not dug out
 * @param slowing factor of the time that the excavation costs, 1 or more
 */
public record ScarRegrowth(ScarShape shape, Range edgeMetresPerYear, double slowing) {
  /** A planted scar is called closed when less than this share of it is expected to be bare. */
  public static final double CLOSED_SHARE = 0.01;

  private static final int PARTS_OF_A_YEAR = 3;
  private static final int HALVINGS = 60;
  private static final double YEARS_TOLERANCE = 1e-4;

  /**
   * Refuses figures out of their limits.
   *
   * @param shape the scar's footprint
   * @param edgeMetresPerYear how fast the outline moves on a side in a scar that was not dug out
   * @param slowing factor of the time that the excavation costs, 1 or more
   * @throws IllegalArgumentException if the rate is not above 0 or the factor is below 1
   */
  public ScarRegrowth {
    if (!(edgeMetresPerYear.low() > 0) || !(slowing >= 1)) {
      throw new IllegalArgumentException("no regrowth: " + edgeMetresPerYear + ", " + slowing);
    }
  }

  /**
   * {@return share of the footprint that is bare without planting}
   *
   * @param estimate which end of rates and survival is taken
   * @param years years from the base
   */
  public double bareShare(Estimate estimate, double years) {
    return shareAt(rate(estimate) * years);
  }

  /**
   * {@return share of the footprint that is expected to be bare with planting}
   *
   * @param estimate which end of rates and survival is taken
   * @param years years from the base
   * @param planting how
   * @param plantedAtYears when, in years from the base; nothing changes before
   */
  public double bareShare(
      Estimate estimate, double years, Planting planting, double plantedAtYears) {
    if (years < plantedAtYears) {
      return bareShare(estimate, years);
    }
    double since = years - plantedAtYears;
    double plantedRate = plantedRate(estimate, planting);
    double offset = rate(estimate) * plantedAtYears + plantedRate * since;
    double left = shareAt(offset);
    if (left == 0) {
      return 0;
    }
    double radius = planting.unitRadiusMetres() + plantedRate * since;
    UnitDiscs discs = new UnitDiscs(planting.spacingMetres(), estimate.ofHelp(planting.survival()));
    if (shape.stripWidthMetres().isEmpty()) {
      return left * discs.bareShareOfPlain(radius);
    }
    double width = shape.stripWidthMetres().getAsDouble();
    return left * discs.bareShareOfStrip(width, planting.rows(width), width / 2 - offset, radius);
  }

  /** {@return years until the edges meet, without planting} */
  public Range yearsToFull() {
    return range(estimate -> shape.closingOffsetMetres() / rate(estimate));
  }

  /** {@return years until half of the footprint is covered, without planting} */
  public Range yearsToHalf() {
    return range(estimate -> firstBelow(0.5, ends(estimate), years -> bareShare(estimate, years)));
  }

  /**
   * {@return years from the base until less than {@link #CLOSED_SHARE} is expected to be bare, with
   * planting}
   *
   * @param planting how units are set, and how many live
   * @param plantedAtYears when, in years from the base; nothing changes before
   */
  public Range yearsToFull(Planting planting, double plantedAtYears) {
    return yearsTo(CLOSED_SHARE, planting, plantedAtYears);
  }

  /**
   * {@return years from the base until half of the footprint is expected to be covered, with
   * planting}
   *
   * @param planting how units are set, and how many live
   * @param plantedAtYears when, in years from the base; nothing changes before
   */
  public Range yearsToHalf(Planting planting, double plantedAtYears) {
    return yearsTo(0.5, planting, plantedAtYears);
  }

  /**
   * {@return share of service lost year by year without planting, for {@link ServiceCourse}}
   *
   * @param estimate which end of rates and survival is taken
   * @param horizonYears years after which nothing counts any more
   */
  public ServiceCourse course(Estimate estimate, int horizonYears) {
    return course(Math.min(horizonYears, ends(estimate)), years -> bareShare(estimate, years));
  }

  /**
   * {@return the same with planting}
   *
   * @param estimate which end of rates and survival is taken
   * @param horizonYears years from the base after which nothing counts any more
   * @param planting how units are set, and how many live
   * @param plantedAtYears when, in whole years from the base
   */
  public ServiceCourse course(
      Estimate estimate, int horizonYears, Planting planting, int plantedAtYears) {
    double end = Math.min(horizonYears, ends(estimate, planting, plantedAtYears));
    // The share steps down at the planting, so no part of a year may reach over it.
    ServiceCourse before =
        course(Math.min(end, plantedAtYears), years -> bareShare(estimate, years));
    ServiceCourse after =
        course(
            end - plantedAtYears,
            since -> bareShare(estimate, plantedAtYears + since, planting, plantedAtYears));
    List<Double> means = new ArrayList<>(before.meanShares());
    means.addAll(after.meanShares());
    return new ServiceCourse(0, means, false);
  }

  /**
   * {@return the course without planting in figures: years to half and to full cover, discounted
   * loss}
   *
   * @param hectares ground area that the shares are of
   * @param discounting how service in later years is weighed
   * @param horizonYears years from the base after which nothing counts any more
   */
  public Outlook outlook(double hectares, Discounting discounting, int horizonYears) {
    return new Outlook(
        yearsToHalf(),
        yearsToFull(),
        range(
            estimate -> course(estimate, horizonYears).serviceHectareYears(hectares, discounting)));
  }

  /**
   * {@return the course with planting in figures: years to half and to full cover, discounted loss}
   *
   * @param hectares ground area that the shares are of
   * @param discounting how service in later years is weighed
   * @param horizonYears years from the base after which nothing counts any more
   * @param planting how units are set, and how many live
   * @param plantedAtYears when, in whole years from the base; nothing changes before
   */
  public Outlook outlook(
      double hectares,
      Discounting discounting,
      int horizonYears,
      Planting planting,
      int plantedAtYears) {
    return new Outlook(
        yearsToHalf(planting, plantedAtYears),
        yearsToFull(planting, plantedAtYears),
        range(
            estimate ->
                course(estimate, horizonYears, planting, plantedAtYears)
                    .serviceHectareYears(hectares, discounting)));
  }

  private interface ByEstimate {
    double of(Estimate estimate);
  }

  private static Range range(ByEstimate figure) {
    return Range.around(
        figure.of(Estimate.MIDDLE), figure.of(Estimate.LOW), figure.of(Estimate.HIGH));
  }

  private Range yearsTo(double share, Planting planting, double plantedAtYears) {
    return range(
        estimate ->
            firstBelow(
                share,
                ends(estimate, planting, plantedAtYears),
                years -> bareShare(estimate, years, planting, plantedAtYears)));
  }

  /** The share never rises, so halving the time finds where it passes. */
  private static double firstBelow(double share, double ends, DoubleUnaryOperator shareAt) {
    if (shareAt.applyAsDouble(0) <= share) {
      return 0;
    }
    double above = 0;
    double below = ends;
    for (int i = 0; i < HALVINGS && below - above > YEARS_TOLERANCE; i++) {
      double middle = (above + below) / 2;
      if (shareAt.applyAsDouble(middle) > share) {
        above = middle;
      } else {
        below = middle;
      }
    }
    return below;
  }

  private static ServiceCourse course(double years, DoubleUnaryOperator shareAt) {
    return years > 0
        ? ServiceCourse.of(0, years, PARTS_OF_A_YEAR, shareAt)
        : new ServiceCourse(0, List.of(), false);
  }

  private double shareAt(double offsetMetres) {
    double whole = shape.areaSquareMetres();
    return whole > 0 ? Math.min(1, shape.bareSquareMetres(offsetMetres) / whole) : 0;
  }

  private double rate(Estimate estimate) {
    return estimate.ofHelp(edgeMetresPerYear) / slowing;
  }

  private double plantedRate(Estimate estimate, Planting planting) {
    return planting.filled() ? estimate.ofHelp(edgeMetresPerYear) : rate(estimate);
  }

  private double ends(Estimate estimate) {
    return shape.closingOffsetMetres() / rate(estimate);
  }

  private double ends(Estimate estimate, Planting planting, double plantedAtYears) {
    double left = shape.closingOffsetMetres() - rate(estimate) * plantedAtYears;
    return left <= 0 ? ends(estimate) : plantedAtYears + left / plantedRate(estimate, planting);
  }
}
