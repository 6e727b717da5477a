package org.meadowmark.core.write.table;

import java.util.Comparator;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.meadowmark.core.change.rates.EdgeRateFit;
import org.meadowmark.core.change.rates.FigureChange;
import org.meadowmark.core.change.rates.HealingRate;
import org.meadowmark.core.change.rates.NewScarRate;
import org.meadowmark.core.change.rates.SegmentRate;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** Tables of rates between surveys. */
final class RateTables {
  private static final String RATE_UNIT = "m/(ha·year)";
  private static final String EXACT_LIMIT = " limit of the interval by comparison_confidence";

  private RateTables() {}

  static TableLayout<NewScarRate> newScars() {
    TableLayout.Builder<NewScarRate> table =
        TableLayout.named(
            "new_scar_rates",
            Comparator.comparing(NewScarRate::season, SeasonColumns.SEASONS)
                .thenComparing(NewScarRate::scope, SeasonColumns.SCOPES),
            "One row for each season and area: new scars, with exact (number) and gamma (length)"
                + " intervals. A scar counts in the area that holds its middle.");
    SeasonColumns.addSeason(table, NewScarRate::season);
    SeasonColumns.addScope(table, NewScarRate::scope);
    return table
        .real("bed_ha", "ha", "Bed that both surveys looked at.", NewScarRate::bedHectares)
        .count("new_scar_count", "Scars that are new.", NewScarRate::newScars)
        .real(
            "new_scar_count_low",
            "1",
            "Lower" + EXACT_LIMIT + " of the expected number.",
            row -> row.newScarsInterval().low())
        .real(
            "new_scar_count_high",
            "1",
            "Upper" + EXACT_LIMIT + " of the expected number.",
            row -> row.newScarsInterval().high())
        .real(
            "new_scar_m",
            "m",
            "Length of new scar line inside beds: new scars, and what others grew by.",
            NewScarRate::newMetres)
        .optionalReal(
            "new_scar_rate_m_per_ha_year",
            RATE_UNIT,
            "New scar metres per hectare of bed and year.",
            NewScarRate::metresPerHectareYear)
        .optionalReal(
            "new_scar_rate_low_m_per_ha_year",
            RATE_UNIT,
            "Lower" + EXACT_LIMIT + ".",
            row -> SeasonColumns.low(row.metresPerHectareYearInterval()))
        .optionalReal(
            "new_scar_rate_high_m_per_ha_year",
            RATE_UNIT,
            "Upper" + EXACT_LIMIT + ".",
            row -> SeasonColumns.high(row.metresPerHectareYearInterval()))
        .build();
  }

