package org.meadowmark.core.write.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.meadowmark.core.measure.Fragmentation;
import org.meadowmark.core.measure.Fragmentation.Crossing;
import org.meadowmark.core.measure.Gap;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.Patch;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** Tables of pieces of grass, of the gaps between them, and of what an animal can reach. */
final class PatchTables {
  private static final String BED_SEPARATOR = "; ";

  /**
   * What one crossing distance means for one part of the survey.
   *
   * @param place 0 the whole survey, then areas, then beds
   */
  record CrossingRow(int place, String scope, String id, String name, Crossing crossing) {}

  private PatchTables() {}

  static TableLayout<Patch> patches() {
    return TableLayout.<Patch>named(
            "patches",
            Comparator.comparing(Patch::id, NumberedIds.ORDER),
            "One row a connected piece of grass after scarring, over the whole survey; touching"
                + " beds are joined.")
        .geometry(GeometryKind.POLYGON, Patch::geometry)
        .text("patch_id", "Id of the patch.", Patch::id)
        .text(
            "bed_ids",
            "Beds the patch is part of, separated by a semicolon and a space.",
            row -> String.join(BED_SEPARATOR, row.bedIds().stream().sorted(Ids.ORDER).toList()))
        .real("area_m2", "m²", "Area.", Patch::areaSquareMetres)
        .real("perimeter_m", "m", "Length of the outline, holes included.", Patch::perimeterMetres)
        .real(
            "shape_index",
            "1",
            "Perimeter / (2·√(π·area)): 1 for a circle, more for ragged or long shapes.",
            Patch::shapeIndex)
        .text(
            "nearest_patch_id",
            "Patch that is nearest edge to edge; no value where there is no other.",
            row -> row.nearestPatchId().orElse(""))
        .optionalReal(
            "nearest_distance_m",
            "m",
            "Edge-to-edge distance to the nearest patch.",
            Patch::nearestDistanceMetres)
        .text(
            "group_id",
            "Group that the patch belongs to at the headline crossing distance.",
            Patch::groupId)
        .build();
  }

  static TableLayout<Gap> gaps() {
    return TableLayout.<Gap>named(
            "gaps",
            Comparator.comparing(Gap::id, NumberedIds.ORDER),
            "One row for each place where a scar separates two patches.")
        .geometry(GeometryKind.MULTILINESTRING, Gap::geometry)
        .text("gap_id", "Id of the gap.", Gap::id)
        .text("scar_id", "Scar that separates the patches.", Gap::scarId)
        .text("first_patch_id", "One of the two patches.", Gap::firstPatchId)
        .text("second_patch_id", "The other patch.", Gap::secondPatchId)
        .real("width_m", "m", "Width of the scar there.", Gap::widthMetres)
        .real(
            "length_m",
            "m",
            "Length of the scar's line that separates the two patches.",
            Gap::lengthMetres)
        .build();
  }

  static TableLayout<CrossingRow> crossings() {
    return TableLayout.<CrossingRow>named(
            "crossing_distances",
            Comparator.comparingInt(CrossingRow::place)
                .thenComparing(CrossingRow::id, Ids.ORDER)
                .thenComparing(row -> row.crossing().distanceMetres()),
            "One row for each crossing distance and part of the survey: the whole, each area, and"
                + " each bed with more than one patch.")
        .text(
            "scope",
            "whole survey, management area, outside (beds outside every management area) or bed.",
            CrossingRow::scope)
        .text("id", "Id of the management area or bed.", CrossingRow::id)
        .text("name", "Name of the management area.", CrossingRow::name)
        .real(
            "crossing_distance_m",
            "m",
            "Widest gap, edge to edge, that an animal is taken to cross.",
            row -> row.crossing().distanceMetres())
        .count(
            "groups_before",
            "Groups of patches within reach of each other, without scars.",
            row -> row.crossing().groupsBefore())
        .count(
            "groups_after",
            "Groups of patches within reach of each other, scars taken out.",
            row -> row.crossing().groupsAfter())
        .percent(
            "largest_group_share_before_pct",
            "Share of the grass that is in the largest group, without scars.",
            row -> row.crossing().largestGroupShareBefore())
        .percent(
            "largest_group_share_after_pct",
            "Share of the grass that is in the largest group, scars taken out.",
            row -> row.crossing().largestGroupShareAfter())
        .build();
  }

  static List<CrossingRow> crossingRows(Measurement measurement) {
    List<CrossingRow> rows = new ArrayList<>();
    measurement
        .areas()
        .forEach(
            area -> {
              int place =
                  switch (area.kind()) {
                    case WHOLE_SURVEY -> 0;
                    case MANAGEMENT_AREA -> 1;
                    case OUTSIDE_MANAGEMENT_AREAS -> 2;
                  };
              String name = area.area().isPresent() ? area.label() : "";
              String scope = AreaTables.scope(area.kind());
              for (Crossing crossing : area.fragmentation().crossings()) {
                rows.add(new CrossingRow(place, scope, AreaTables.id(area), name, crossing));
              }
            });
    measurement.beds().stream()
        .filter(bed -> isSplit(bed.fragmentation()))
        .forEach(
            bed ->
                bed.fragmentation()
                    .crossings()
                    .forEach(
                        crossing ->
                            rows.add(new CrossingRow(3, "bed", bed.bed().id(), "", crossing))));
    return rows;
  }

  private static boolean isSplit(Fragmentation pieces) {
    return pieces.patchesBefore() > 1 || pieces.patchesAfter() > 1;
  }
}
