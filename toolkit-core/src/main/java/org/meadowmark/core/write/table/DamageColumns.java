package org.meadowmark.core.write.table;

import java.util.OptionalDouble;
import java.util.function.Function;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.measure.Fragmentation;

/** Columns that beds and areas share: damage, and pieces of grass before and after scarring. */
final class DamageColumns {
  private DamageColumns() {}

  static <T> void addDamage(TableLayout.Builder<T> table, Function<T, Damage> damage) {
    table
        .real(
            "grass_area_m2", "m²", "Mapped bed area.", row -> damage.apply(row).grassSquareMetres())
        .real(
            "surveyed_area_m2",
            "m²",
            "Part of the mapped bed area inside the surveyed area.",
            row -> damage.apply(row).surveyedSquareMetres())
        .real(
            "unsurveyed_area_m2",
            "m²",
            "Part of the mapped bed area outside the surveyed area; damage there is unknown.",
            row ->
                Math.max(
                    0,
                    damage.apply(row).grassSquareMetres()
                        - damage.apply(row).surveyedSquareMetres()))
        .count(
            "scar_count",
            "Scars whose footprint touches the surveyed bed area.",
            row -> damage.apply(row).scarCount())
        .real(
            "scar_length_m",
            "m",
            "Length of scar lines inside beds, each line counted separately.",
            row -> damage.apply(row).scarLengthMetres())
        .real(
            "scarred_area_m2",
            "m²",
            "Area of the union of scar footprints inside beds: overlaps count once.",
            row -> damage.apply(row).scarredSquareMetres())
        .percent(
            "share_scarred_pct",
            "Scarred area divided by surveyed bed area; no value where nothing was surveyed.",
            row -> damage.apply(row).share())
        .text(
            "severity_class",
            "Severity class; unknown where nothing was surveyed.",
            row -> damage.apply(row).severityKey())
        .percent(
            "severity_share_pct",
            "Share that the severity class was read from.",
            row -> damage.apply(row).severityShare())
        .text(
            "severity_denominator",
            "What the scarred area was divided by for the severity class: bed (surveyed bed area)"
                + " or scar-group (area inside the outlines drawn around groups of scars).",
            row -> damage.apply(row).severityDenominator());
  }

  static <T> void addFragmentation(
      TableLayout.Builder<T> table, Function<T, Fragmentation> fragmentation) {
    table
        .count(
            "patches_before",
            "Connected pieces of grass without scars.",
            row -> fragmentation.apply(row).before().patchCount())
        .count(
            "patches_after",
            "Connected pieces of grass with scars taken out.",
            row -> fragmentation.apply(row).after().patchCount())
        .count(
            "crumbs_after",
            "Pieces below the minimum patch area after scarring, not counted as patches.",
            row -> fragmentation.apply(row).crumbsAfter())
        .percent(
            "largest_patch_share_before_pct",
            "Area of the largest patch divided by the area of all patches, without scars.",
            row -> fragmentation.apply(row).before().largestShare())
        .percent(
            "largest_patch_share_after_pct",
            "Area of the largest patch divided by the area of all patches, scars taken out.",
            row -> fragmentation.apply(row).after().largestShare())
        .optionalReal(
            "mesh_size_before_m2",
            "m²",
            "Effective mesh size without scars: Σ(patch area)² / mapped grass before scarring.",
            row -> fragmentation.apply(row).before().mesh().squareMetres())
        .optionalReal(
            "mesh_size_after_m2",
            "m²",
            "Effective mesh size with scars taken out: Σ(patch area)² / mapped grass before"
                + " scarring. All figures are in the table fragmentation.",
            row -> fragmentation.apply(row).after().mesh().squareMetres())
        .count(
            "gap_count",
            "Gaps made by scars: one for each scar and pair of patches that it separates.",
            row -> fragmentation.apply(row).gaps().count());
    addGapWidth(table, "min", "Smallest", row -> fragmentation.apply(row).gaps().minimumMetres());
    addGapWidth(table, "median", "Median", row -> fragmentation.apply(row).gaps().medianMetres());
    addGapWidth(
        table,
        "p90",
        "90th percentile of the",
        row -> fragmentation.apply(row).gaps().ninetiethPercentileMetres());
    addGapWidth(table, "max", "Largest", row -> fragmentation.apply(row).gaps().maximumMetres());
  }

  private static <T> void addGapWidth(
      TableLayout.Builder<T> table,
      String statistic,
      String words,
      Function<T, OptionalDouble> value) {
    table.optionalReal(
        "gap_width_" + statistic + "_m",
        "m",
        words + " gap width; no value where there is no gap.",
        value);
  }
}
