package org.meadowmark.core.write.table;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.plan.Connected;
import org.meadowmark.core.plan.CurvePoint;
import org.meadowmark.core.plan.RepairChoice;
import org.meadowmark.core.plan.RepairPlan;
import org.meadowmark.core.plan.RepairScar;
import org.meadowmark.core.plan.RepairSeason;
import org.meadowmark.core.plan.layout.PlantingUnit;
import org.meadowmark.core.write.Column.Type;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** The tables of the repair plan. */
final class RepairTables {
  private static final String TOGETHER =
      "Growth of the equivalent connected area with all of them filled.";
  private static final String SEPARATE =
      "Sum of what each of them alone would restore; gains act on each other.";

  private RepairTables() {}

  /** A scar with its place in the plan; season 0 is none. */
  record SiteRow(RepairScar scar, int season, int visit) {}

  static TableLayout<SiteRow> sites() {
    return TableLayout.<SiteRow>named(
            "repair_sites",
            Comparator.comparing(row -> row.scar().scarId(), Ids.ORDER),
            "One row a scar: what planting it takes, costs and gains, and whether it is planned."
                + " Costs are placeholders unless they were set.")
        .geometry(GeometryKind.GEOMETRY, row -> row.scar().measure().scar().geometry())
        .text("scar_id", "Id of the scar.", row -> row.scar().scarId())
        .text(
            "site_id",
            "Site: scars of one site share one mobilisation.",
            row -> row.scar().siteId())
        .text(
            "fitness",
            "plant, protect first, not fit, or no gain.",
            row -> row.scar().fitness().key())
        .text(
            "reasons",
            "Why it is not to be planted, or what has to be done first.",
            row -> String.join("; ", row.scar().reasons()))
        .column(
            "season",
            Type.INTEGER,
            "1",
            "Season in which it is planned; empty where it is not.",
            row -> row.season() > 0 ? (long) row.season() : null)
        .column(
            "visit",
            Type.INTEGER,
            "1",
            "Place in the order of visits of its season.",
            row -> row.visit() > 0 ? (long) row.visit() : null)
        .text("species", "Key of the species of its bed.", row -> row.scar().species())
        .real("area_m2", "m²", "Footprint inside beds.", row -> row.scar().areaSquareMetres())
        .optionalReal(
            "water_depth_m",
            "m",
            "Water depth at its middle, where known.",
            row -> row.scar().measure().depthMetres())
        .optionalReal(
            "excavation_m",
            "m",
            "How deep it is dug out, where mapped.",
            row -> row.scar().excavationMetres())
        .count("rows", "Rows of units across it; 0 for a polygon.", row -> row.scar().rows())
        .count("units", "Planting units inside beds.", row -> row.scar().units())
        .real(
            "survivors_low",
            "1",
            "Units expected to live, low end.",
            row -> row.scar().survivors().low())
        .real(
            "survivors",
            "1",
            "Units expected to live, middle.",
            row -> row.scar().survivors().middle())
        .real(
            "survivors_high",
            "1",
            "Units expected to live, high end.",
            row -> row.scar().survivors().high())
        .optionalReal(
            "fill_m3",
            "m³",
            "Fill that it takes first; empty where the excavation is not known.",
            row -> row.scar().fillCubicMetres())
        .real(
            "unit_cost",
            "",
            "Cost of its units, in your currency.",
            row -> row.scar().cost().units())
        .real(
            "fill_cost",
            "",
            "Cost of its fill; 0 where the excavation is not known.",
            row -> row.scar().cost().fill())
        .real(
            "monitoring_cost",
            "",
            "Cost of following it up.",
            row -> row.scar().cost().monitoring())
        .real(
            "cost",
            "",
            "The three together, without the mobilisation of the site.",
            row -> row.scar().cost().total())
        .optionalReal(
            "gain_low_ha_years",
            "ha·year",
            "Discounted service-hectare-years that planting gives back, low end.",
            row -> gain(row, Range::low))
        .optionalReal(
            "gain_ha_years", "ha·year", "The same, middle.", row -> gain(row, Range::middle))
        .optionalReal(
            "gain_high_ha_years", "ha·year", "The same, high end.", row -> gain(row, Range::high))
        .text("gain_basis", "Where the gain comes from.", row -> row.scar().gainBasis())
        .optionalReal(
            "connectivity_gain_ha",
            "ha",
            "Growth of the equivalent connected area if this scar alone were filled.",
            row -> row.scar().connectivityGainHectares())
        .percent(
            "scarred_again_pct",
            "Chance a year that a point of it is scarred again, from the rate of its segments.",
            row -> row.scar().risk().chancePerYear())
        .percent(
            "scarred_again_marked_pct",
            "The same with the proposed zones marked; what a marker does is marker_effect.",
            row -> row.scar().risk().chanceWithMarker())
        .percent(
            "earlier_season_pct",
            "Part of the new scar length at its segments on ground scarred in an earlier season; empty"
                + " with one season.",
            row -> row.scar().risk().reScarredShare())
        .real(
            "benefit",
            "1",
            "Weighted benefit of planting this scar alone in the first season.",
            row -> row.scar().benefit())
        .text(
            "unknown",
            "What the survey does not tell of it.",
            row -> String.join("; ", row.scar().unknowns()))
        .build();
  }

