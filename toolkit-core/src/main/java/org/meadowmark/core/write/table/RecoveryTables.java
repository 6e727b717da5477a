package org.meadowmark.core.write.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.meadowmark.core.measure.recovery.AreaLoss;
import org.meadowmark.core.measure.recovery.BedLoss;
import org.meadowmark.core.measure.recovery.Estimate;
import org.meadowmark.core.measure.recovery.Outlook;
import org.meadowmark.core.measure.recovery.PlantedSpread;
import org.meadowmark.core.measure.recovery.ScarRecovery;
import org.meadowmark.core.measure.recovery.ServiceCourse;
import org.meadowmark.core.measure.recovery.SurveyRecovery;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.reference.RhizomeElongation;
import org.meadowmark.core.write.Column.Type;

/** Tables of recovery, of the loss until then and of planted grass that spreads. */
final class RecoveryTables {
  private static final int[] CURVE_YEARS = {1, 2, 3, 5, 10};
  private static final int SPREAD_YEARS = 10;

  /** A year of the worked loss. */
  record YearRow(boolean planted, Estimate estimate, ServiceCourse.Year year, double sum) {}

  /** One hectare of planted grass after some years. */
  record SpreadRow(int place, RhizomeElongation plant, int year, Range newPatches) {
    double hectares(double patches) {
      return new PlantedSpread(Hectare.SQUARE_METRES, plant.metresPerYear(), patches, 1)
              .squareMetresAfter(year)
          / Hectare.SQUARE_METRES;
    }
  }

  private RecoveryTables() {}

  static TableLayout<ScarRecovery> scars() {
    TableLayout.Builder<ScarRecovery> table =
        TableLayout.<ScarRecovery>named(
                "scar_recovery",
                Comparator.comparing(ScarRecovery::scarId, Ids.ORDER),
                "One row a scar: how long it takes to close and what service is lost until then,"
                    + " without planting and planted in the base year; low is the low loss.")
            .text("scar_id", "Id of the scar.", ScarRecovery::scarId)
            .text(
                "bed_id",
                "Bed that most of its line (of a polygon: its area) lies in.",
                ScarRecovery::bedId)
            .text("species", "Key of the species of that bed.", ScarRecovery::species)
            .text(
                "basis",
                "Where the edge rate comes from, or why there is no forecast.",
                ScarRecovery::basis)
            .real(
                "area_in_beds_m2",
                "m²",
                "Footprint inside beds, this scar alone.",
                ScarRecovery::areaInBedsSquareMetres)
            .optionalReal(
                "excavation_m",
                "m",
                "Depth of the trench below the bottom around it, where mapped.",
                ScarRecovery::excavationMetres);
    addRange(
        table,
        "edge_rate",
        "m_per_year",
        "m/year",
        "How fast an edge moves on a side, before excavation slows it",
        scar -> scar.regrowth().map(regrowth -> regrowth.edgeMetresPerYear()));
    table.optionalReal(
        "slowing",
        "1",
        "Factor of the time that the excavation costs.",
        scar ->
            scar.regrowth().isPresent()
                ? OptionalDouble.of(scar.regrowth().get().slowing())
                : OptionalDouble.empty());
    addOutlook(table, "", " without planting", ScarRecovery::alone);
    addOutlook(table, "planted_", " planted in the base year", ScarRecovery::planted);
    addRange(
        table,
        "planting_gain",
        "ha_years",
        "ha·year",
        "Discounted service-hectare-years that planting gives back",
        ScarRecovery::gainServiceHectareYears);
    for (int years : CURVE_YEARS) {
      for (Estimate estimate : Estimate.values()) {
        table.percent(
            "bare_" + years + "y_" + estimate.key() + "_pct",
            "Part of the footprint bare "
                + years
                + " years after the start of the base year without planting, "
                + estimate.key()
                + " loss.",
            scar ->
                scar.regrowth().isPresent()
                    ? OptionalDouble.of(scar.regrowth().get().bareShare(estimate, years))
                    : OptionalDouble.empty());
      }
    }
    return table.build();
  }

