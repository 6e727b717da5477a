package org.meadowmark.core.write.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.measure.Gap;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.plan.Fitness;
import org.meadowmark.core.plan.RepairPlan;
import org.meadowmark.core.plan.RepairScar;
import org.meadowmark.core.plan.RepairSeason;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Foremost;
import org.meadowmark.core.write.Phrases;
import org.meadowmark.core.write.report.MapLayer.Form;
import org.meadowmark.core.write.report.MapLayer.StyleClass;

/** Layers of scars: all of them, the gaps that they make, those to plant. */
final class ScarLayers {
  /** Scars shown as worth planting where no budget chooses. */
  static final int MOST_CANDIDATES = 50;

  /** What tells which of two scars did more. */
  private record Harm(int gaps, double squareMetres, String scarId) {
    static final Comparator<Harm> MOST_FIRST =
        Comparator.comparingInt((Harm harm) -> -harm.gaps)
            .thenComparingDouble(harm -> -harm.squareMetres)
            .thenComparing(Harm::scarId, Ids.ORDER);

    static Harm of(ScarMeasure scar) {
      return new Harm(scar.gapCount(), scar.footprintInBedsSquareMetres(), scar.scar().id());
    }
  }

  private final AssessedSurvey assessed;
  private final LayerWords words;
  private final Phrases text;
  private final int most;

  ScarLayers(AssessedSurvey assessed, LayerWords words, int most) {
    this.assessed = assessed;
    this.words = words;
    this.text = words.text();
    this.most = most;
  }

  MapLayer scars() {
    List<StyleClass> classes = new ArrayList<>();
    Map<String, Integer> causePlace = new HashMap<>();
    assessed.references().causes().keySet().forEach(key -> causePlace.put(key, causePlace.size()));
    for (ScarCause cause : assessed.references().causes().values()) {
      classes.add(new StyleClass(cause.label(), ReportPalette.scarStyle(classes.size())));
    }
    int other = classes.size();
    List<ScarMeasure> rows = assessed.measurement().scars();
    if (rows.stream().anyMatch(row -> !causePlace.containsKey(row.scar().cause()))) {
      classes.add(new StyleClass(text.get("class.otherCause"), ReportPalette.scarStyle(other)));
    }
    Map<String, RepairScar> repairs = new HashMap<>();
    assessed.repairs().scars().forEach(repair -> repairs.put(repair.scarId(), repair));
    return MapLayer.chosen(
            "scars", Form.LINE, Foremost.of(rows, Harm::of, Harm.MOST_FIRST, most), rows.size())
        .text(text.get("col.scar"), row -> row.scar().id())
        .text(text.get("col.cause"), row -> words.cause(row.scar().cause()))
        .optional(
            text.get("col.width"),
            "m",
            row -> LayerWords.known(row.scar().isLine(), row.scar().widthMetres()))
        .optional(
            text.get("col.length"),
            "m",
            row -> LayerWords.known(row.scar().isLine(), row.lengthMetres()))
        .number(text.get("col.inBeds"), "m²", ScarMeasure::footprintInBedsSquareMetres)
        .count(text.get("col.gaps"), ScarMeasure::gapCount)
        .optional(text.get("col.depth"), "m", ScarMeasure::depthMetres)
        .text(
            text.get("col.mappedOn"), row -> row.scar().date().map(LocalDate::toString).orElse(""))
        .text(
            text.get("col.fitness"),
            row ->
                Optional.ofNullable(repairs.get(row.scar().id()))
                    .map(repair -> repair.fitness().key())
                    .orElse(""))
        .build(
            row -> row.scar().geometry(),
            classes,
            row -> causePlace.getOrDefault(row.scar().cause(), other));
  }

  MapLayer gaps() {
    List<Gap> rows = assessed.measurement().gaps();
    return MapLayer.chosen(
            "gaps", Form.LINE, Foremost.of(rows, Gap.LONGEST_FIRST, most), rows.size())
        .hidden()
        .text(text.get("col.gap"), Gap::id)
        .text(text.get("col.scar"), Gap::scarId)
        .text(text.get("col.between"), row -> row.firstPatchId() + " – " + row.secondPatchId())
        .number(text.get("col.length"), "m", Gap::lengthMetres)
        .number(text.get("col.leastWidth"), "m", Gap::minimumWidthMetres)
        .optional(text.get("col.meanWidth"), "m", Gap::meanWidthMetres)
        .build(Gap::geometry, text.get("class.gap"), "gap");
  }

  /** A scar to plant; season and visit are 0 where no budget chooses. */
  private record Site(RepairScar scar, int season, int visit) {}

  MapLayer repairs() {
    RepairPlan plan = assessed.repairs();
    List<Site> rows = new ArrayList<>();
    for (RepairSeason season : plan.seasons()) {
      for (int i = 0; i < season.scars().size(); i++) {
        rows.add(new Site(season.scars().get(i), season.number(), i + 1));
      }
    }
    boolean planned = !rows.isEmpty();
    if (!planned && plan.choice().isEmpty()) {
      candidates(plan).forEach(scar -> rows.add(new Site(scar, 0, 0)));
    }
    MapLayer.Builder<Site> layer =
        MapLayer.of("repairs", Form.LINE, rows, most)
            .text(text.get("col.scar"), row -> row.scar().scarId());
    if (planned) {
      layer.count(text.get("col.season"), Site::season).count(text.get("col.visit"), Site::visit);
    }
    return layer
        .text(text.get("col.site"), row -> row.scar().siteId())
        .count(text.get("col.units"), row -> row.scar().units())
        .number(text.get("col.cost"), "", row -> row.scar().cost().total())
        .optional(
            text.get("col.gain"),
            "ha·year",
            row ->
                row.scar().gain().isPresent()
                    ? OptionalDouble.of(row.scar().gain().get().middle())
                    : OptionalDouble.empty())
        .number(text.get("col.benefit"), "", row -> row.scar().benefit())
        .optional(
            text.get("col.again"),
            "%",
            row -> LayerWords.percent(row.scar().risk().chancePerYear()))
        .text(text.get("col.unknown"), row -> String.join("; ", row.scar().unknowns()))
        .build(
            row -> row.scar().measure().scar().geometry(),
            text.get(planned ? "class.repair" : "class.candidate"),
            "repair");
  }

  /** Scars that can be planted, best benefit for cost first. */
  static List<RepairScar> candidates(RepairPlan plan) {
    return plan.scars().stream()
        .filter(scar -> scar.fitness() == Fitness.PLANT)
        .filter(scar -> scar.benefit() > 0 && scar.cost().total() > 0)
        .sorted(
            Comparator.comparingDouble((RepairScar scar) -> -scar.benefit() / scar.cost().total())
                .thenComparing(RepairScar::scarId, Ids.ORDER))
        .limit(MOST_CANDIDATES)
        .toList();
  }
}
