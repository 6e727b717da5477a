package org.meadowmark.core.write.loss;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.meadowmark.core.measure.recovery.AreaLoss;
import org.meadowmark.core.measure.recovery.Discounting;
import org.meadowmark.core.measure.recovery.Estimate;
import org.meadowmark.core.measure.recovery.LossConventions;
import org.meadowmark.core.measure.recovery.Planting;
import org.meadowmark.core.measure.recovery.ScarRecovery;
import org.meadowmark.core.measure.recovery.ServiceCourse;
import org.meadowmark.core.measure.recovery.SurveyRecovery;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.reference.ScarRecoveryTime;

/**
 * A worked printout: the conventions, then each year with its mean share, its factor, the product
 * and the sum so far, then the area that makes good for the loss.
 *
 * <p>Plain text, a line end after every line. Whoever multiplies the printed figures gets the
 * printed products, but for the rounding of the last digit.
 */
public final class WorkedLossText {
  /** Name of the file. */
  public static final String FILE_NAME = "loss-worked.txt";

  private static final double PERCENT = 100;

  private final SurveyRecovery recovery;
  private final LossConventions conventions;
  private final Map<String, ScarRecoveryTime> published;
  private final StringBuilder text = new StringBuilder();

  private WorkedLossText(SurveyRecovery recovery, Map<String, ScarRecoveryTime> published) {
    this.published = published;
    this.recovery = recovery;
    this.conventions = recovery.conventions();
  }

  /**
   * {@return the printout of a survey}
   *
   * @param title name of the survey
   * @param recovery recovery of its scars, with the loss by year and the conventions it was summed
   *     by
   * @param published recovery times by species, for their sources
   */
  public static String of(
      String title, SurveyRecovery recovery, Map<String, ScarRecoveryTime> published) {
    WorkedLossText worked = new WorkedLossText(recovery, published);
    worked.write(title);
    return worked.text.toString();
  }

  private void write(String title) {
    line("Loss of service until the scars have closed, worked year by year");
    line(title);
    line("");
    conventions();
    basis();
    double hectares = recovery.worked().hectares();
    for (Estimate estimate : Estimate.values()) {
      line("");
      line("Without planting, " + estimate.key() + " estimate");
      sum(recovery.worked().alone().of(estimate), hectares, "bare");
    }
    Planting planting = recovery.planting();
    for (Estimate estimate : Estimate.values()) {
      line("");
      line("With every scar planted in year 0, " + estimate.key() + " estimate");
      sum(recovery.worked().planted().of(estimate), hectares, "bare");
    }
    line("");
    line(
        "Planting: units %.2f m apart; %.0f, %.0f, %.0f %% of them live (low, middle, high loss);"
            + " each covers a disc of %.2f m radius at first and widens at the edge rate"
            + " (common practice, no source; survival from memory).",
        planting.spacingMetres(),
        PERCENT * planting.survival().high(),
        PERCENT * planting.survival().middle(),
        PERCENT * planting.survival().low(),
        planting.unitRadiusMetres());
    compensation();
  }

  private void conventions() {
    Discounting discounting = conventions.discounting();
    line("Method: habitat equivalency analysis. Loss = sum over years of");
    line("hectares x mean share bare in the year x factor, in discounted");
    line("service-hectare-years (NOAA 1995, revised 2000, 2006, Habitat Equivalency");
    line("Analysis: An Overview).");
    line("");
    line(
        "Base year (year 0):   %s",
        conventions.baseYear().isPresent()
            ? String.valueOf(conventions.baseYear().getAsInt())
            : "not stated; years are counted from the survey");
    line("Fresh at:             every scar is taken as wholly bare at the start of year 0");
    line("Discount rate:        %s %% a year", plain(PERCENT * discounting.ratePerYear()));
    line(
        "Within the year:      service counts at the %s of the year",
        discounting.withinYear().key());
    line(
        "Factor of year t:     1 / (1 + %s)^(t + %s)%s",
        plain(discounting.ratePerYear()),
        plain(discounting.withinYear().years()),
        discounting.ratePerYear() == 0 ? ", so nothing is discounted" : "");
    line(
        "Horizon:              nothing counts after year %d; a scar not closed by then is cut off",
        conventions.horizonYears() - 1);
    line("Service:              bare ground gives none, covered ground as much as whole grass");
    line("");
  }

