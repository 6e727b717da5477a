package org.meadowmark.core.write.table;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.measure.Fragmentation;
import org.meadowmark.core.measure.uncertainty.DamageInterval;
import org.meadowmark.core.measure.uncertainty.DamageInterval.ErrorSource;
import org.meadowmark.core.measure.uncertainty.DamageInterval.Range;

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

  /**
   * How sure the damage is.
   *
   * @param classKeys severity classes, lightest first
   */
  static <T> void addInterval(
      TableLayout.Builder<T> table, Function<T, Damage> damage, List<String> classKeys) {
    addRange(table, "low", "5 % quantile", damage, Range::low);
    addRange(table, "median", "Median", damage, Range::median);
    addRange(table, "high", "95 % quantile", damage, Range::high);
    for (String key : classKeys) {
      table.percent(
          "draws_" + key + "_pct",
          "Draws in which the severity class is " + key + ", divided by all draws.",
          row -> interval(damage, row, interval -> interval.drawShare(key)));
    }
    table
        .text(
            "likeliest_class",
            "Severity class that most draws fall in, of several the lightest; no value where"
                + " nothing was surveyed or no draws were made.",
            row -> damage.apply(row).interval().map(DamageInterval::likeliestClass).orElse(""))
        .percent(
            "width_variance_pct",
            "Variance of the scarred area by widths alone, divided by the sum of that and of the"
                + " variance by positions alone; no value where positions were not drawn or nothing"
                + " varies.",
            row ->
                damage
                    .apply(row)
                    .interval()
                    .map(DamageInterval::widthVarianceShare)
                    .orElseGet(OptionalDouble::empty))
        .text(
            "larger_error",
            "Error by which the scarred area varies more, width or position; where the accuracy of"
                + " positions is not stated only widths are drawn. No value where nothing varies.",
            row ->
                damage
                    .apply(row)
                    .interval()
                    .flatMap(DamageInterval::largerError)
                    .map(ErrorSource::key)
                    .orElse(""));
  }

  private static <T> void addRange(
      TableLayout.Builder<T> table,
      String statistic,
      String words,
      Function<T, Damage> damage,
      ToDoubleFunction<Range> value) {
    table
        .optionalReal(
            "scarred_area_" + statistic + "_m2",
            "m²",
            words + " of the scarred area over draws of widths and positions.",
            row ->
                interval(damage, row, interval -> value.applyAsDouble(interval.areaSquareMetres())))
        .percent(
            "share_scarred_" + statistic + "_pct",
            words + " of the share scarred over the same draws.",
            row -> interval(damage, row, interval -> value.applyAsDouble(interval.share())));
  }

  private static <T> OptionalDouble interval(
      Function<T, Damage> damage, T row, ToDoubleFunction<DamageInterval> value) {
    return damage
        .apply(row)
        .interval()
        .map(interval -> OptionalDouble.of(value.applyAsDouble(interval)))
        .orElseGet(OptionalDouble::empty);
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
