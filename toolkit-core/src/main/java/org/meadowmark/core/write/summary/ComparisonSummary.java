package org.meadowmark.core.write.summary;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.meadowmark.core.change.Interval;
import org.meadowmark.core.change.Scope;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.change.SeasonPair;
import org.meadowmark.core.change.bed.GrassChange;
import org.meadowmark.core.change.comparability.SurveyDifference;
import org.meadowmark.core.change.comparability.SurveyDifference.Judgement;
import org.meadowmark.core.change.effect.MarkerEffect;
import org.meadowmark.core.change.effect.PowerForecast;
import org.meadowmark.core.change.effect.SegmentRole;
import org.meadowmark.core.change.match.ChangeClass;
import org.meadowmark.core.change.match.SeasonMatch;
import org.meadowmark.core.change.rates.EdgeRateFit;
import org.meadowmark.core.change.rates.EdgeRateFit.Outcome;
import org.meadowmark.core.change.rates.FigureChange;
import org.meadowmark.core.change.rates.HealingRate;
import org.meadowmark.core.change.rates.NewScarRate;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.write.ComparedSurveys;
import org.meadowmark.core.write.Figures;

/**
 * What changed between surveys, on a page of plain text of at most {@value Summary#WIDTH}
 * characters a line. The same results give the same text.
 */
public final class ComparisonSummary {
  private static final String NONE = "–";
  private static final double PERCENT = 100;

  private final ComparedSurveys compared;
  private final List<String> lines = new ArrayList<>();

  private ComparisonSummary(ComparedSurveys compared) {
    this.compared = compared;
  }

  /**
   * {@return the summary as one text, with a line end after every line}
   *
   * @param compared results of a comparison
   */
  public static String text(ComparedSurveys compared) {
    ComparisonSummary summary = new ComparisonSummary(compared);
    summary.write();
    return summary.lines.stream()
        .map(line -> line.replace(Figures.UNIT_SPACE, ' ') + "\n")
        .collect(Collectors.joining());
  }

  private void write() {
    String title =
        compared.surveys().get(compared.surveys().size() - 1).definition().name()
            + ", "
            + compared.seasons().get(0).date()
            + " to "
            + compared.last().date();
    paragraph(title);
    lines.add("=".repeat(Math.min(Summary.WIDTH, title.length())));
    lines.add("");
    compared.pairs().forEach(this::season);
    markers();
    healing();
    surveyTable();
    scarTable();
    areaTable();
    grassTable();
    differences();
    findings();
    lines.add("");
    paragraph(
        "Caution: gone means not seen, and new means not seen before. A scar that was cut and healed"
            + " between two surveys is in none of these figures.");
  }

  private void season(SeasonPair pair) {
    NewScarRate rate = rate(pair.season(), Scope.WHOLE);
    HealingRate healed = healed(pair.season(), Scope.WHOLE);
    StringBuilder text = new StringBuilder();
    text.append(Figures.count(rate.newScars(), "new scar", "new scars"))
        .append(" and ")
        .append(Figures.length(rate.newMetres()))
        .append(" of new line inside beds on ")
        .append(Figures.hectares(rate.bedHectares() * Hectare.SQUARE_METRES))
        .append(" of bed that both surveys looked at, in ")
        .append(String.format(Locale.ROOT, "%.2f", pair.season().years()))
        .append(" years: ")
        .append(rate(rate))
        .append(" m for each hectare and year. ");
    if (healed.scars() > 0) {
      text.append("Of ")
          .append(Figures.count(healed.scars(), "scar", "scars"))
          .append(" in beds, ")
          .append(Figures.count(healed.healed()))
          .append(" were gone (")
          .append(percent(healed.share(), healed.interval()))
          .append(")");
      if (healed.expectedOf() > 0) {
        text.append("; of the ")
            .append(Figures.count(healed.expectedOf()))
            .append(" with a known recovery time the model expects ")
            .append(Figures.number(healed.expected().low()))
            .append(" to ")
            .append(Figures.number(healed.expected().high()));
      }
      text.append(". ");
    }
    text.append(grass(pair));
    answer("What changed from " + pair.season().start() + " to " + pair.season().end() + "?", text);
  }

  private String grass(SeasonPair pair) {
    GrassChange change =
        compared.bedChanges().stream()
            .filter(one -> one.laterDate().equals(pair.later().date()))
            .findFirst()
            .orElseThrow()
            .whole();
    if (change.lostSquareMetres() == 0 && change.gainedSquareMetres() == 0) {
      return "The bed layers are the same: change of the grass itself cannot be told.";
    }
    return "The bed layers lost "
        + Figures.area(change.lostSquareMetres())
        + " of grass ("
        + Figures.area(change.lostToScarsSquareMetres())
        + " on scars, "
        + Figures.area(change.lostWithinAccuracySquareMetres())
        + " within positional accuracy) and gained "
        + Figures.area(change.gainedSquareMetres())
        + " ("
        + Figures.area(change.gainedWithinAccuracySquareMetres())
        + " within accuracy).";
  }