  static TableLayout<BedLoss> beds() {
    TableLayout.Builder<BedLoss> table =
        TableLayout.<BedLoss>named(
                "bed_loss",
                Comparator.comparing(BedLoss::bedId, Ids.ORDER),
                "One row a bed: service lost until its scars have closed, overlaps counted once.")
            .text("bed_id", "Id of the bed.", BedLoss::bedId)
            .text("species", "Key of the species.", BedLoss::species)
            .real("scarred_area_m2", "m²", "Scarred area.", BedLoss::scarredSquareMetres)
            .real(
                "forecast_area_m2",
                "m²",
                "The part of it by scars with a known edge rate; the loss is of this part.",
                BedLoss::forecastSquareMetres);
    addLoss(table, "loss", " without planting", BedLoss::alone);
    addLoss(table, "planted_loss", " planted in the base year", BedLoss::planted);
    return table.build();
  }

  static TableLayout<AreaLoss> areas() {
    TableLayout.Builder<AreaLoss> table =
        TableLayout.<AreaLoss>named(
                "area_loss",
                Comparator.comparing(AreaLoss::kind).thenComparing(AreaLoss::areaId, Ids.ORDER),
                "One row a management area, then the beds outside them and the whole survey:"
                    + " service lost until the scars have closed, overlaps counted once.")
            .text(
                "scope",
                "What the row is about, as in the table areas.",
                row -> AreaTables.scope(row.kind()))
            .text("area_id", "Id of the management area.", AreaLoss::areaId)
            .text("area_name", "Name for people.", AreaLoss::label)
            .real("scarred_area_m2", "m²", "Scarred area of beds.", AreaLoss::scarredSquareMetres)
            .real(
                "forecast_area_m2",
                "m²",
                "The part of it by scars with a known edge rate; the loss is of this part.",
                AreaLoss::forecastSquareMetres);
    addLoss(table, "loss", " without planting", AreaLoss::alone);
    addLoss(table, "planted_loss", " planted in the base year", AreaLoss::planted);
    addRange(
        table,
        "compensating",
        "ha",
        "ha",
        "Area of new planting that makes good for the loss without planting",
        AreaLoss::compensatingHectares);
    return table.build();
  }

  static TableLayout<YearRow> years() {
    return TableLayout.<YearRow>named(
            "loss_years",
            Comparator.comparing(YearRow::planted)
                .thenComparing(YearRow::estimate)
                .thenComparingInt(row -> row.year().year()),
            "One row a year of the loss of the whole survey, without and with planting.")
        .text(
            "planting",
            "none, or base_year: every scar planted then.",
            row -> row.planted() ? "base_year" : "none")
        .text("estimate", "low, middle or high loss.", row -> row.estimate().key())
        .count("year", "Years from the base year.", row -> row.year().year())
        .percent(
            "bare_pct",
            "Mean part of the forecast area that is bare in the year.",
            row -> OptionalDouble.of(row.year().meanShare()))
        .real("factor", "1", "Discount factor of the year.", row -> row.year().factor())
        .column(
            "loss_ha_years",
            Type.REAL,
            "ha·year",
            "Discounted service-hectare-years lost in the year.",
            row -> rounded(row.year().serviceHectareYears()))
        .column(
            "sum_ha_years", Type.REAL, "ha·year", "Sum up to the year.", row -> rounded(row.sum()))
        .build();
  }

  static List<YearRow> yearRows(SurveyRecovery recovery) {
    List<YearRow> rows = new ArrayList<>();
    for (boolean planted : new boolean[] {false, true}) {
      for (Estimate estimate : Estimate.values()) {
        double sum = 0;
        ServiceCourse course =
            (planted ? recovery.worked().planted() : recovery.worked().alone()).of(estimate);
        for (ServiceCourse.Year year :
            course.years(recovery.worked().hectares(), recovery.conventions().discounting())) {
          sum += year.serviceHectareYears();
          rows.add(new YearRow(planted, estimate, year, sum));
        }
      }
    }
    return rows;
  }