  static TableLayout<HealingRate> healing() {
    TableLayout.Builder<HealingRate> table =
        TableLayout.named(
            "healing_rates",
            Comparator.comparing(HealingRate::season, SeasonColumns.SEASONS)
                .thenComparing(row -> row.widthLowMetres().isPresent())
                .thenComparing(HealingRate::scope, SeasonColumns.SCOPES)
                .thenComparing(HealingRate::species)
                .thenComparing(row -> row.widthLowMetres().orElse(-1)),
            "One row for each season and area, all scars together; then one for each season, species"
                + " and class of width over the whole survey, of lines with a measured width.");
    SeasonColumns.addSeason(table, HealingRate::season);
    SeasonColumns.addScope(table, HealingRate::scope);
    return table
        .text(
            "species",
            "Key of the species of the scars' beds; no value where species are not told apart.",
            HealingRate::species)
        .optionalReal(
            "width_from_m",
            "m",
            "Lower limit of the class of widths; no value in rows of all scars.",
            HealingRate::widthLowMetres)
        .optionalReal(
            "width_to_m",
            "m",
            "Upper limit, which belongs to the next class; no value for the widest.",
            HealingRate::widthHighMetres)
        .count("scar_count", "Scars in beds that both surveys looked at.", HealingRate::scars)
        .count("healed_count", "Those of them that were gone.", HealingRate::healed)
        .percent("healed_pct", "Healed part of the scars.", HealingRate::share)
        .percent(
            "healed_low_pct",
            "Lower" + EXACT_LIMIT + ", exact binomial.",
            row -> SeasonColumns.low(row.interval()))
        .percent(
            "healed_high_pct",
            "Upper" + EXACT_LIMIT + ", exact binomial.",
            row -> SeasonColumns.high(row.interval()))
        .optionalReal(
            "healing_rate_per_year",
            "1/year",
            "Rate a year, -ln(1 - healed part)/years; no value where all healed.",
            HealingRate::perYear)
        .optionalReal(
            "healing_rate_low_per_year", "1/year", "Lower limit of it.", HealingRate::perYearLow)
        .optionalReal(
            "healing_rate_high_per_year", "1/year", "Upper limit of it.", HealingRate::perYearHigh)
        .count(
            "expected_of_count",
            "Scars that the recovery model has a rate for.",
            HealingRate::expectedOf)
        .real(
            "expected_low_count",
            "1",
            "Healed scars that the recovery model expects with slow edges.",
            row -> row.expected().low())
        .real(
            "expected_middle_count",
            "1",
            "The same with middle edges.",
            row -> row.expected().middle())
        .real("expected_high_count", "1", "The same with fast edges.", row -> row.expected().high())
        .build();
  }

  static TableLayout<EdgeRateFit> edgeRates(double widthMetres) {
    TableLayout.Builder<EdgeRateFit> table =
        TableLayout.<EdgeRateFit>named(
                "fitted_edge_rates",
                Comparator.comparing(EdgeRateFit::species),
                "One row a species: how fast edges of scars moved here, fitted from scars seen open"
                    + " and gone, and the time in which a scar of unlisted_scar_width_m closes.")
            .text("species", "Key of the species of the scars' beds.", EdgeRateFit::species)
            .count("scar_count", "Scars it was fitted from.", EdgeRateFit::scars)
            .count("closed_count", "Those of them that were seen gone.", EdgeRateFit::closed)
            .text("outcome", "What the scars allow to say.", row -> row.outcome().label())
            .optionalReal(
                "edge_rate_m_per_year",
                "m/year",
                "Median rate on a side.",
                EdgeRateFit::metresPerYear)
            .optionalReal(
                "edge_rate_low_m_per_year",
                "m/year",
                "Lower limit of it by profile likelihood.",
                row -> SeasonColumns.low(row.interval()))
            .optionalReal(
                "edge_rate_high_m_per_year",
                "m/year",
                "Upper limit of it by profile likelihood.",
                row -> SeasonColumns.high(row.interval()))
            .optionalReal(
                "edge_rate_log_spread",
                "1",
                "Standard deviation of the logarithm of the rate between scars.",
                EdgeRateFit::logSpread);
    return table
        .optionalReal(
            "closing_low_years",
            "year",
            "Time to close with the upper limit of the rate.",
            row -> years(row, widthMetres, Range::low))
        .optionalReal(
            "closing_middle_years",
            "year",
            "Time to close with the median rate.",
            row -> years(row, widthMetres, Range::middle))
        .optionalReal(
            "closing_high_years",
            "year",
            "Time to close with the lower limit of the rate.",
            row -> years(row, widthMetres, Range::high))
        .build();
  }

  private static OptionalDouble years(
      EdgeRateFit fit, double widthMetres, ToDoubleFunction<Range> end) {
    return fit.closingYears(widthMetres).stream().mapToDouble(end).findFirst();
  }

