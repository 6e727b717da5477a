package org.meadowmark.core.write.table;

import java.util.Comparator;
import java.util.Map;
import java.util.OptionalDouble;
import org.meadowmark.core.measure.ScarInBed;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.rank.ScarShare;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.write.Column.Type;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** Tables with rows by scar. */
final class ScarTables {
  private ScarTables() {}

  static TableLayout<ScarMeasure> scars(Map<String, ScarCause> causes, Parameters parameters) {
    TableLayout.Builder<ScarMeasure> table =
        TableLayout.named(
            "scars",
            Comparator.comparing(row -> row.scar().id(), Ids.ORDER),
            "One row a scar, measured alone: overlaps with other scars are not taken off.");
    table
        .geometry(GeometryKind.GEOMETRY, row -> row.scar().geometry())
        .text("scar_id", "Id of the scar.", row -> row.scar().id())
        .text(
            "mapped_as",
            "line (with a width) or polygon (the outline is the extent).",
            row -> row.scar().isLine() ? "line" : "polygon")
        .text("cause", "Key of the cause.", row -> row.scar().cause())
        .text(
            "cause_name",
            "Name of the cause.",
            row -> {
              ScarCause known = causes.get(row.scar().cause());
              return known == null ? "" : known.label();
            })
        .column(
            "mapped_on",
            Type.DATE,
            "",
            "Date the scar was mapped, where the layer says.",
            row -> row.scar().date().orElse(null))
        .optionalReal(
            "width_m",
            "m",
            "Width of the line on the ground; no value for a polygon.",
            row -> width(row.scar()))
        .text(
            "width_source",
            "measured (an attribute of the scar), default (of its cause) or outline (a polygon).",
            row -> widthSource(row.scar().widthSource()))
        .real("length_m", "m", "Length of the line; 0 for a polygon.", ScarMeasure::lengthMetres)
        .real(
            "length_in_beds_m",
            "m",
            "Length of the line inside beds.",
            ScarMeasure::lengthInBedsMetres)
        .real(
            "length_outside_beds_m",
            "m",
            "Length of the line outside every bed.",
            ScarMeasure::lengthOutsideBedsMetres)
        .real(
            "length_outside_survey_m",
            "m",
            "Length of the line outside the surveyed area.",
            ScarMeasure::lengthOutsideSurveyMetres)
        .real("footprint_m2", "m²", "Area of the footprint.", ScarMeasure::footprintSquareMetres)
        .real(
            "footprint_in_beds_m2",
            "m²",
            "Area of the footprint inside beds.",
            ScarMeasure::footprintInBedsSquareMetres)
        .count("bed_count", "Beds that the footprint touches.", ScarMeasure::bedCount)
        .count(
            "gap_count",
            "Gaps between patches that the scar makes or helps to make.",
            ScarMeasure::gapCount)
        .optionalReal(
            "water_depth_m",
            "m",
            "Water depth at the middle of the scar, positive downwards, where known.",
            ScarMeasure::depthMetres);
    WidthFlags.add(table, parameters, row -> width(row.scar()));
    SourceColumns.add(table, row -> row.scar().ref());
    return table.build();
  }

  static TableLayout<ScarInBed> scarsInBeds() {
    return TableLayout.<ScarInBed>named(
            "scars_in_beds",
            Comparator.comparing(ScarInBed::scarId, Ids.ORDER)
                .thenComparing(ScarInBed::bedId, Ids.ORDER),
            "One row for each scar and bed it touches, inside the surveyed area.")
        .text("scar_id", "Id of the scar.", ScarInBed::scarId)
        .text("bed_id", "Id of the bed.", ScarInBed::bedId)
        .real("length_m", "m", "Length of the scar line in the bed.", ScarInBed::lengthMetres)
        .real(
            "footprint_m2",
            "m²",
            "Area of the scar's footprint in the bed, this scar alone.",
            ScarInBed::footprintSquareMetres)
        .build();
  }

  static TableLayout<ScarShare> scarShares() {
    return TableLayout.<ScarShare>named(
            "scar_shares",
            Comparator.comparing(ScarShare::scarId, Ids.ORDER)
                .thenComparing(ScarShare::segmentId, Ids.ORDER),
            "One row for each scar and channel segment that a part of it is nearest to.")
        .text("scar_id", "Id of the scar.", ScarShare::scarId)
        .text("segment_id", "Id of the channel segment.", ScarShare::segmentId)
        .real(
            "length_m",
            "m",
            "Length of scar line attributed to the segment.",
            ScarShare::lengthMetres)
        .real(
            "nearest_distance_m",
            "m",
            "Smallest distance from the sampled points of that part to the segment.",
            ScarShare::nearestMetres)
        .build();
  }

  private static OptionalDouble width(Scar scar) {
    return scar.isLine() ? OptionalDouble.of(scar.widthMetres()) : OptionalDouble.empty();
  }

  private static String widthSource(Scar.WidthSource source) {
    return switch (source) {
      case MEASURED -> "measured";
      case CAUSE_DEFAULT -> "default";
      case OUTLINE -> "outline";
    };
  }
}
