package org.meadowmark.core.change.match;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.meadowmark.core.change.SeasonSurvey;
import org.meadowmark.core.model.DepthField;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.survey.MatchingParameters;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.PositionalAccuracy;
import org.meadowmark.samples.Estuary;
import org.meadowmark.samples.EstuaryGenerator;
import org.meadowmark.samples.EstuarySettings;
import org.meadowmark.samples.SampleScar;
import org.meadowmark.samples.TwoSeasons;
import org.meadowmark.samples.TwoSeasons.Fate;
import org.meadowmark.samples.TwoSeasons.TruePair;

/** How well scars of two invented surveys are matched, held against the truth. */
final class MatchingStudy {
  private static final int BEDS = 400;
  private static final LocalDate EARLIER = LocalDate.of(2025, 6, 14);
  private static final LocalDate LATER = LocalDate.of(2026, 6, 14);

  private MatchingStudy() {}

  /** Scars of one fate: how many the two surveys mapped, and how many were classed right. */
  record Tally(long scars, long right) {
    Tally plus(Tally other) {
      return new Tally(scars + other.scars, right + other.right);
    }

    double share() {
      return (double) right / scars;
    }
  }

  /** Figures over several places. */
  record Outcome(
      long truePairs,
      long foundPairs,
      long rightPairs,
      Map<Fate, Tally> byFate,
      double trueNewMetres,
      double newMetres,
      double trueHealedMetres,
      double healedMetres,
      double toleranceMetres) {
    static final Outcome NONE = new Outcome(0, 0, 0, Map.of(), 0, 0, 0, 0, 0);

    double recall() {
      return (double) rightPairs / truePairs;
    }

    double precision() {
      return (double) rightPairs / foundPairs;
    }

    double newShare() {
      return newMetres / trueNewMetres;
    }

    double healedShare() {
      return healedMetres / trueHealedMetres;
    }

    double right() {
      Tally all = byFate.values().stream().reduce(new Tally(0, 0), Tally::plus);
      return all.share();
    }

    Outcome plus(Outcome other) {
      Map<Fate, Tally> fates = new EnumMap<>(Fate.class);
      fates.putAll(byFate);
      other.byFate.forEach((fate, tally) -> fates.merge(fate, tally, Tally::plus));
      return new Outcome(
          truePairs + other.truePairs,
          foundPairs + other.foundPairs,
          rightPairs + other.rightPairs,
          fates,
          trueNewMetres + other.trueNewMetres,
          newMetres + other.newMetres,
          trueHealedMetres + other.trueHealedMetres,
          healedMetres + other.healedMetres,
          other.toleranceMetres);
    }
  }

  /** What was tried: so many true scars of a place, mapped with such an error. */
  record Case(int scars, double errorMetres) {}

  /**
   * Matches invented places of consecutive seeds.
   *
   * @param cases what to try at each place; of the scars of the largest, others take the first ones
   */
  static Map<Case, Outcome> run(
      long firstSeed, int seeds, List<Case> cases, MatchingParameters parameters) {
    Map<Case, Outcome> outcomes = new LinkedHashMap<>();
    int most = cases.stream().mapToInt(Case::scars).max().orElseThrow();
    for (long seed = firstSeed; seed < firstSeed + seeds; seed++) {
      List<Scar> base = scars(seed, most);
      for (Case one : cases) {
        TwoSeasons seasons = TwoSeasons.of(base.subList(0, one.scars()), one.errorMetres(), seed);
        SeasonMatch match =
            new ScarMatcher(parameters)
                .match(
                    survey(EARLIER, seasons.earlier(), one.errorMetres()),
                    survey(LATER, seasons.later(), one.errorMetres()),
                    Progress.NONE);
        outcomes.merge(one, judge(seasons, match), Outcome::plus);
      }
    }
    return outcomes;
  }

  private static List<Scar> scars(long seed, int count) {
    EstuarySettings sample = EstuarySettings.SAMPLE;
    return EstuaryGenerator.generate(
            new EstuarySettings(
                seed,
                count,
                BEDS,
                1,
                sample.plantedHotSpots(),
                sample.hotSpotElevation(),
                sample.lastSurvey()))
        .scars(0)
        .map(MatchingStudy::scar)
        .toList();
  }

