package org.meadowmark.core.write.table;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.write.Column.Type;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** The table of channel segments. */
final class SegmentTable {
  private SegmentTable() {}

  /**
   * Layout with a column for each of some causes.
   *
   * @param causes cause keys in column order
   */
  static TableLayout<RankedSegment> segments(List<String> causes) {
    TableLayout.Builder<RankedSegment> table =
        TableLayout.named(
            "segments",
            Comparator.<RankedSegment>comparingInt(row -> row.rank().orElse(Integer.MAX_VALUE))
                .thenComparing(row -> row.segment().id(), Ids.ORDER),
            "One row a channel segment, highest damage rate first; segments without a rate last.");
    table
        .geometry(GeometryKind.LINESTRING, row -> row.segment().geometry())
        .column(
            "rank",
            Type.INTEGER,
            "1",
            "1 is the highest damage rate; no value where no rate can be given.",
            row -> row.rank().isPresent() ? (long) row.rank().getAsInt() : null)
        .text("segment_id", "Id of the segment.", row -> row.segment().id())
        .text(
            "channel",
            "Name of the channel, or its id where it has no name.",
            row -> row.segment().channel())
        .real("length_m", "m", "Length of the segment.", row -> row.segment().lengthMetres())
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
    return table
        .text("leading_cause", "Cause with most length.", RankedSegment::leadingCause)
        .text("remark", "Why there is no rate.", RankedSegment::remark)
        .build();
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

  private static String columnPart(String cause) {
    return cause.replace('-', '_').replace(' ', '_');
  }
}
