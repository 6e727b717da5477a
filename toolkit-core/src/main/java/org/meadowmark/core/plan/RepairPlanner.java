package org.meadowmark.core.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.measure.recovery.LossConventions;
import org.meadowmark.core.measure.recovery.Planting;
import org.meadowmark.core.measure.recovery.ScarRecovery;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.plan.choice.BudgetChoice;
import org.meadowmark.core.plan.choice.BudgetChooser;
import org.meadowmark.core.plan.layout.PlantingLayout;
import org.meadowmark.core.plan.layout.PlantingUnit;
import org.meadowmark.core.plan.layout.VisitOrder;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.rank.zone.ZonePlan;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.RepairParameters;

/**
 * Plans the repair of scars: figures for each, the choice within a budget, seasons, and places of
 * the units. Time n log n in scars, but for the proven choice and the order of visits, which both
 * have limits.
 */
public final class RepairPlanner {
  /** Budgets of the curve, as parts of what everything that is fit would cost. */
  private static final double[] CURVE_SHARES = {
    0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1
  };

  private final Parameters parameters;
  private final RepairParameters choices;
  private final MetricSurvey survey;
  private final Optional<LocalDate> surveyDate;
  private final LossConventions conventions;
  private final Planting planting;
  private final BudgetChooser chooser = new BudgetChooser();

  /**
   * A planner.
   *
   * @param survey beds and scale
   * @param surveyDate date of the survey, where stated
   * @param parameters choices
   */
  public RepairPlanner(MetricSurvey survey, Optional<LocalDate> surveyDate, Parameters parameters) {
    this.survey = survey;
    this.surveyDate = surveyDate;
    this.parameters = parameters;
    this.choices = parameters.repair();
    this.conventions =
        LossConventions.of(
            parameters,
            surveyDate.map(date -> OptionalInt.of(date.getYear())).orElse(OptionalInt.empty()));
    this.planting = Planting.of(parameters.recovery());
  }

  /**
   * Plans the repair of the scars of a survey.
   *
   * @param measurement scars and connectivity
   * @param ranking channel segments, for the chance of being scarred again
   * @param zones zones proposed for marking
   * @param recoveries what planting gains, by scar; a scar that is absent has no forecast
   * @return figures of every scar and the curve; choice, seasons and units only where a budget is
   *     set
   */
  public RepairPlan plan(
      Measurement measurement,
      ChannelRanking ranking,
      ZonePlan zones,
      List<ScarRecovery> recoveries) {
    PlantingLayout layout =
        new PlantingLayout(
            survey, choices.pattern(), parameters.recovery().plantingSpacingMetres());
    ScarAssessor assessor =
        new ScarAssessor(
            choices,
            parameters.recovery().plantingSurvival(),
            layout,
            new RescarRisks(
                ranking, zones, parameters.zones().recoveryMiddleYears(), choices.markerEffect()),
            recoveries,
            measurement.connectivity(),
            survey.beds());
    List<RepairScar> scars = assess(measurement.scars(), assessor);
    List<RepairScar> fit = scars.stream().filter(scar -> scar.fitness() == Fitness.PLANT).toList();
    RepairProblem.Maker maker =
        new RepairProblem.Maker(
            choices, new LaterGains(conventions, planting, recoveries), measurement.connectivity());
    RepairProblem everything = maker.of(fit, 0, 0, List.of());
    if (choices.budget().isEmpty()) {
      return new RepairPlan(
          scars,
          Optional.empty(),
          List.of(),
          List.of(),
          curve(everything, fit),
          List.of(),
          PlanNotes.gaps(choices, scars),
          PlanNotes.assumptions(choices));
    }
    double budget = choices.budget().getAsDouble();
    RepairProblem problem = everything.withBudget(budget);
    BudgetChoice bySum = chooser.choose(problem.problem());
    BudgetChoice best = chooser.choose(problem.problem(), problem.joint(), bySum);
    RepairChoice choice =
        new RepairChoice(
            budget,
            best.cost(),
            best.benefit(),
            best.upperBound(),
            best.proof(),
            chooser.greedy(problem.problem(), problem.joint()).benefit(),
            problem.problem().benefit(best.chosen()),
            bySum,
            problem.connected(best.chosen()));
    List<RepairScar> left = new ArrayList<>(best.chosen().stream().map(fit::get).toList());
    List<RepairSeason> seasons = seasons(maker, left, budget);
    return new RepairPlan(
        scars,
        Optional.of(choice),
        seasons,
        left,
        curve(everything, fit),
        units(seasons, layout),
        PlanNotes.gaps(choices, scars),
        PlanNotes.assumptions(choices));
  }