  static TableLayout<SpreadRow> spread() {
    return TableLayout.<SpreadRow>named(
            "planted_spread",
            Comparator.comparingInt(SpreadRow::place).thenComparingInt(SpreadRow::year),
            "One row a plant and year: what one planted hectare, a disc of whole grass, spreads to"
                + " where the bottom around is fit for it.")
        .text("species", "Key of the plant.", row -> row.plant().key())
        .text("scientific_name", "Binomial.", row -> row.plant().scientificName())
        .count("year", "Years after planting.", SpreadRow::year)
        .real(
            "edge_rate_m_per_year",
            "m/year",
            "Published elongation of its rhizomes, by which the edge moves outwards.",
            row -> row.plant().metresPerYear())
        .real(
            "area_low_ha",
            "ha",
            "Area with the low end of new_patches_per_year.",
            row -> row.hectares(row.newPatches().low()))
        .real(
            "area_middle_ha",
            "ha",
            "Area with the middle of new_patches_per_year.",
            row -> row.hectares(row.newPatches().middle()))
        .real(
            "area_high_ha",
            "ha",
            "Area with the high end of new_patches_per_year.",
            row -> row.hectares(row.newPatches().high()))
        .text("source", "Where the rate comes from.", row -> row.plant().source())
        .build();
  }

  static List<SpreadRow> spreadRows(Map<String, RhizomeElongation> plants, Range newPatches) {
    List<SpreadRow> rows = new ArrayList<>();
    int place = 0;
    for (RhizomeElongation plant : plants.values()) {
      for (int year = 0; year <= SPREAD_YEARS; year++) {
        rows.add(new SpreadRow(place, plant, year, newPatches));
      }
      place++;
    }
    return rows;
  }

  private static void addOutlook(
      TableLayout.Builder<ScarRecovery> table,
      String prefix,
      String suffix,
      Function<ScarRecovery, Optional<Outlook>> outlook) {
    addRange(
        table,
        prefix + "time_to_half",
        "years",
        "year",
        "Years until half is covered," + suffix,
        scar -> outlook.apply(scar).map(Outlook::yearsToHalf));
    addRange(
        table,
        prefix + "time_to_full",
        "years",
        "year",
        "Years until it is closed"
            + (prefix.isEmpty() ? "" : " (less than 1 % expected bare)")
            + ","
            + suffix,
        scar -> outlook.apply(scar).map(Outlook::yearsToFull));
    addRange(
        table,
        prefix + "loss",
        "ha_years",
        "ha·year",
        "Discounted service-hectare-years lost inside beds," + suffix,
        scar -> outlook.apply(scar).map(Outlook::lossServiceHectareYears));
  }

  private static <T> void addLoss(
      TableLayout.Builder<T> table, String name, String suffix, Function<T, Optional<Range>> loss) {
    addRange(
        table,
        name,
        "ha_years",
        "ha·year",
        "Discounted service-hectare-years lost," + suffix,
        loss);
  }

  private static <T> void addRange(
      TableLayout.Builder<T> table,
      String name,
      String unitSuffix,
      String unit,
      String meaning,
      Function<T, Optional<Range>> range) {
    for (Estimate end : Estimate.values()) {
      table.column(
          name + "_" + end.key() + "_" + unitSuffix,
          Type.REAL,
          unit,
          meaning + ": " + end.key() + ".",
          row -> range.apply(row).map(end::ofLoss).map(RecoveryTables::rounded).orElse(null));
    }
  }

  /** Losses of single scars are small: nine decimals of a hectare are ten square millimetres. */
  private static Double rounded(double value) {
    double kept = Math.rint(value * 1e9) / 1e9;
    return kept == 0 ? 0.0 : kept;
  }
}
