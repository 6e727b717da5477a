package org.meadowmark.core.write.table;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.evidence.EdgeContact;
import org.meadowmark.core.rank.evidence.ScarDepth;
import org.meadowmark.core.rank.evidence.ScarLie;
import org.meadowmark.core.write.Column.Type;

/** Columns of what speaks for boats from the channel; no value where nothing is known. */
final class SegmentEvidenceColumns {
  private SegmentEvidenceColumns() {}

  static void add(TableLayout.Builder<RankedSegment> table, List<String> classes) {
    statistics(table);
    edgeAndLie(table);
    depth(table);
    beds(table, classes);
    table
        .optionalReal(
            "connectivity_gain_ha",
            "ha",
            "Equivalent connected area that filling its scars would restore, each scar alone and by"
                + " the part of its length on the segment; no value where it was not worked out.",
            row -> row.evidence().connectivityGainHectares())
        .percent(
            "re_scarred_pct",
            "Part of the scar length that is new since an earlier survey on ground scarred before; no"
                + " value with one season, or where nothing is new.",
            row -> row.evidence().reScarredShare())
        .text(
            "data_gaps",
            "What is missing or assumed, in words; with semicolons between.",
            row -> String.join("; ", row.evidence().dataGaps()));
  }

  private static void statistics(TableLayout.Builder<RankedSegment> table) {
    table
        .optionalReal(
            "smoothed_rate_m_per_ha",
            "m/ha",
            "Damage rate drawn towards the mean of all segments as far as the exposure is small"
                + " (empirical Bayes).",
            row -> row.statistics().rate().estimate())
        .optionalReal(
            "smoothed_rate_low_m_per_ha",
            "m/ha",
            "Lower limit of its 90 % interval.",
            row -> row.statistics().rate().low())
        .optionalReal(
            "smoothed_rate_high_m_per_ha",
            "m/ha",
            "Upper limit of its 90 % interval.",
            row -> row.statistics().rate().high())
        .optionalReal(
            "gi_star_z",
            "1",
            "Getis-Ord Gi* of the segment with its neighbours along the channel: the highest value"
                + " can stand beside the segment with most scars, not on it.",
            row -> row.statistics().giStar())
        .optionalReal(
            "hot_spot_p",
            "1",
            "Share of random arrangements with surroundings as scarred or more.",
            row -> row.statistics().pValue())
        .optionalReal(
            "hot_spot_p_adjusted",
            "1",
            "hot_spot_p adjusted for the number of segments tested (Benjamini and Hochberg).",
            row -> row.statistics().adjustedPValue())
        .column(
            "hot_spot",
            Type.BOOLEAN,
            "",
            "Whether hot_spot_p_adjusted is at most false_discovery_rate; no value where there was"
                + " no test.",
            row ->
                row.statistics().adjustedPValue().isPresent() ? row.statistics().hotSpot() : null);
  }

  private static void edgeAndLie(TableLayout.Builder<RankedSegment> table) {
    String edge = "within channel_half_width_m and edge_tolerance_m of the centreline";
    table
        .percent(
            "edge_length_pct",
            "Part of scar_length_m on scars that reach the channel's edge, "
                + edge
                + "; no value without scars.",
            row -> share(row.evidence().edge(), EdgeContact::lengthShare))
        .percent(
            "edge_scars_pct",
            "Part of scar_count that reaches the channel's edge.",
            row -> share(row.evidence().edge(), EdgeContact::scarShare))
        .optionalReal(
            "scar_angle_deg",
            "°",
            "Mean angle of scars to the channel at the nearest point, 0 along and 90 across, weighted"
                + " by length.",
            row -> share(row.evidence().lie(), ScarLie::meanAngleDegrees))
        .percent(
            "along_pct",
            "Part of scar_length_m at less than near_parallel_deg to the channel.",
            row -> share(row.evidence().lie(), ScarLie::alongShare))
        .percent(
            "along_edge_pct",
            "The part of scar_length_m in along_pct that lies " + edge + ".",
            row -> share(row.evidence().lie(), ScarLie::alongEdgeShare))
        .percent(
            "inside_bend_pct",
            "The part of scar_length_m in along_edge_pct on the inside of a bend: corner cutting.",
            row -> share(row.evidence().lie(), ScarLie::insideBendShare))
        .percent(
            "across_pct",
            "Part of scar_length_m at more than near_across_deg to the channel.",
            row -> share(row.evidence().lie(), ScarLie::acrossShare))
        .text(
            "scar_pattern",
            "corner-cutting, along-edge or short-cut where the part of scar_length_m in inside_bend_pct,"
                + " along_edge_pct or across_pct is at least pattern_share, the first that holds; else"
                + " none. No value without scars.",
            row -> row.evidence().lie().isPresent() ? row.evidence().pattern().key() : null);
  }

  private static void depth(TableLayout.Builder<RankedSegment> table) {
    table
        .percent(
            "shallow_pct",
            "Part of the scar length with a known depth where the water is shallower than boat_draft_m,"
                + " on the datum of the depth layer, without the tide.",
            row -> share(row.evidence().depth(), ScarDepth::shallowShare))
        .optionalReal(
            "scar_depth_median_m",
            "m",
            "Median depth at its scars, weighted by length, on the datum of the depth layer.",
            row -> share(row.evidence().depth(), ScarDepth::medianMetres))
        .percent(
            "depth_known_pct",
            "Part of scar_length_m with a known depth.",
            row -> share(row.evidence().depth(), ScarDepth::knownShare));
  }

  private static void beds(TableLayout.Builder<RankedSegment> table, List<String> classes) {
    for (String key : classes) {
      table.real(
          "exposure_" + SegmentTable.columnPart(key) + "_ha",
          "ha",
          "The part of exposure_ha in beds of class " + key + ".",
          row -> row.evidence().beds().hectaresByClass().getOrDefault(key, 0.0));
    }
    table
        .text(
            "worst_severity",
            "Worst severity class of a bed within reach; the table beds has what its share is taken of.",
            row -> row.evidence().worstSeverity())
        .real(
            "scarred_area_m2",
            "m²",
            "Length times width of its scar lines; overlaps are counted each time.",
            row -> row.evidence().scarredArea().squareMetres());
  }

  private static <T> OptionalDouble share(Optional<T> evidence, ToDoubleFunction<T> value) {
    return evidence.isPresent()
        ? OptionalDouble.of(value.applyAsDouble(evidence.get()))
        : OptionalDouble.empty();
  }
}
