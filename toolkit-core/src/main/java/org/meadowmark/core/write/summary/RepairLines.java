package org.meadowmark.core.write.summary;

import java.util.Arrays;
import java.util.stream.Collectors;
import org.meadowmark.core.plan.Connected;
import org.meadowmark.core.plan.CurvePoint;
import org.meadowmark.core.plan.Fitness;
import org.meadowmark.core.plan.RepairChoice;
import org.meadowmark.core.plan.RepairPlan;
import org.meadowmark.core.plan.RepairSeason;
import org.meadowmark.core.write.Figures;

/** What the summary says about repairs. */
final class RepairLines {
  private final RepairPlan plan;

  RepairLines(RepairPlan plan) {
    this.plan = plan;
  }

  /** Empty where no scar was looked at. */
  String answer() {
    if (plan.scars().isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder(fitness()).append(' ');
    plan.choice().ifPresent(choice -> text.append(choice(choice)).append(' '));
    plan.flattens()
        .filter(flat -> flat.budget() < last().budget())
        .ifPresent(flat -> text.append(flat(flat)).append(' '));
    return text.append(String.join(" ", plan.gaps())).toString();
  }

  private String fitness() {
    return Arrays.stream(Fitness.values())
            .map(fitness -> Figures.count(count(fitness)) + " " + words(fitness))
            .collect(Collectors.joining(", "))
        + ".";
  }

  private long count(Fitness fitness) {
    return plan.scars().stream().filter(scar -> scar.fitness() == fitness).count();
  }

  private static String words(Fitness fitness) {
    return switch (fitness) {
      case PLANT -> "can be planted";
      case PROTECT_FIRST -> "need protection first";
      case NOT_FIT -> "are not fit";
      case NO_GAIN -> "gain nothing that is known";
    };
  }

  private String choice(RepairChoice choice) {
    long scars = plan.seasons().stream().mapToLong(season -> season.scars().size()).sum();
    long units = plan.seasons().stream().mapToLong(RepairSeason::units).sum();
    return "A budget of "
        + Figures.number(choice.budget())
        + " plants "
        + Figures.count(scars, "scar", "scars")
        + " with "
        + Figures.count(units, "unit", "units")
        + " in "
        + Figures.count(plan.seasons().size(), "season", "seasons")
        + " for "
        + Figures.number(plan.seasons().stream().mapToDouble(RepairSeason::cost).sum())
        + (plan.notPlaced().isEmpty()
            ? ""
            : "; "
                + Figures.count(plan.notPlaced().size())
                + " more find no room in a season, since each season pays the way to a site again")
        + ". "
        + later()
        + choice
            .connected()
            .filter(connected -> connected.togetherHectares() > 0)
            .map(RepairLines::connected)
            .orElse("")
        + (choice.isProvenBest()
            ? "No other choice within it is worth more (" + choice.proof().key() + ")."
            : "It is not proven that no other choice is worth more; none is worth more than "
                + Figures.number(choice.upperBound())
                + " against its "
                + Figures.number(choice.benefit())
                + ", a gap of at most "
                + Figures.percent(choice.gapShare())
                + ".");
  }

  private String later() {
    double benefit = plan.seasons().stream().mapToDouble(RepairSeason::benefit).sum();
    return plan.seasons().size() < 2
        ? ""
        : "Season by season they are worth "
            + Figures.number(benefit)
            + ", since what is planted later counts less. ";
  }

  private static String connected(Connected connected) {
    return "Filled together they restore "
        + Figures.number(connected.togetherHectares())
        + " ha of equivalent connected area; each alone, added up, "
        + Figures.number(connected.separateHectares())
        + " ha. ";
  }

  private CurvePoint last() {
    return plan.curve().get(plan.curve().size() - 1);
  }

  private String flat(CurvePoint flat) {
    CurvePoint last = last();
    return "The curve flattens: "
        + Figures.number(flat.budget())
        + " buys "
        + Figures.percent(last.benefit() > 0 ? flat.benefit() / last.benefit() : 1)
        + " of what "
        + Figures.number(last.budget())
        + " would.";
  }
}