  static TableLayout<PlantingUnit> units() {
    return TableLayout.<PlantingUnit>named(
            "repair_units",
            Comparator.comparing(PlantingUnit::scarId, Ids.ORDER)
                .thenComparingInt(PlantingUnit::number),
            "One row a planting unit of a planned scar.")
        .geometry(GeometryKind.POINT, PlantingUnit::geometry)
        .text("scar_id", "Id of the scar.", PlantingUnit::scarId)
        .count("unit", "Number along the rows of the scar.", PlantingUnit::number)
        .count("row", "Row across the scar.", PlantingUnit::row)
        .build();
  }

  static TableLayout<CurvePoint> curve() {
    return TableLayout.<CurvePoint>named(
            "repair_budget_curve",
            Comparator.comparingDouble(CurvePoint::budget),
            "One row a budget: what the best benefit for cost first buys; the last row buys all"
                + " that is fit.")
        .real("budget", "", "Budget, in your currency.", CurvePoint::budget)
        .real(
            "cost", "", "What is spent, mobilisation with it, in your currency.", CurvePoint::cost)
        .real("benefit", "1", "What that is worth together.", CurvePoint::benefit)
        .real("upper_bound", "1", "No choice within it is worth more.", CurvePoint::upperBound)
        .count("scar_count", "Scars planted.", CurvePoint::scars)
        .count("units", "Planting units.", CurvePoint::units)
        .optionalReal("connectivity_gain_ha", "ha", TOGETHER, point -> together(point.connected()))
        .optionalReal(
            "connectivity_gain_separate_ha", "ha", SEPARATE, point -> separate(point.connected()))
        .build();
  }

  static TableLayout<RepairSeason> seasons() {
    return TableLayout.<RepairSeason>named(
            "repair_seasons",
            Comparator.comparingInt(RepairSeason::number),
            "One row a season of the plan.")
        .count("season", "1 is the first that starts after the survey.", RepairSeason::number)
        .column(
            "from",
            Type.DATE,
            "",
            "First day of the planting window; empty where the survey has no date.",
            season -> season.from().orElse(null))
        .column(
            "to",
            Type.DATE,
            "",
            "Last day of the planting window.",
            season -> season.to().orElse(null))
        .count("scar_count", "Scars planted.", season -> season.scars().size())
        .count("site_count", "Sites, each with its mobilisation.", RepairSeason::siteCount)
        .count("units", "Planting units.", RepairSeason::units)
        .real("fill_m3", "m³", "Fill that is known to be needed.", RepairSeason::fillCubicMetres)
        .real("cost", "", "Cost, mobilisation with it, in your currency.", RepairSeason::cost)
        .real(
            "benefit",
            "1",
            "What its scars are worth together, planted in this season after those of earlier ones:"
                + " what comes later counts less.",
            RepairSeason::benefit)
        .optionalReal(
            "connectivity_gain_ha",
            "ha",
            TOGETHER + " Beyond that of earlier seasons; not discounted.",
            season -> together(season.connected()))
        .optionalReal(
            "connectivity_gain_separate_ha", "ha", SEPARATE, season -> separate(season.connected()))
        .real(
            "way_m",
            "m",
            "Way between its scars in the order of visits, in straight lines.",
            RepairSeason::wayMetres)
        .real(
            "shortest_way_m",
            "m",
            "No way is shorter: length of the shortest tree that joins them.",
            RepairSeason::shortestWayMetres)
        .build();
  }

