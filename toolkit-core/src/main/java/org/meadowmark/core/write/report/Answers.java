package org.meadowmark.core.write.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.measure.Fragmentation;
import org.meadowmark.core.measure.uncertainty.DamageInterval;
import org.meadowmark.core.plan.CurvePoint;
import org.meadowmark.core.plan.Fitness;
import org.meadowmark.core.plan.RepairChoice;
import org.meadowmark.core.plan.RepairPlan;
import org.meadowmark.core.plan.RepairScar;
import org.meadowmark.core.plan.RepairSeason;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.rank.zone.ZonePlan;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Figures;
import org.meadowmark.core.write.Phrases;
import org.meadowmark.core.write.SegmentLabel;

/** The questions that people bring, answered in a sentence each from the figures of the run. */
final class Answers {
  private final AssessedSurvey assessed;
  private final Phrases text;

  Answers(AssessedSurvey assessed, Phrases text) {
    this.assessed = assessed;
    this.text = text;
  }

  /** How much, how fragmented, how sure. */
  String damage() {
    Damage damage = assessed.measurement().whole().damage();
    if (damage.grassSquareMetres() <= 0) {
      return text.get("answer.noBed");
    }
    if (damage.share().isEmpty()) {
      return text.get("answer.notSurveyed", Figures.area(damage.grassSquareMetres()));
    }
    return text.get(
            "answer.damage",
            Figures.area(damage.scarredSquareMetres()),
            Figures.area(damage.surveyedSquareMetres()),
            Figures.percent(damage.share()),
            severity(damage.severityKey()))
        + damage.interval().map(this::interval).orElse(text.get("answer.noInterval"))
        + fragmentation()
        + ".";
  }

  private String interval(DamageInterval interval) {
    return text.get(
        interval.positionDrawn() ? "answer.interval" : "answer.intervalWidths",
        Figures.area(interval.areaSquareMetres().low()),
        Figures.area(interval.areaSquareMetres().high()));
  }

  private String fragmentation() {
    Fragmentation pieces = assessed.measurement().whole().fragmentation();
    String counts =
        text.get(
            "answer.patches",
            Figures.count(pieces.before().patchCount()),
            Figures.count(pieces.after().patchCount()));
    if (pieces.before().largestShare().isEmpty() || pieces.after().largestShare().isEmpty()) {
      return counts;
    }
    return counts
        + text.get(
            "answer.largest",
            Figures.percent(pieces.after().largestShare()),
            Figures.percent(pieces.before().largestShare()));
  }

  /** Grass whose damage nobody looked at; empty where there is none. */
  Optional<String> unknown() {
    Damage damage = assessed.measurement().whole().damage();
    double unknown = damage.grassSquareMetres() - damage.surveyedSquareMetres();
    return unknown > 0 && damage.surveyedSquareMetres() > 0
        ? Optional.of(text.get("answer.unsurveyed", Figures.area(unknown)))
        : Optional.empty();
  }

  /** Which segments, which zones. */
  String channels() {
    if (assessed.ranking().segments().isEmpty()) {
      return text.get("answer.noChannel");
    }
    Optional<RankedSegment> first =
        assessed.ranking().segments().stream()
            .filter(segment -> segment.rank().isPresent())
            .filter(segment -> segment.ratePerHectare().orElse(0) > 0)
            .findFirst();
    return first.map(this::segment).orElse(text.get("answer.noSegment")) + zones() + ".";
  }

  private String segment(RankedSegment first) {
    String rate = Figures.rate(first.ratePerHectare().orElseThrow());
    String name = SegmentLabel.of(first.segment());
    var smoothed = first.statistics().rate();
    if (smoothed.low().isEmpty() || smoothed.high().isEmpty() || smoothed.collapsed()) {
      return text.get("answer.segment", name, rate);
    }
    return text.get(
        "answer.segmentInterval",
        name,
        rate,
        Figures.number(smoothed.low().getAsDouble()),
        Figures.number(smoothed.high().getAsDouble()));
  }

  private String zones() {
    ZonePlan plan = assessed.zones();
    if (plan.zones().isEmpty()) {
      return text.get("answer.noZone");
    }
    double length = plan.zones().stream().mapToDouble(Zone::lengthMetres).sum();
    double share = plan.zones().stream().mapToDouble(Zone::coveredShare).sum();
    long marks = plan.zones().stream().mapToLong(zone -> zone.markers().size()).sum();
    return text.get(
            plan.zones().size() == 1 ? "answer.zone" : "answer.zones",
            Figures.count(plan.zones().size()),
            Figures.length(length),
            Figures.count(marks, text.get("noun.mark"), text.get("noun.marks")),
            Figures.length(plan.best().coveredMetres()),
            Figures.percent(share))
        + text.get(plan.best().isProvenBest() ? "answer.zonesProven" : "answer.zonesUnproven");
  }

  /** Which scars first. */
  String repairs() {
    RepairPlan plan = assessed.repairs();
    if (plan.scars().isEmpty()) {
      return text.get("answer.noScar");
    }
    return plan.choice().map(choice -> choice(plan, choice)).orElseGet(() -> withoutBudget(plan));
  }

  private String choice(RepairPlan plan, RepairChoice choice) {
    if (plan.seasons().isEmpty()) {
      return text.get("answer.nothingChosen", Figures.number(choice.budget()));
    }
    List<String> first = new ArrayList<>();
    for (RepairScar scar : plan.seasons().get(0).scars()) {
      if (first.size() < 3) {
        first.add(scar.scarId());
      }
    }
    long scars = plan.seasons().stream().mapToLong(season -> season.scars().size()).sum();
    long units = plan.seasons().stream().mapToLong(RepairSeason::units).sum();
    double cost = plan.seasons().stream().mapToDouble(RepairSeason::cost).sum();
    return text.get(
            "answer.choice",
            Figures.number(choice.budget()),
            Figures.count(scars, text.get("noun.scar"), text.get("noun.scars")),
            Figures.count(units, text.get("noun.unit"), text.get("noun.units")),
            Figures.number(cost),
            String.join(", ", first))
        + (choice.isProvenBest()
            ? text.get("answer.choiceProven")
            : text.get("answer.choiceBound", Figures.percent(choice.gapShare())))
        + placeholders();
  }

  private String withoutBudget(RepairPlan plan) {
    long fit = plan.scars().stream().filter(scar -> scar.fitness() == Fitness.PLANT).count();
    List<String> first =
        ScarLayers.candidates(plan).stream().limit(3).map(RepairScar::scarId).toList();
    if (first.isEmpty()) {
      return text.get("answer.nothingFit", Figures.count(plan.scars().size()));
    }
    return text.get(
            "answer.noBudget",
            Figures.count(fit),
            Figures.count(plan.scars().size()),
            String.join(", ", first))
        + plan.flattens().map(this::flat).orElse("")
        + placeholders();
  }

  private String flat(CurvePoint flat) {
    return text.get(
        "answer.flat", Figures.number(flat.budget()), Figures.percent(RepairPlan.FLAT_SHARE));
  }

  private String placeholders() {
    return assessed.definition().parameters().repair().placeholders().names().isEmpty()
        ? text.get("answer.end")
        : text.get("answer.placeholders");
  }

  private String severity(String key) {
    return assessed.references().severityClasses().stream()
        .filter(each -> each.key().equals(key))
        .map(each -> each.label())
        .findFirst()
        .orElse(text.get("unknown"));
  }
}
