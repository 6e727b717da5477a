package org.meadowmark.core.write.table;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.score.SegmentScore;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.ScoreTerm;
import org.meadowmark.core.write.Column.Type;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** The table of channel segments. */
final class SegmentTable {
  private static final Map<ScoreTerm, String> TERMS =
      new EnumMap<>(
          Map.of(
              ScoreTerm.RATE, "smoothed rate, 0.5 at the 90th percentile of values above 0",
              ScoreTerm.HOT_SPOT, "1 less twice hot_spot_p, at least 0",
              ScoreTerm.EDGE, "edge_length_pct as a share, 0 without scars",
              ScoreTerm.SHALLOW, "shallow_pct as a share, 0 without scars",
              ScoreTerm.SCARRED_AREA,
                  "scarred_area_m2 for each hectare exposed, 0.5 at the 90th percentile of values above 0",
              ScoreTerm.SEVERITY,
                  "mean severity class of the bed within reach, 0 the lightest and 1 the worst",
              ScoreTerm.CONNECTIVITY,
                  "connectivity_gain_ha, 0.5 at the 90th percentile of values above 0",
              ScoreTerm.RE_SCARRING, "re_scarred_pct as a share"));

  private SegmentTable() {}

  /**
   * Layout with columns for each of some causes and severity classes.
   *
   * @param causes cause keys in column order
   * @param classes keys of severity classes, lightest first
   */
  static TableLayout<RankedSegment> segments(List<String> causes, List<String> classes) {
    TableLayout.Builder<RankedSegment> table =
        TableLayout.named(
            "segments",
            Comparator.<RankedSegment>comparingInt(row -> row.rank().orElse(Integer.MAX_VALUE))
                .thenComparing(row -> row.segment().id(), Ids.ORDER),
            "One row a channel segment, highest score first; segments without a rate last.");
    table
        .geometry(GeometryKind.LINESTRING, row -> row.segment().geometry())
        .column(
            "rank",
            Type.INTEGER,
            "1",
            "1 is the highest score; no value where no rate can be given.",
            row -> row.rank().isPresent() ? (long) row.rank().getAsInt() : null)
        .text("segment_id", "Id of the segment.", row -> row.segment().id())
        .text(
            "channel",
            "Name of the channel, or its id where it has no name.",
            row -> row.segment().channel())
        .real("length_m", "m", "Length of the segment.", row -> row.segment().lengthMetres());
    score(table);
    damage(table, causes);
    SegmentEvidenceColumns.add(table, classes);
    return table.text("remark", "Why there is no rate.", RankedSegment::remark).build();
  }

  private static void score(TableLayout.Builder<RankedSegment> table) {
    table
        .optionalReal(
            "score",
            "1",
            "Weighted mean of the terms that have a value, 0 to 1; the rank is by it.",
            row -> value(row, SegmentScore::score))
        .optionalReal(
            "top_ten_share",
            "1",
            "Share of draws of weights and widths, 0 to 1, in which the segment is in the top ten; no"
                + " value where score_draws is 0.",
            row -> row.score().map(SegmentScore::topTenShare).orElse(OptionalDouble.empty()))
        .text(
            "missing_terms",
            "Terms of the score that are known of other segments but not here, left out.",
            row ->
                row.score().stream()
                    .flatMap(score -> score.missing().stream())
                    .map(ScoreTerm::key)
                    .collect(Collectors.joining("; ")))
        .column(
            "high_for_want_of_data",
            Type.BOOLEAN,
            "",
            "Whether the segment would leave the top ten if each missing term were the survey's"
                + " median.",
            row -> row.score().map(SegmentScore::highForWantOfData).orElse(null));
    for (ScoreTerm term : ScoreTerm.values()) {
      table.optionalReal(
          "score_" + columnPart(term.key()),
          "1",
          "Term of the score, 0 to 1: " + TERMS.get(term) + ".",
          row -> row.score().map(score -> score.term(term)).orElse(OptionalDouble.empty()));
    }
  }

  private static OptionalDouble value(RankedSegment row, ToDoubleFunction<SegmentScore> value) {
    return row.score().isPresent()
        ? OptionalDouble.of(value.applyAsDouble(row.score().get()))
        : OptionalDouble.empty();
  }

  private static void damage(TableLayout.Builder<RankedSegment> table, List<String> causes) {
    table
        .optionalReal(
            "damage_rate_m_per_ha",
            "m/ha",
            "Scar length for each hectare exposed; no value where too little bed is in reach.",
            RankedSegment::ratePerHectare)
        .real(
            "exposure_ha",
            "ha",
            "Surveyed bed within reach of the segment.",
            RankedSegment::exposureHectares)
        .count("scar_count", "Scars with a part attributed to it.", RankedSegment::scarCount)
        .real(
            "scar_length_m",
            "m",
            "Length of scar lines attributed to it.",
            RankedSegment::scarLengthMetres);
    for (String cause : causes) {
      table.real(
          "scar_length_" + columnPart(cause) + "_m",
          "m",
          "The part of scar_length_m whose cause is " + cause + ".",
          row -> row.scarLengthMetresByCause().getOrDefault(cause, 0.0));
    }
    for (String cause : causes) {
      table.percent(
          "share_" + columnPart(cause) + "_pct",
          "The same as a part of scar_length_m; no value without scars.",
          row -> row.causeShare(cause));
    }
    table.text("leading_cause", "Cause with most length.", RankedSegment::leadingCause);
  }

  /** Causes that occur in a ranking, in the order of the cause table, strangers last by key. */
  static List<String> causesPresent(List<RankedSegment> segments, ReferenceTables references) {
    Set<String> present = new TreeSet<>();
    segments.forEach(segment -> present.addAll(segment.scarLengthMetresByCause().keySet()));
    Set<String> ordered = new LinkedHashSet<>(references.causes().keySet());
    ordered.retainAll(present);
    ordered.addAll(present);
    return List.copyOf(ordered);
  }

  static String columnPart(String cause) {
    return cause.replace('-', '_').replace(' ', '_');
  }
}