  private void basis() {
    AreaLoss whole = recovery.whole();
    line(
        "Scarred area in beds: %.6f ha, overlaps counted once",
        whole.scarredSquareMetres() / Hectare.SQUARE_METRES);
    line("Of it with a forecast: %.10f ha; this is what is multiplied below", hectares());
    double missing = whole.scarredSquareMetres() - whole.forecastSquareMetres();
    line(
        "Without a forecast:   %.6f ha, not in any sum below",
        Math.max(0, missing) / Hectare.SQUARE_METRES);
    counts(false).forEach((basis, count) -> line("  %d scar(s): %s", count, basis));
    line("");
    line("Rates of closing, from the edges inwards (width / 2 / years a side):");
    counts(true).forEach((basis, count) -> line("  %d scar(s): %s", count, basis));
    new TreeSet<>(recovery.scars().stream().map(ScarRecovery::species).toList())
        .stream()
            .filter(published::containsKey)
            .forEach(key -> line("  Source for %s: %s", key, published.get(key).source()));
    line(
        "Not closed at the horizon (low, middle, high): %d, %d, %d scar(s)",
        open(Estimate.LOW), open(Estimate.MIDDLE), open(Estimate.HIGH));
  }

  private long open(Estimate estimate) {
    return recovery.scars().stream()
        .flatMap(scar -> scar.alone().stream())
        .filter(outlook -> estimate.ofLoss(outlook.yearsToFull()) > conventions.horizonYears())
        .count();
  }

  private double hectares() {
    return recovery.worked().hectares();
  }

  private Map<String, Integer> counts(boolean forecast) {
    Map<String, Integer> counts = new TreeMap<>();
    for (ScarRecovery scar : recovery.scars()) {
      if (scar.regrowth().isPresent() == forecast) {
        counts.merge(scar.basis(), 1, Integer::sum);
      }
    }
    return counts;
  }

  private double sum(ServiceCourse course, double hectares, String share) {
    Collection<ServiceCourse.Year> years = course.years(hectares, conventions.discounting());
    line(
        "%6s  %9s  %12s  %12s  %14s  %14s",
        "year", "calendar", "share " + share, "factor", "product", "sum");
    double sum = 0;
    for (ServiceCourse.Year year : years) {
      sum += year.serviceHectareYears();
      line(
          "%6d  %9s  %12.10f  %12.10f  %14.8f  %14.8f",
          year.year(),
          calendar(year.year()),
          year.meanShare(),
          year.factor(),
          year.serviceHectareYears(),
          sum);
    }
    if (years.isEmpty()) {
      line("  nothing to sum");
    }
    line("  = %.6f discounted service-hectare-years", sum);
    return sum;
  }

  private String calendar(int year) {
    return conventions.baseYear().isPresent()
        ? String.valueOf(conventions.baseYear().getAsInt() + year)
        : "-";
  }

  private void compensation() {
    line("");
    line("Area of new planting that makes good for the loss without planting");
    line(
        "One hectare planted from year %d on, its service rising in a straight line from none to"
            + " all in %s years, counted for %d years (common practice, no source):",
        conventions.projectStartYears(),
        plain(conventions.projectGrowthYears()),
        conventions.projectLifeYears());
    double gain = sum(conventions.project(), 1, "gained");
    for (Estimate estimate : List.of(Estimate.LOW, Estimate.MIDDLE, Estimate.HIGH)) {
      double loss =
          recovery
              .worked()
              .alone()
              .of(estimate)
              .serviceHectareYears(hectares(), conventions.discounting());
      line(
          "  %-6s loss %.6f / gain of one hectare %.6f = %.6f ha",
          estimate.key(), loss, gain, ServiceCourse.compensatingHectares(loss, gain));
    }
  }

  private static String plain(double value) {
    return new BigDecimal(String.format(Locale.ROOT, "%.6f", value))
        .stripTrailingZeros()
        .toPlainString();
  }

  private void line(String format, Object... values) {
    text.append(values.length == 0 ? format : String.format(Locale.ROOT, format, values))
        .append('\n');
  }
}
