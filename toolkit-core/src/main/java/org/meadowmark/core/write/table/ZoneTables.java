package org.meadowmark.core.write.table;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.rank.zone.CoverPoint;
import org.meadowmark.core.rank.zone.DeviceProposal;
import org.meadowmark.core.rank.zone.Marker;
import org.meadowmark.core.rank.zone.SlowPassage;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.rank.zone.ZonePlan;
import org.meadowmark.core.write.Column.Type;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** The tables of zones proposed for marking. */
final class ZoneTables {
  private ZoneTables() {}

  /** A segment of a zone. */
  record ZoneSegmentRow(String zoneId, String segmentId) {}

  /** A device of a zone, by its place among the zone's proposals. */
  record ZoneDeviceRow(String zoneId, int place, DeviceProposal device) {}

  static TableLayout<Zone> zones() {
    return TableLayout.<Zone>named(
            "zones",
            Comparator.comparing(Zone::id, NumberedIds.ORDER),
            "One row a zone proposed for marking; a proposal, not a legal basis.")
        .geometry(GeometryKind.MULTILINESTRING, Zone::geometry)
        .text("zone_id", "Id of the zone; Z1 covers most scar length.", Zone::id)
        .count("segment_count", "Channel segments in it.", zone -> zone.segmentIds().size())
        .real("length_m", "m", "Length of channel in it.", Zone::lengthMetres)
        .real("scar_length_m", "m", "Scar length attributed to its segments.", Zone::scarMetres)
        .percent(
            "covered_pct",
            "Part of all scar length attributed to channels.",
            zone -> OptionalDouble.of(zone.coveredShare()))
        .text("causes", "Scar length by cause, in m.", ZoneTables::causes)
        .count("marker_count", "Marks proposed.", zone -> zone.markers().size())
        .real(
            "scarred_area_ha",
            "ha",
            "Length times width of its scars, overlaps counted each time.",
            zone -> zone.worth().scarredHectares())
        .optionalReal(
            "service_loss_ha_years",
            "ha·year",
            "Discounted service-hectare-years that its scars stand for at the middle recovery time.",
            zone -> zone.worth().serviceHectareYears())
        .optionalReal(
            "service_loss_low_ha_years",
            "ha·year",
            "The same at the short recovery time.",
            zone -> zone.worth().lowServiceHectareYears())
        .optionalReal(
            "service_loss_high_ha_years",
            "ha·year",
            "The same at the long recovery time.",
            zone -> zone.worth().highServiceHectareYears())
        .text("service_basis", "How that was worked out.", zone -> zone.worth().serviceBasis())
        .text(
            "extra_time",
            "Extra minutes for one passage at the slow speed instead of each usual speed.",
            zone ->
                zone.worth().passages().stream()
                    .map(ZoneTables::passage)
                    .collect(Collectors.joining("; ")))
        .text(
            "answers",
            "Objections to expect and the numbers that answer them.",
            zone -> String.join(" ", zone.worth().answers()))
        .text(
            "data_gaps",
            "What the evidence lacks on one of its segments or more.",
            zone -> String.join("; ", zone.dataGaps()))
        .build();
  }

  static TableLayout<ZoneSegmentRow> segments() {
    return TableLayout.<ZoneSegmentRow>named(
            "zone_segments",
            Comparator.comparing(ZoneSegmentRow::zoneId, NumberedIds.ORDER)
                .thenComparing(ZoneSegmentRow::segmentId, Ids.ORDER),
            "One row a segment of a zone.")
        .text("zone_id", "Id of the zone.", ZoneSegmentRow::zoneId)
        .text("segment_id", "Id of the segment.", ZoneSegmentRow::segmentId)
        .build();
  }

  static TableLayout<Marker> markers() {
    return TableLayout.<Marker>named(
            "zone_markers",
            Comparator.comparing(Marker::zoneId, NumberedIds.ORDER)
                .thenComparingInt(Marker::number),
            "One row a proposed position of a mark; it needs permits and a licensed designer.")
        .geometry(GeometryKind.POINT, Marker::geometry)
        .text("marker_id", "Id of the mark.", Marker::id)
        .text("zone_id", "Id of the zone.", Marker::zoneId)
        .text("segment_id", "Segment that it stands beside.", Marker::segmentId)
        .text("device", "What to put up.", Marker::device)
        .text("shape", "Shape of the mark (33 CFR 62.33).", mark -> mark.shape().key())
        .text("reason", "Why here: zone end, or spacing along the zone.", Marker::reason)
        .text("placement", "Where it was put and why there.", Marker::placement)
        .real(
            "bearing_deg",
            "°",
            "True bearing that the mark faces, clockwise from north: towards boats that come in.",
            Marker::bearingDegrees)
        .build();
  }

