package org.meadowmark.core.measure.recovery;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * The service of an area over the years, as a share of that of whole grass, discounted to a base
 * year: habitat equivalency analysis.
 *
 * <p>A loss is area × (1 − service), a gain area × (service − service without the project), each
 * year's mean times the weight of the year: discounted service-hectare-years. Source: NOAA (1995,
 * revised 2000, 2006), <i>Habitat Equivalency Analysis: An Overview</i>.
 *
 * @param firstYear years from the base year to the first one
 * @param meanShares mean of each year, in 0–1: the share that is lost, or gained
 * @param lastShareStays whether the share of the last year goes on for ever
 */
public record ServiceCourse(int firstYear, List<Double> meanShares, boolean lastShareStays) {
  private static final int PARTS_OF_A_YEAR = 12;

  /**
   * Keeps a copy of the shares that cannot be changed, and refuses what is no share.
   *
   * @param firstYear years from the base year to the first one
   * @param meanShares mean of each year, in 0–1: the share that is lost, or gained
   * @param lastShareStays whether the share of the last year goes on for ever
   * @throws IllegalArgumentException if a share is not in 0–1
   */
  public ServiceCourse {
    meanShares = List.copyOf(meanShares);
    for (double share : meanShares) {
      if (!(share >= 0 && share <= 1)) {
        throw new IllegalArgumentException("no share of service: " + share);
      }
    }
  }

  /**
   * One year of the sum, for a printout.
   *
   * @param year years from the base year
   * @param meanShare mean share of the year
   * @param factor weight of the year
   * @param serviceHectareYears area × share × weight
   */
  public record Year(int year, double meanShare, double factor, double serviceHectareYears) {}

  /**
   * {@return a course in which all service is lost for some years, and none after them}
   *
   * @param firstYear years from the base year to the first one
   * @param years how many years, 0 or more
   * @throws IllegalArgumentException if the number of years is negative
   */
  public static ServiceCourse total(int firstYear, int years) {
    return new ServiceCourse(firstYear, Collections.nCopies(years, 1.0), false);
  }

  /**
   * {@return a course in which all service is lost for ever}
   *
   * @param firstYear years from the base year to the first one
   */
  public static ServiceCourse permanent(int firstYear) {
    return new ServiceCourse(firstYear, List.of(1.0), true);
  }

  /**
   * {@return the share falls from 1 to 0 along a straight line}
   *
   * @param firstYear years from the base year to the start
   * @param years time to the end, more than 0; parts of years count
   */
  public static ServiceCourse linearDecline(int firstYear, double years) {
    return of(firstYear, years, t -> 1 - t / years);
  }

  /**
   * {@return yearly means of any course that ends}
   *
   * @param firstYear years from the base year to the start
   * @param years time from the start to the end
   * @param shareAt share at a time from the start, in years; piecewise smooth
   * @throws IllegalArgumentException if the time is not more than 0 and finite
   */
  public static ServiceCourse of(int firstYear, double years, DoubleUnaryOperator shareAt) {
    return of(firstYear, years, PARTS_OF_A_YEAR, shareAt);
  }

  /** The same by fewer or more parts of a year. */
  static ServiceCourse of(int firstYear, double years, int parts, DoubleUnaryOperator shareAt) {
    if (!(years > 0) || Double.isInfinite(years)) {
      throw new IllegalArgumentException("time must be more than 0: " + years);
    }
    List<Double> means = new ArrayList<>();
    for (int year = 0; year < years; year++) {
      double end = Math.min(years, year + 1);
      means.add(Math.max(0, Math.min(1, integral(shareAt, year, end, parts))));
    }
    return new ServiceCourse(firstYear, means, false);
  }

  /** Simpson's rule over parts of a year; exact for straight lines and parabolas. */
  private static double integral(DoubleUnaryOperator shareAt, double from, double to, int parts) {
    double step = (to - from) / parts;
    double sum = 0;
    double before = shareAt.applyAsDouble(from);
    for (int i = 0; i < parts; i++) {
      double start = from + i * step;
      double after = shareAt.applyAsDouble(start + step);
      sum += step / 6 * (before + 4 * shareAt.applyAsDouble(start + step / 2) + after);
      before = after;
    }
    return sum;
  }

  /**
   * {@return the sum year by year, without the years after the last that {@link #lastShareStays}
   * adds}
   *
   * @param hectares ground area that the shares are of
   * @param discounting how service in later years is weighed
   */
  public List<Year> years(double hectares, Discounting discounting) {
    List<Year> years = new ArrayList<>();
    for (int i = 0; i < meanShares.size(); i++) {
      double factor = discounting.factor(firstYear + i);
      years.add(
          new Year(
              firstYear + i, meanShares.get(i), factor, hectares * meanShares.get(i) * factor));
    }
    return years;
  }

  /**
   * {@return discounted service-hectare-years; infinite where a share stays for ever and nothing is
   * discounted}
   *
   * @param hectares ground area that the shares are of
   * @param discounting how service in later years is weighed
   */
  public double serviceHectareYears(double hectares, Discounting discounting) {
    double sum = 0;
    for (Year year : years(hectares, discounting)) {
      sum += year.serviceHectareYears();
    }
    double last = meanShares.isEmpty() ? 0 : meanShares.get(meanShares.size() - 1);
    if (lastShareStays && last > 0 && hectares > 0) {
      sum += hectares * last * discounting.factorFromThenOn(firstYear + meanShares.size());
    }
    return sum;
  }

  /**
   * {@return area of a project that makes good for a loss}
   *
   * @param lostServiceHectareYears discounted loss
   * @param gainPerHectare discounted gain of one hectare of the project, more than 0
   * @throws IllegalArgumentException if the project gains nothing
   */
  public static double compensatingHectares(double lostServiceHectareYears, double gainPerHectare) {
    if (!(gainPerHectare > 0)) {
      throw new IllegalArgumentException("a project without gain compensates nothing");
    }
    return lostServiceHectareYears / gainPerHectare;
  }
}