  /** By id. A measure is asked for twice rather than held. */
  private List<RepairScar> assess(List<ScarMeasure> measures, ScarAssessor assessor) {
    List<String> ids = new ArrayList<>(measures.size());
    List<Coordinate> middles = new ArrayList<>(measures.size());
    for (ScarMeasure measure : measures) {
      ids.add(measure.scar().id());
      middles.add(middle(measure));
    }
    int[] order =
        IntStream.range(0, ids.size())
            .boxed()
            .sorted((a, b) -> Ids.ORDER.compare(ids.get(a), ids.get(b)))
            .mapToInt(Integer::intValue)
            .toArray();
    RepairSites sites =
        new RepairSites(
            IntStream.of(order).mapToObj(middles::get).toList(), choices.siteDistanceMetres());
    List<RepairScar> scars = new ArrayList<>(order.length);
    for (int i = 0; i < order.length; i++) {
      scars.add(assessor.assess(measures.get(order[i]), "R" + (sites.of(i) + 1)));
    }
    return scars;
  }

  /** Takes what each season holds out of what is left. */
  private List<RepairSeason> seasons(
      RepairProblem.Maker maker, List<RepairScar> left, double budget) {
    List<RepairSeason> seasons = new ArrayList<>();
    List<RepairScar> planted = new ArrayList<>();
    double money = budget;
    for (int number = 1; number <= choices.mostSeasons() && !left.isEmpty(); number++) {
      double seasonBudget = Math.min(money, choices.seasonBudget().orElse(money));
      RepairProblem problem = maker.of(left, seasonBudget, number - 1, planted);
      BudgetChoice choice = chooser.all(problem.problem(), problem.joint());
      if (choice.chosen().isEmpty()) {
        break;
      }
      List<RepairScar> chosen = choice.chosen().stream().map(left::get).toList();
      seasons.add(season(number, chosen, choice, problem.connected(choice.chosen())));
      left.removeAll(new HashSet<>(chosen));
      planted.addAll(chosen);
      money = Math.max(0, money - choice.cost());
    }
    return seasons;
  }

  private RepairSeason season(
      int number, List<RepairScar> chosen, BudgetChoice choice, Optional<Connected> connected) {
    VisitOrder way = VisitOrder.of(chosen.stream().map(scar -> middle(scar.measure())).toList());
    PlantingWindow window = new PlantingWindow(choices.firstMonth(), choices.lastMonth());
    return new RepairSeason(
        number,
        window.from(surveyDate, number),
        window.to(surveyDate, number),
        way.order().stream().map(chosen::get).toList(),
        Math.toIntExact(chosen.stream().map(RepairScar::siteId).distinct().count()),
        choice.cost(),
        choice.benefit(),
        connected,
        way.lengthMetres(),
        way.lowerBoundMetres());
  }

  private List<CurvePoint> curve(RepairProblem everything, List<RepairScar> fit) {
    List<CurvePoint> points = new ArrayList<>();
    double full = everything.problem().cost(IntStream.range(0, fit.size()).boxed().toList());
    if (!(full > 0)) {
      return points;
    }
    BudgetChoice before = null;
    for (double share : CURVE_SHARES) {
      RepairProblem problem = everything.withBudget(share * full);
      BudgetChoice choice = chooser.greedy(problem.problem(), problem.joint());
      if (before != null && before.benefit() > choice.benefit()) {
        // More money still buys what less did.
        choice = before;
      }
      before = choice;
      points.add(
          new CurvePoint(
              share * full,
              choice.cost(),
              choice.benefit(),
              Math.max(choice.upperBound(), choice.benefit()),
              choice.chosen().size(),
              choice.chosen().stream().mapToLong(i -> fit.get(i).units()).sum(),
              problem.connected(choice.chosen())));
    }
    return points;
  }

  private static List<PlantingUnit> units(List<RepairSeason> seasons, PlantingLayout layout) {
    return seasons.stream()
        .flatMap(season -> season.scars().stream())
        .sorted((a, b) -> Ids.ORDER.compare(a.scarId(), b.scarId()))
        .flatMap(scar -> layout.units(scar.measure()).stream())
        .toList();
  }

  private static Coordinate middle(ScarMeasure measure) {
    return measure.scar().geometry().getEnvelopeInternal().centre();
  }
}