  private void markers() {
    if (compared.effect().isEmpty()) {
      answer("Did the markers work?", "No file of markers was given (--markers).");
      return;
    }
    MarkerEffect effect = compared.effect().get();
    StringBuilder text = new StringBuilder(effect.words());
    effect
        .rates()
        .ifPresent(
            rates ->
                text.append(
                    String.format(
                        Locale.ROOT,
                        " Beside %d marked segments %s turned to %s, beside %d controls %s to %s (%s).",
                        rates.markedSegments(),
                        Figures.number(rates.markedBefore()),
                        Figures.number(rates.markedAfter()),
                        rates.controlSegments(),
                        Figures.number(rates.controlBefore()),
                        Figures.number(rates.controlAfter()),
                        effect.settings().basis().rateUnit())));
    effect.power().ifPresent(power -> text.append(" ").append(power(power)));
    long left =
        effect.roles().stream().filter(role -> role.part() == SegmentRole.Part.LEFT_OUT).count();
    text.append(" ")
        .append(Figures.count(left, "segment", "segments"))
        .append(" left out; the table marker_segments says why.");
    answer("Did the markers work?", text);
  }

  private static String power(PowerForecast power) {
    String chance =
        String.format(
            Locale.ROOT,
            "A drop by %.0f %% would be detected with a chance of %.0f %%",
            PERCENT * power.drop(),
            PERCENT * power.points().get(0).power());
    if (power.seasonsNeeded().isEmpty()) {
      return chance
          + String.format(
              Locale.ROOT,
              "; further seasons can raise it to %.0f %% at most, since the seasons before stay few:"
                  + " more marked segments are needed for %.0f %%.",
              PERCENT * power.bestPower(),
              PERCENT * power.target());
    }
    int seasons = power.seasonsNeeded().getAsInt();
    return chance
        + (seasons == 0
            ? "."
            : String.format(
                Locale.ROOT,
                "; for %.0f %% it takes %d more %s.",
                PERCENT * power.target(),
                seasons,
                seasons == 1 ? "season" : "seasons"));
  }

  private void healing() {
    List<String> entries = new ArrayList<>();
    StringBuilder text = new StringBuilder();
    double width = compared.parameters().recovery().unlistedScarWidthMetres();
    for (EdgeRateFit fit : compared.edgeRates()) {
      String species = fit.species().isEmpty() ? "no species mapped" : fit.species();
      Optional<Range> years = fit.closingYears(width);
      text.append(text.length() == 0 ? "" : " ").append(species).append(": ");
      if (years.isEmpty()) {
        text.append(fit.outcome().label());
      } else {
        text.append("a scar of ")
            .append(Figures.chosenLength(width))
            .append(" closes in ")
            .append(Figures.number(years.get().middle()))
            .append(" years (")
            .append(Figures.number(years.get().low()))
            .append(" to ")
            .append(Figures.number(years.get().high()))
            .append(")");
        if (fit.outcome() == Outcome.FITTED && !fit.species().isEmpty()) {
          entries.add(
              String.format(
                  Locale.ROOT,
                  "%s:%.3g:%.3g:%.3g",
                  fit.species(),
                  years.get().low(),
                  years.get().middle(),
                  years.get().high()));
        }
      }
      text.append(" (")
          .append(Figures.count(fit.closed()))
          .append(" of ")
          .append(Figures.count(fit.scars(), "scar", "scars"))
          .append(" gone).");
    }
    if (text.length() == 0) {
      text.append("No scar with a measured width lies in a bed that was looked at again.");
    }
    answer("How fast do scars close here?", text);
    if (!entries.isEmpty()) {
      paragraph("To use these times, put this line under [parameters] of the survey file:");
      lines.add("");
      lines.add("  observed_recovery_years = \"" + String.join(" ", entries) + "\"");
      lines.add("");
    }
  }

  private void surveyTable() {
    TextTable table = new TextTable("survey", "date", "scars", "scar line", "scarred");
    for (int i = 0; i < compared.seasons().size(); i++) {
      Damage damage = compared.seasons().get(i).measurement().whole().damage();
      table.add(
          compared.surveys().get(i).definition().name(),
          compared.seasons().get(i).date().toString(),
          Figures.count(damage.scarCount()),
          Figures.length(damage.scarLengthMetres()),
          Figures.percent(damage.share()));
    }
    add("Surveys", table);
  }

