package org.meadowmark.core.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.measure.recovery.ScarRecovery;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.plan.choice.BudgetChoice;
import org.meadowmark.core.plan.choice.BudgetChooser;
import org.meadowmark.core.plan.choice.BudgetProblem;
import org.meadowmark.core.plan.choice.Candidate;
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
  }

  /**
   * Plans.
   *
   * @param measurement scars and connectivity
   * @param ranking channel segments, for the chance of being scarred again
   * @param zones zones proposed for marking
   * @param recoveries what planting gains, by scar; a scar that is absent has no forecast
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
    List<ScarMeasure> measures =
        measurement.scars().stream()
            .sorted((a, b) -> Ids.ORDER.compare(a.scar().id(), b.scar().id()))
            .toList();
    RepairSites sites =
        new RepairSites(
            measures.stream().map(RepairPlanner::middle).toList(), choices.siteDistanceMetres());
    List<RepairScar> scars = new ArrayList<>();
    for (int i = 0; i < measures.size(); i++) {
      scars.add(assessor.assess(measures.get(i), "R" + (sites.of(i) + 1)));
    }
    List<RepairScar> fit = scars.stream().filter(scar -> scar.fitness() == Fitness.PLANT).toList();
    if (choices.budget().isEmpty()) {
      return new RepairPlan(
          scars,
          Optional.empty(),
          List.of(),
          List.of(),
          curve(fit),
          List.of(),
          PlanNotes.gaps(choices, scars),
          PlanNotes.assumptions(choices));
    }
    double budget = choices.budget().getAsDouble();
    BudgetProblem problem = problem(fit, budget);
    BudgetChoice best = chooser.choose(problem);
    RepairChoice choice =
        new RepairChoice(
            budget,
            best.cost(),
            best.benefit(),
            best.upperBound(),
            best.isProvenBest(),
            chooser.greedy(problem).benefit());
    List<RepairScar> left = new ArrayList<>(best.chosen().stream().map(fit::get).toList());
    List<RepairSeason> seasons = seasons(left, budget);
    return new RepairPlan(
        scars,
        Optional.of(choice),
        seasons,
        left,
        curve(fit),
        units(seasons, layout),
        PlanNotes.gaps(choices, scars),
        PlanNotes.assumptions(choices));
  }

  /** Takes what each season holds out of what is left. */
  private List<RepairSeason> seasons(List<RepairScar> left, double budget) {
    List<RepairSeason> seasons = new ArrayList<>();
    double money = budget;
    for (int number = 1; number <= choices.mostSeasons() && !left.isEmpty(); number++) {
      double seasonBudget = Math.min(money, choices.seasonBudget().orElse(money));
      BudgetChoice choice = chooser.choose(problem(left, seasonBudget));
      if (choice.chosen().isEmpty()) {
        break;
      }
      List<RepairScar> chosen = choice.chosen().stream().map(left::get).toList();
      seasons.add(season(number, chosen, choice));
      left.removeAll(new HashSet<>(chosen));
      money = Math.max(0, money - choice.cost());
    }
    return seasons;
  }

  private RepairSeason season(int number, List<RepairScar> chosen, BudgetChoice choice) {
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
        way.lengthMetres(),
        way.lowerBoundMetres());
  }

  private List<CurvePoint> curve(List<RepairScar> fit) {
    List<CurvePoint> points = new ArrayList<>();
    BudgetProblem everything = problem(fit, 0);
    List<Integer> all = new ArrayList<>();
    for (int i = 0; i < fit.size(); i++) {
      all.add(i);
    }
    double full = everything.cost(all);
    if (!(full > 0)) {
      return points;
    }
    for (double share : CURVE_SHARES) {
      BudgetChoice choice = chooser.greedy(everything.withBudget(share * full));
      points.add(
          new CurvePoint(
              share * full,
              choice.cost(),
              choice.benefit(),
              choice.upperBound(),
              choice.chosen().size(),
              choice.chosen().stream().mapToLong(i -> fit.get(i).units()).sum()));
    }
    return points;
  }

  private BudgetProblem problem(List<RepairScar> scars, double budget) {
    Map<String, Integer> sites = new HashMap<>();
    List<Candidate> candidates = new ArrayList<>();
    List<Double> mobilisation = new ArrayList<>();
    for (RepairScar scar : scars) {
      int site = sites.computeIfAbsent(scar.siteId(), id -> sites.size());
      if (site == mobilisation.size()) {
        mobilisation.add(choices.mobilisationCost());
      }
      candidates.add(new Candidate(site, scar.cost().total(), scar.benefit()));
    }
    return new BudgetProblem(candidates, mobilisation, budget);
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