  private static Outcome judge(TwoSeasons seasons, SeasonMatch match) {
    Set<TruePair> truth = new HashSet<>(seasons.pairs());
    long found = 0;
    long right = 0;
    for (ScarLink link : match.links()) {
      if (link.telling()) {
        found++;
        right += truth.contains(new TruePair(link.earlierId(), link.laterId())) ? 1 : 0;
      }
    }
    Map<Fate, Tally> byFate = new EnumMap<>(Fate.class);
    List<ScarChange> all = new ArrayList<>(match.earlier());
    all.addAll(match.later());
    for (ScarChange change : all) {
      Fate fate = seasons.fates().get(change.id());
      boolean isRight = change.change() == expected(fate);
      byFate.merge(fate, new Tally(1, isRight ? 1 : 0), Tally::plus);
    }
    return new Outcome(
        truth.size(),
        found,
        right,
        byFate,
        seasons.newMetres(),
        match.laterTotals().unassignedMetres(),
        seasons.healedMetres(),
        match.earlierTotals().unassignedMetres(),
        match.toleranceMetres());
  }

  private static ChangeClass expected(Fate fate) {
    return switch (fate) {
      case PERSISTING -> ChangeClass.PERSISTING;
      case HEALED, MISSED -> ChangeClass.HEALED;
      case NEW -> ChangeClass.NEW;
      case EXTENDED -> ChangeClass.EXTENDED;
      case SHORTENED -> ChangeClass.SHORTENED;
      case SPLIT -> ChangeClass.SPLIT;
      case MERGED -> ChangeClass.MERGED;
    };
  }

  private static SeasonSurvey survey(LocalDate date, List<Scar> scars, double errorMetres) {
    return new SeasonSurvey(
        date,
        new MetricSurvey(
            Estuary.CRS,
            "",
            scars,
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            DepthField.UNKNOWN,
            GroundScale.NONE),
        PositionalAccuracy.ofRadialRmse(errorMetres));
  }

  private static Scar scar(SampleScar seen) {
    String id = Long.toString(seen.truthId());
    return new Scar(
        id,
        new FeatureRef("invented", "scars", id),
        seen.geometry(),
        seen.cause(),
        seen.widthMetres().orElse(0),
        seen.widthMetres().isPresent() ? Scar.WidthSource.MEASURED : Scar.WidthSource.OUTLINE,
        Optional.empty());
  }

  /** The rows of both tables of the document. */
  static List<String> tables(long firstSeed, int seeds, double[] errors) {
    List<String> rows = new ArrayList<>();
    List<String> classes = new ArrayList<>();
    MatchingParameters parameters = ParametersTable.bundled().defaults().matching();
    List<Case> cases = new ArrayList<>();
    for (int scars : new int[] {1_000, 3_000}) {
      for (double error : errors) {
        cases.add(new Case(scars, error));
      }
    }
    run(firstSeed, seeds, cases, parameters)
        .forEach(
            (one, o) -> {
              String head =
                  String.format(
                      Locale.ROOT, "| %,d | %s m |", one.scars(), trimmed(one.errorMetres()));
              rows.add(
                  head
                      + String.format(
                          Locale.ROOT,
                          " %.2f m | %,d | %.3f | %.3f | %.3f | %.3f | %.3f |",
                          o.toleranceMetres,
                          o.truePairs,
                          o.recall(),
                          o.precision(),
                          o.right(),
                          o.newShare(),
                          o.healedShare()));
              StringBuilder row = new StringBuilder(head);
              for (Fate fate : Fate.values()) {
                row.append(String.format(Locale.ROOT, " %.3f |", o.byFate.get(fate).share()));
              }
              classes.add(row.toString());
            });
    rows.add("");
    rows.addAll(classes);
    return rows;
  }

  private static String trimmed(double metres) {
    return metres == Math.rint(metres)
        ? Long.toString(Math.round(metres))
        : Double.toString(metres);
  }
}