  private void scarTable() {
    for (SeasonPair pair : compared.pairs()) {
      TextTable table = new TextTable("became of scars", "earlier scars", "later scars");
      Map<ChangeClass, Integer> earlier = SeasonMatch.counts(pair.match().earlier());
      Map<ChangeClass, Integer> later = SeasonMatch.counts(pair.match().later());
      for (ChangeClass change : ChangeClass.values()) {
        if (earlier.containsKey(change) || later.containsKey(change)) {
          table.add(
              change.key(),
              earlier.containsKey(change) ? Figures.count(earlier.get(change)) : NONE,
              later.containsKey(change) ? Figures.count(later.get(change)) : NONE);
        }
      }
      add("Scars, " + pair.season().label(), table);
    }
  }

  private void areaTable() {
    TextTable table = new TextTable("area", "until", "new scars", "new m/(ha·year)", "healed");
    for (NewScarRate rate : compared.newScars()) {
      HealingRate healed = healed(rate.season(), rate.scope());
      table.add(
          rate.scope().label(),
          rate.season().end().toString(),
          Figures.count(rate.newScars()),
          rate(rate),
          Figures.percent(healed.share()));
    }
    add("Rates by management area, with " + confidence() + " intervals", table);
  }

  private void grassTable() {
    TextTable table = new TextTable("whole survey", "until", "before", "after", "change");
    for (FigureChange change : compared.figureChanges()) {
      if (change.scope().equals(Scope.WHOLE)) {
        table.add(
            change.figure().label() + " (" + change.figure().unit() + ")",
            change.season().end().toString(),
            number(change.earlier()),
            number(change.later()),
            change(change.ratio(), change.ratioInterval()));
      }
    }
    add("Fragmentation and connectivity, with " + confidence() + " intervals", table);
  }

  private void differences() {
    List<SurveyDifference> told =
        compared.differences().stream()
            .filter(difference -> difference.judgement() != Judgement.ALIKE)
            .toList();
    if (told.isEmpty()) {
      return;
    }
    lines.add("How the surveys differ");
    lines.add("");
    for (SurveyDifference difference : told) {
      lines.addAll(
          Wrap.lines(
              difference.season().end()
                  + ", "
                  + difference.aspect().label()
                  + ": "
                  + difference.judgement().label()
                  + (difference.judgement() == Judgement.UNSAFE ? " (let pass)" : "")
                  + "; "
                  + difference.words(),
              Summary.WIDTH,
              "- ",
              "  "));
    }
    lines.add("");
  }

  private void findings() {
    int count =
        compared.markerFindings().size()
            + compared.surveys().stream().mapToInt(survey -> survey.findings().size()).sum();
    paragraph(
        count == 0
            ? "Nothing was found wrong in the input."
            : Figures.count(count, "finding", "findings")
                + " in the input: see the table season_findings.");
  }

  private NewScarRate rate(Season season, Scope scope) {
    return compared.newScars().stream()
        .filter(rate -> rate.season().equals(season) && rate.scope().equals(scope))
        .findFirst()
        .orElseThrow();
  }

  private HealingRate healed(Season season, Scope scope) {
    return compared.healing().stream()
        .filter(rate -> rate.season().equals(season) && rate.scope().equals(scope))
        .filter(rate -> rate.widthLowMetres().isEmpty())
        .findFirst()
        .orElseThrow();
  }

  private String confidence() {
    return Figures.chosenPercent(compared.parameters().comparison().confidence());
  }

  private static String rate(NewScarRate rate) {
    if (rate.metresPerHectareYear().isEmpty()) {
      return NONE;
    }
    Interval limits = rate.metresPerHectareYearInterval().orElseThrow();
    return Figures.number(rate.metresPerHectareYear().getAsDouble())
        + " ("
        + Figures.number(limits.low())
        + " to "
        + Figures.number(limits.high())
        + ")";
  }

  private static String percent(OptionalDouble share, Optional<Interval> interval) {
    return Figures.percent(share)
        + interval
            .map(
                limits ->
                    ", " + Figures.percent(limits.low()) + " to " + Figures.percent(limits.high()))
            .orElse("");
  }

  private static String number(OptionalDouble value) {
    return value.isPresent() ? Figures.number(value.getAsDouble()) : NONE;
  }

  private static String change(OptionalDouble ratio, Optional<Interval> interval) {
    if (ratio.isEmpty()) {
      return NONE;
    }
    return signed(ratio.getAsDouble())
        + interval
            .map(limits -> " (" + signed(limits.low()) + " to " + signed(limits.high()) + ")")
            .orElse("");
  }

  private static String signed(double ratio) {
    return String.format(Locale.ROOT, "%+.1f %%", PERCENT * (ratio - 1)).replace('-', '−');
  }

  private void add(String heading, TextTable table) {
    lines.add(heading);
    lines.add("");
    lines.addAll(table.lines(Summary.WIDTH));
    lines.add("");
  }

  private void answer(String question, CharSequence text) {
    paragraph(question);
    lines.addAll(Wrap.lines(text.toString(), Summary.WIDTH, "  ", "  "));
    lines.add("");
  }

  private void paragraph(String text) {
    lines.addAll(Wrap.lines(text, Summary.WIDTH, "", ""));
  }
}
