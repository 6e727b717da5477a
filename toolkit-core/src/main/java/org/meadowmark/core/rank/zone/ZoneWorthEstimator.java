package org.meadowmark.core.rank.zone;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.meadowmark.core.measure.recovery.ContinuousLoss;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.survey.ZoneParameters;

/** What is at stake in a zone, in numbers and in answers to objections. */
final class ZoneWorthEstimator {
  private static final double PERCENT = 100;

  private final ZoneParameters parameters;
  private final double allScarMetres;
  private final double allChannelMetres;

  ZoneWorthEstimator(ZoneParameters parameters, double allScarMetres, double allChannelMetres) {
    this.parameters = parameters;
    this.allScarMetres = allScarMetres;
    this.allChannelMetres = allChannelMetres;
  }

  /**
   * Worth of a zone.
   *
   * @param best the choice that it is part of
   */
  ZoneWorth worth(
      double lengthMetres, double scarMetres, double scarredSquareMetres, CoverPoint best) {
    double hectares = scarredSquareMetres / Hectare.SQUARE_METRES;
    OptionalDouble middle = loss(hectares, parameters.recoveryMiddleYears());
    OptionalDouble low = loss(hectares, parameters.recoveryLowYears());
    OptionalDouble high = loss(hectares, parameters.recoveryHighYears());
    List<SlowPassage> passages =
        parameters.usualSpeedsKilometresPerHour().stream()
            .map(
                usual ->
                    SlowPassage.over(lengthMetres, usual, parameters.slowSpeedKilometresPerHour()))
            .toList();
    List<String> answers = new ArrayList<>();
    answers.add(delay(lengthMetres, passages));
    answers.add(damage(lengthMetres, scarMetres));
    answers.add(regrowth(low, middle, high));
    answers.add(elsewhere(best));
    return new ZoneWorth(
        scarMetres, hectares, middle, low, high, basis(hectares), passages, answers);
  }

  private OptionalDouble loss(double hectares, double years) {
    return hectares > 0
        ? OptionalDouble.of(hectares * ContinuousLoss.yearsLost(years, parameters.discountRate()))
        : OptionalDouble.empty();
  }

  private String basis(double hectares) {
    if (hectares == 0) {
      return "no footprint area is known, so no loss is worked out";
    }
    return text(
        "%.4f ha of scar (length times width, overlaps counted each time) closing in a straight"
            + " line in %s years (from %s to %s; published scar recovery times, from memory),"
            + " discounted at %s %% a year in continuous time; without discount half the recovery"
            + " time counts",
        hectares,
        plain(parameters.recoveryMiddleYears()),
        plain(parameters.recoveryLowYears()),
        plain(parameters.recoveryHighYears()),
        plain(PERCENT * parameters.discountRate()));
  }

  private String delay(double lengthMetres, List<SlowPassage> passages) {
    StringBuilder answer = new StringBuilder("\"It slows everybody down.\" ");
    if (passages.isEmpty()) {
      return answer.append("No usual speed is stated, so no delay is worked out.").toString();
    }
    List<String> each = new ArrayList<>();
    for (SlowPassage passage : passages) {
      each.add(
          text(
              "%.1f minutes more for a boat at %.0f km/h (%.0f knots)",
              passage.extraMinutes(), passage.usualKilometresPerHour(), passage.usualKnots()));
    }
    return answer
        .append(
            text(
                "One passage over the %.0f m at %.1f km/h (%.1f knots) takes ",
                lengthMetres, passages.get(0).slowKilometresPerHour(), passages.get(0).slowKnots()))
        .append(String.join(", ", each))
        .append('.')
        .toString();
  }

  private String damage(double lengthMetres, double scarMetres) {
    return text(
        "\"There is hardly any damage.\" %.0f m of scar lie nearest to this zone: %.1f %% of all"
            + " scar length attributed to channels, on %.1f %% of the channel length.",
        scarMetres, share(scarMetres, allScarMetres), share(lengthMetres, allChannelMetres));
  }

  private static double share(double part, double all) {
    return all > 0 ? PERCENT * part / all : 0;
  }

  private String regrowth(OptionalDouble low, OptionalDouble middle, OptionalDouble high) {
    String start = "\"The grass grows back by itself.\" ";
    if (middle.isEmpty()) {
      return start + "No footprint area is known, so what regrowth costs is not worked out.";
    }
    return start
        + text(
            "If no new scar is cut it takes %s to %s years, and until then %.3f"
                + " service-hectare-years are lost (%.3f to %.3f); every new season of scars adds"
                + " its own.",
            plain(parameters.recoveryLowYears()),
            plain(parameters.recoveryHighYears()),
            middle.getAsDouble(),
            low.orElseThrow(),
            high.orElseThrow());
  }

  private String elsewhere(CoverPoint best) {
    String rival =
        best.isProvenBest()
            ? text(
                "No other choice of at most %d zones in %.0f m of channel covers more than the %.0f"
                    + " m covered by the zones proposed",
                parameters.mostZones(), best.lengthMetres(), best.coveredMetres())
            : text(
                "No other choice of at most %d zones in %.0f m of channel covers more than %.0f m;"
                    + " the zones proposed cover %.0f m",
                parameters.mostZones(),
                best.lengthMetres(),
                best.upperBoundMetres(),
                best.coveredMetres());
    return "\"Why here?\" "
        + rival
        + text("; taking the worst segments first covers %.0f m.", best.worstFirstMetres());
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(Math.round(value * 1000))
        .movePointLeft(3)
        .stripTrailingZeros()
        .toPlainString();
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