  static TableLayout<FigureChange> figureChanges() {
    TableLayout.Builder<FigureChange> table =
        TableLayout.named(
            "figure_changes",
            Comparator.comparing(FigureChange::season, SeasonColumns.SEASONS)
                .thenComparing(FigureChange::scope, SeasonColumns.SCOPES)
                .thenComparing(FigureChange::figure),
            "One row for each season, area and figure of damage, fragmentation and connectivity;"
                + " intervals by drawing beds again.");
    SeasonColumns.addSeason(table, FigureChange::season);
    SeasonColumns.addScope(table, FigureChange::scope);
    return table
        .text("figure", "What changed.", row -> row.figure().label())
        .text("figure_unit", "Unit of the two values.", row -> row.figure().unit())
        .optionalReal("earlier", "1", "Value at the earlier survey.", FigureChange::earlier)
        .optionalReal("later", "1", "Value at the later survey.", FigureChange::later)
        .percent(
            "change_pct",
            "Change in percent of the earlier value.",
            row -> SeasonColumns.change(row.ratio()))
        .percent(
            "change_low_pct",
            "Lower" + EXACT_LIMIT + "; no value with fewer than 10 beds in both surveys.",
            row -> SeasonColumns.change(SeasonColumns.low(row.ratioInterval())))
        .percent(
            "change_high_pct",
            "Upper" + EXACT_LIMIT + ".",
            row -> SeasonColumns.change(SeasonColumns.high(row.ratioInterval())))
        .build();
  }

  static TableLayout<SegmentRate> segments() {
    return SeasonColumns.addSeason(
            TableLayout.<SegmentRate>named(
                    "segment_seasons",
                    Comparator.comparing(SegmentRate::season, SeasonColumns.SEASONS)
                        .thenComparing(row -> row.segment().id(), Ids.ORDER),
                    "One row for each season and channel segment: new scars nearest to it.")
                .geometry(GeometryKind.LINESTRING, row -> row.segment().geometry()),
            SegmentRate::season)
        .text("segment_id", "Id of the segment.", row -> row.segment().id())
        .text("channel", "Name of the channel.", row -> row.segment().channel())
        .real(
            "segment_length_m",
            "m",
            "Ground length of the segment.",
            row -> row.segment().lengthMetres())
        .real(
            "bed_in_reach_ha",
            "ha",
            "Bed in reach that both surveys looked at.",
            SegmentRate::bedHectares)
        .real("new_scar_m", "m", "Length of new scar line nearest to it.", SegmentRate::newMetres)
        .optionalReal(
            "new_scar_rate_m_per_ha_year",
            RATE_UNIT,
            "New scar metres per hectare of bed in reach and year; no value without bed.",
            SegmentRate::metresPerHectareYear)
        .optionalReal(
            "new_scar_rate_low_m_per_ha_year",
            RATE_UNIT,
            "Lower" + EXACT_LIMIT + ", gamma.",
            SegmentRate::low)
        .optionalReal(
            "new_scar_rate_high_m_per_ha_year",
            RATE_UNIT,
            "Upper" + EXACT_LIMIT + ", gamma.",
            SegmentRate::high)
        .real(
            "new_scar_rate_m_per_km_year",
            "m/(km·year)",
            "New scar metres per kilometre of channel and year.",
            SegmentRate::metresPerKilometreYear)
        .count("new_scar_count", "New scars with a part nearest to it.", SegmentRate::newScars)
        .count(
            "cut_again_count",
            "Those of them that lie on ground scarred before.",
            SegmentRate::cutAgain)
        .percent(
            "cut_again_pct",
            "Part of the new scars that lies on ground scarred before.",
            row ->
                row.newScars() > 0
                    ? OptionalDouble.of((double) row.cutAgain() / row.newScars())
                    : OptionalDouble.empty())
        .percent(
            "cut_again_low_pct",
            "Lower" + EXACT_LIMIT + ", exact binomial.",
            row -> SeasonColumns.low(row.cutAgainInterval()))
        .percent(
            "cut_again_high_pct",
            "Upper" + EXACT_LIMIT + ", exact binomial.",
            row -> SeasonColumns.high(row.cutAgainInterval()))
        .build();
  }
}