  static TableLayout<ZoneDeviceRow> devices() {
    return TableLayout.<ZoneDeviceRow>named(
            "zone_devices",
            Comparator.comparing(ZoneDeviceRow::zoneId, NumberedIds.ORDER)
                .thenComparingInt(ZoneDeviceRow::place),
            "One row a device that a rule proposes for a zone, largest share first.")
        .text("zone_id", "Id of the zone.", ZoneDeviceRow::zoneId)
        .count("place", "1 has the largest share of scar length.", ZoneDeviceRow::place)
        .text("cause", "Cause of scar that the rule is for.", row -> row.device().cause())
        .text("pattern", "Pattern of scars that the rule is for.", row -> row.device().pattern())
        .percent(
            "share_pct",
            "Part of the zone's scar length with that cause and pattern.",
            row -> OptionalDouble.of(row.device().share()))
        .text("device", "What to put up.", row -> row.device().device())
        .text("shape", "Shape of the mark (33 CFR 62.33).", row -> row.device().shape().key())
        .text("reason", "Why.", row -> row.device().reason())
        .text(
            "legal_basis",
            "Established legal basis of a regulatory mark; missing until legal_basis is set.",
            row -> row.device().legalBasis())
        .text("source", "Where the rule comes from.", row -> row.device().source())
        .build();
  }

  static TableLayout<CoverPoint> cover() {
    return TableLayout.<CoverPoint>named(
            "zone_cover",
            Comparator.comparingDouble(CoverPoint::lengthMetres),
            "One row a total length of zones: how much scar length the best zones cover.")
        .real("allowed_length_m", "m", "Total length allowed.", CoverPoint::lengthMetres)
        .real("used_length_m", "m", "Total length of the zones.", CoverPoint::usedMetres)
        .real("covered_m", "m", "Scar length that the zones cover.", CoverPoint::coveredMetres)
        .real("upper_bound_m", "m", "No zones can cover more.", CoverPoint::upperBoundMetres)
        .column(
            "proven_best",
            Type.TEXT,
            "",
            "Whether the zones are proven best: yes or no.",
            point -> point.isProvenBest() ? "yes" : "no")
        .real(
            "worst_first_m",
            "m",
            "Scar length covered by taking the worst segments first with the same limits.",
            CoverPoint::worstFirstMetres)
        .build();
  }

  static List<ZoneSegmentRow> segmentRows(ZonePlan plan) {
    return plan.zones().stream()
        .flatMap(zone -> zone.segmentIds().stream().map(id -> new ZoneSegmentRow(zone.id(), id)))
        .toList();
  }

  static List<Marker> markerRows(ZonePlan plan) {
    return plan.zones().stream().flatMap(zone -> zone.markers().stream()).toList();
  }

  static List<ZoneDeviceRow> deviceRows(ZonePlan plan) {
    return plan.zones().stream()
        .flatMap(
            zone ->
                IntStream.range(0, zone.devices().size())
                    .mapToObj(i -> new ZoneDeviceRow(zone.id(), i + 1, zone.devices().get(i))))
        .toList();
  }

  private static String causes(Zone zone) {
    return zone.scarMetresByCause().entrySet().stream()
        .map(each -> String.format(Locale.ROOT, "%s %.1f", each.getKey(), each.getValue()))
        .collect(Collectors.joining("; "));
  }

  private static String passage(SlowPassage passage) {
    return String.format(
        Locale.ROOT,
        "%.2f min at %.1f instead of %.1f km/h (%.1f instead of %.1f kn)",
        passage.extraMinutes(),
        passage.slowKilometresPerHour(),
        passage.usualKilometresPerHour(),
        passage.slowKnots(),
        passage.usualKnots());
  }
}