  static TableLayout<RepairChoice> choice() {
    return TableLayout.<RepairChoice>named(
            "repair_choice",
            Comparator.comparingDouble(RepairChoice::budget),
            "One row where a budget is set: how good the choice within it is, with all of it planted"
                + " in the first season.")
        .real("budget", "", "Budget, in your currency.", RepairChoice::budget)
        .real(
            "cost",
            "",
            "What is spent, mobilisation with it, in your currency.",
            RepairChoice::cost)
        .real("benefit", "1", "What the scars are worth together.", RepairChoice::benefit)
        .real(
            "benefit_separate",
            "1",
            "Sum of what each of them is worth alone.",
            RepairChoice::separateBenefit)
        .real("upper_bound", "1", "No choice within it is worth more.", RepairChoice::upperBound)
        .percent(
            "gap_pct",
            "The most by which a choice could be better, as a part of the bound.",
            choice -> OptionalDouble.of(choice.gapShare()))
        .text("proof", "What says that no choice is worth more.", choice -> choice.proof().key())
        .real(
            "sum_benefit",
            "1",
            "Largest sum of what each scar is worth alone that was found within the budget; its"
                + " scars may be others.",
            choice -> choice.bySum().benefit())
        .real(
            "sum_upper_bound",
            "1",
            "No choice has a larger sum.",
            choice -> choice.bySum().upperBound())
        .percent(
            "sum_gap_pct",
            "The most by which that sum could be larger, as a part of its bound.",
            choice -> OptionalDouble.of(choice.bySum().gapShare()))
        .text(
            "sum_proof",
            "What says that no choice has a larger sum.",
            choice -> choice.bySum().proof().key())
        .real(
            "benefit_greedy",
            "1",
            "What the best benefit for cost first, each scar by what it is worth alone, is worth"
                + " together.",
            RepairChoice::greedyBenefit)
        .optionalReal(
            "connectivity_gain_ha", "ha", TOGETHER, choice -> together(choice.connected()))
        .optionalReal(
            "connectivity_gain_separate_ha", "ha", SEPARATE, choice -> separate(choice.connected()))
        .build();
  }

  private static OptionalDouble together(Optional<Connected> connected) {
    return connected.stream().mapToDouble(Connected::togetherHectares).findFirst();
  }

  private static OptionalDouble separate(Optional<Connected> connected) {
    return connected.stream().mapToDouble(Connected::separateHectares).findFirst();
  }

  static List<SiteRow> siteRows(RepairPlan plan) {
    Map<String, Integer> visits = new HashMap<>();
    for (RepairSeason season : plan.seasons()) {
      for (int i = 0; i < season.scars().size(); i++) {
        visits.put(season.scars().get(i).scarId(), i + 1);
      }
    }
    Map<String, Integer> seasons = plan.seasonByScar();
    Stream<RepairScar> scars = plan.scars().stream();
    return scars
        .map(
            scar ->
                new SiteRow(
                    scar,
                    seasons.getOrDefault(scar.scarId(), 0),
                    visits.getOrDefault(scar.scarId(), 0)))
        .toList();
  }

  private static OptionalDouble gain(SiteRow row, ToDoubleFunction<Range> end) {
    return row.scar().gain().stream().mapToDouble(end).findFirst();
  }
}
