package org.meadowmark.core.write.table;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.meadowmark.core.measure.EffectiveMesh;
import org.meadowmark.core.measure.GapBin;
import org.meadowmark.core.measure.LengthDistribution;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.PatchStatistics;

/** Tables of patch figures before and after scarring, and of gap widths by class. */
final class FragmentationTables {
  /** One class of gap widths in one part of the survey. */
  record BinRow(Scope scope, GapBin bin) {}

  private FragmentationTables() {}

  static TableLayout<Scope> fragmentation() {
    TableLayout.Builder<Scope> table =
        TableLayout.named(
            "fragmentation",
            Scope.ORDER,
            "One row for each part of the survey: the whole, each area, and each bed taken alone;"
                + " every figure without scars (before), with scars taken out (after), and the"
                + " change (after less before).");
    Scope.addTo(table, Function.identity());
    table.real(
        "total_area_m2",
        "m²",
        "Mapped grass before scarring, touching beds joined: the total that densities, division,"
            + " splitting index and mesh size are taken of, before and after.",
        row -> row.pieces().totalSquareMetres());
    table.count(
        "patch_count_before",
        "Connected pieces of grass without scars.",
        row -> row.pieces().before().patchCount());
    table.count(
        "patch_count_after",
        "Connected pieces of grass with scars taken out.",
        row -> row.pieces().after().patchCount());
    table.count(
        "patch_count_change",
        "Change of the number of patches.",
        row -> row.pieces().after().patchCount() - row.pieces().before().patchCount());
    addKnown(table, "patch_area", "_m2", "m²", "Area of all patches", s -> s.patchSquareMetres());
    add(
        table,
        "patch_density",
        "_per_ha",
        "1/ha",
        "Patches for each hectare of the total",
        PatchStatistics::patchesPerHectare);
    add(
        table,
        "mean_patch",
        "_m2",
        "m²",
        "Mean area of a patch",
        PatchStatistics::meanSquareMetres);
    add(
        table,
        "median_patch",
        "_m2",
        "m²",
        "Median area of a patch",
        PatchStatistics::medianSquareMetres);
    add(
        table,
        "largest_patch",
        "_m2",
        "m²",
        "Area of the largest patch",
        PatchStatistics::largestSquareMetres);
    add(
        table,
        "largest_patch_share",
        "_pct",
        "%",
        "Area of the largest patch divided by that of all patches",
        s -> percent(s.largestShare()));
    addKnown(
        table,
        "edge_length",
        "_m",
        "m",
        "Length of grass edge, holes included, without lines where the boundary of a management"
            + " area cuts a patch",
        s -> s.edgeMetres());
    add(
        table,
        "edge_density",
        "_m_per_ha",
        "m/ha",
        "That edge for each hectare of the total",
        PatchStatistics::edgeMetresPerHectare);
    add(
        table,
        "mean_shape_index",
        "",
        "1",
        "Mean of perimeter / (2·√(π·area)) of the patches, 1 for a circle; of the part inside"
            + " where the boundary of a management area cuts a patch",
        PatchStatistics::meanShapeIndex);
    add(
        table,
        "weighted_shape_index",
        "",
        "1",
        "The same, weighted by area",
        PatchStatistics::areaWeightedShapeIndex);
    addMesh(
        table,
        "division",
        "",
        "1",
        "Landscape division 1 − Σ(patch area / total)²",
        EffectiveMesh::division);
    addMesh(
        table,
        "splitting_index",
        "",
        "1",
        "Splitting index total² / Σ(patch area)²; no value where no patch is left",
        EffectiveMesh::splittingIndex);
    addMesh(
        table,
        "mesh_size",
        "_m2",
        "m²",
        "Effective mesh size Σ(patch area)² / total",
        EffectiveMesh::squareMetres);
    addMesh(
        table,
        "mesh_size_whole_patches",
        "_m2",
        "m²",
        "Effective mesh size without the effect of the boundary: Σ(part inside · its whole patch"
            + " of the survey) / total; the same as mesh_size where no boundary cuts a patch",
        EffectiveMesh::boundaryCorrectedSquareMetres);
    addNearest(table, "min", "Smallest", LengthDistribution::minimumMetres);
    addNearest(table, "median", "Median", LengthDistribution::medianMetres);
    addNearest(
        table, "p90", "90th percentile of the", LengthDistribution::ninetiethPercentileMetres);
    addNearest(table, "max", "Largest", LengthDistribution::maximumMetres);
    return table.build();
  }

