package org.meadowmark.core.write.table;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.meadowmark.core.measure.Connectedness;
import org.meadowmark.core.measure.ConnectivityDetail;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.PatchWorth;
import org.meadowmark.core.measure.ScarFilling;
import org.meadowmark.core.model.Ids;

/** Tables of connectivity: indices by crossing distance, patch by patch, and scar by scar. */
final class ConnectivityTables {
  private ConnectivityTables() {}

  /** Adds the indices before and after to a table of crossing distances. */
  static void addIndices(TableLayout.Builder<PatchTables.CrossingRow> table) {
    addBeforeAndAfter(
        table,
        "integral_index",
        "1",
        "Integral index of connectivity: gaps up to the distance are crossed; 1 is one patch;"
            + " no value where there are more patches than connectivity_exact_patches",
        Connectedness::integralIndex);
    addBeforeAndAfter(
        table,
        "probability_of_connectivity",
        "1",
        "Probability of connectivity: gaps as wide as the distance are crossed half the time",
        connected -> OptionalDouble.of(connected.probability()));
    addBeforeAndAfter(
        table,
        "equivalent_connected_area",
        "ha",
        "Equivalent connected area: the one patch that would give the same probability",
        connected -> OptionalDouble.of(connected.equivalentAreaHectares()));
    addBeforeAndAfter(
        table,
        "equivalent_connected_area_standard_error",
        "ha",
        "Standard error of that area where it is an estimate from a sample of patches, no value"
            + " where it is exact",
        Connectedness::equivalentAreaStandardErrorHectares);
  }

  private static void addBeforeAndAfter(
      TableLayout.Builder<PatchTables.CrossingRow> table,
      String name,
      String unit,
      String meaning,
      Function<Connectedness, OptionalDouble> value) {
    String ending = unit.equals("1") ? "" : "_" + unit;
    table.optionalReal(
        name + "_before" + ending,
        unit,
        meaning + "; without scars, of the mapped grass.",
        ofSide(row -> row.crossing().before(), value));
    table.optionalReal(
        name + "_after" + ending,
        unit,
        meaning + "; scars taken out, of the same grass.",
        ofSide(row -> row.crossing().after(), value));
  }

  private static Function<PatchTables.CrossingRow, OptionalDouble> ofSide(
      Function<PatchTables.CrossingRow, Optional<Connectedness>> side,
      Function<Connectedness, OptionalDouble> value) {
    return row -> side.apply(row).map(value).orElse(OptionalDouble.empty());
  }

  static TableLayout<PatchWorth> patches() {
    return TableLayout.named(
            "patch_importance",
            Comparator.comparing(PatchWorth::patchId, NumberedIds.ORDER),
            "One row for each patch, at the headline crossing distance; no row where the survey has"
                + " more patches than connectivity_detail_patches.")
        .text("patch_id", "The patch.", PatchWorth::patchId)
        .real(
            "importance_pct",
            "%",
            "What the probability of connectivity would lose without the patch.",
            PatchWorth::lossPercent)
        .real("within_pct", "%", "Part of the patch's own area.", PatchWorth::withinPercent)
        .real(
            "flux_pct",
            "%",
            "Part of ways that start or end in the patch.",
            PatchWorth::fluxPercent)
        .real(
            "connector_pct",
            "%",
            "Part of ways between others that lead over the patch and have no equal way round.",
            PatchWorth::connectorPercent)
        .build();
  }

  static TableLayout<ScarFilling> fillings() {
    return TableLayout.named(
            "scar_fillings",
            Comparator.comparing(ScarFilling::scarId, Ids.ORDER),
            "One row for each scar that separates patches, filled alone, at the headline crossing"
                + " distance; no row where the survey has more patches than"
                + " connectivity_detail_patches.")
        .text("scar_id", "The scar.", ScarFilling::scarId)
        .count("gap_count", "Pairs of patches it separates.", ScarFilling::gapCount)
        .count(
            "groups_separated",
            "Groups of patches that it keeps apart; 1 where animals get across anyway.",
            ScarFilling::groupsSeparated)
        .real(
            "equivalent_connected_area_gain_ha",
            "ha",
            "Growth of the equivalent connected area if the patches of each pair were one.",
            ScarFilling::equivalentAreaGainHectares)
        .build();
  }

  static List<PatchWorth> patchRows(Measurement measurement) {
    return measurement.connectivity().map(ConnectivityDetail::patches).orElse(List.of());
  }

  static List<ScarFilling> fillingRows(Measurement measurement) {
    return measurement.connectivity().map(ConnectivityDetail::scars).orElse(List.of());
  }
}
