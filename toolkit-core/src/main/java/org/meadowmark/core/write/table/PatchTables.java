package org.meadowmark.core.write.table;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.meadowmark.core.measure.Fragmentation;
import org.meadowmark.core.measure.Fragmentation.Crossing;
import org.meadowmark.core.measure.Gap;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.Patch;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** Tables of pieces of grass, of the gaps between them, and of what an animal can reach. */
final class PatchTables {
  private static final String BED_SEPARATOR = "; ";

  /** What one crossing distance means for one part of the survey. */
  record CrossingRow(Scope scope, Crossing crossing) {}

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

  static TableLayout<Gap> gaps(Parameters parameters) {
    TableLayout.Builder<Gap> table =
        TableLayout.named(
            "gaps",
            Comparator.comparing(Gap::id, NumberedIds.ORDER),
            "One row for each place where a scar separates two patches.");
    table
        .geometry(GeometryKind.MULTILINESTRING, Gap::geometry)
        .text("gap_id", "Id of the gap.", Gap::id)
        .text("scar_id", "Scar that separates the patches.", Gap::scarId)
        .text("first_patch_id", "One of the two patches.", Gap::firstPatchId)
        .text("second_patch_id", "The other patch.", Gap::secondPatchId)
        .real(
            "minimum_width_m",
            "m",
            "Smallest bare width along it; for a polygon scar the shortest way across.",
            Gap::minimumWidthMetres)
        .optionalReal(
            "mean_width_m",
            "m",
            "Mean of the bare width along it, weighted by length; no value for a polygon scar.",
            Gap::meanWidthMetres)
        .real(
            "length_m",
            "m",
            "Length of the scar's line that separates the two patches.",
            Gap::lengthMetres);
    WidthFlags.add(table, parameters, row -> OptionalDouble.of(row.minimumWidthMetres()));
    return table.build();
  }

  static TableLayout<CrossingRow> crossings() {
    TableLayout.Builder<CrossingRow> table =
        TableLayout.named(
            "crossing_distances",
            Comparator.comparing(CrossingRow::scope, Scope.ORDER)
                .thenComparing(row -> row.crossing().distanceMetres()),
            "One row for each crossing distance and part of the survey: the whole, each area, and"
                + " each bed with more than one patch.");
    Scope.addTo(table, CrossingRow::scope);
    table
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
            row -> row.crossing().largestGroupShareAfter());
    ConnectivityTables.addIndices(table);
    return table.build();
  }

  static List<CrossingRow> crossingRows(Measurement measurement) {
    return Scope.of(measurement).stream()
        .filter(scope -> !scope.isBed() || isSplit(scope.pieces()))
        .flatMap(scope -> scope.pieces().crossings().stream().map(c -> new CrossingRow(scope, c)))
        .toList();
  }

  private static boolean isSplit(Fragmentation pieces) {
    return pieces.before().patchCount() > 1 || pieces.after().patchCount() > 1;
  }
}