  static TableLayout<BinRow> gapWidths() {
    TableLayout.Builder<BinRow> table =
        TableLayout.named(
            "gap_width_histogram",
            Comparator.comparing(BinRow::scope, Scope.ORDER)
                .thenComparing(row -> row.bin().fromMetres()),
            "One row for each class of gap width and part of the survey: the whole, each area, and"
                + " each bed with a gap. A gap counts by its smallest width. The limits are the"
                + " parameter gap_width_limits_m.");
    Scope.addTo(table, BinRow::scope);
    return table
        .real("from_m", "m", "Lower end of the class, included.", row -> row.bin().fromMetres())
        .optionalReal(
            "to_m",
            "m",
            "Upper end of the class, not included; no value for the last class, which has none.",
            row -> row.bin().toMetres())
        .count("gap_count", "Gaps with a width in the class.", row -> row.bin().count())
        .build();
  }

  static List<BinRow> binRows(Measurement measurement) {
    return Scope.of(measurement).stream()
        .filter(scope -> !scope.isBed() || scope.pieces().gaps().count() > 0)
        .flatMap(scope -> scope.pieces().gapBins().stream().map(bin -> new BinRow(scope, bin)))
        .toList();
  }

  private static void addNearest(
      TableLayout.Builder<Scope> table,
      String statistic,
      String words,
      Function<LengthDistribution, OptionalDouble> value) {
    add(
        table,
        "nearest_distance_" + statistic,
        "_m",
        "m",
        words
            + " distance from a patch to the nearest other, edge to edge (of a management area: to"
            + " the nearest of the survey); no value for a single patch",
        s -> value.apply(s.nearest()));
  }

  private static void addMesh(
      TableLayout.Builder<Scope> table,
      String name,
      String suffix,
      String unit,
      String words,
      Function<EffectiveMesh, OptionalDouble> value) {
    add(table, name, suffix, unit, words, s -> value.apply(s.mesh()));
  }

  private static void addKnown(
      TableLayout.Builder<Scope> table,
      String name,
      String suffix,
      String unit,
      String words,
      ToDoubleFunction<PatchStatistics> value) {
    add(table, name, suffix, unit, words, s -> OptionalDouble.of(value.applyAsDouble(s)));
  }

  private static void add(
      TableLayout.Builder<Scope> table,
      String name,
      String suffix,
      String unit,
      String words,
      Function<PatchStatistics, OptionalDouble> value) {
    table
        .optionalReal(
            name + "_before" + suffix,
            unit,
            words + ", without scars.",
            row -> value.apply(row.pieces().before()))
        .optionalReal(
            name + "_after" + suffix,
            unit,
            words + ", scars taken out.",
            row -> value.apply(row.pieces().after()))
        .optionalReal(
            name + "_change" + suffix,
            unit,
            "Change of " + name + ".",
            row -> change(value.apply(row.pieces().before()), value.apply(row.pieces().after())));
  }

  private static OptionalDouble change(OptionalDouble before, OptionalDouble after) {
    return before.isPresent() && after.isPresent()
        ? OptionalDouble.of(after.getAsDouble() - before.getAsDouble())
        : OptionalDouble.empty();
  }

  private static OptionalDouble percent(OptionalDouble share) {
    return share.isPresent()
        ? OptionalDouble.of(100 * share.getAsDouble())
        : OptionalDouble.empty();
  }
}
