package org.meadowmark.core.write.table;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.meadowmark.core.measure.BedMeasure;
import org.meadowmark.core.measure.Measurement.ScarredGrass;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.reference.Species;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** Tables with a row a bed. */
final class BedTables {
  private BedTables() {}

  static TableLayout<BedMeasure> beds(Map<String, Species> species, List<String> classKeys) {
    TableLayout.Builder<BedMeasure> table =
        TableLayout.named(
            "beds",
            Comparator.comparing(row -> row.bed().id(), Ids.ORDER),
            "One row a mapped bed, with its damage and its pieces, the bed taken alone.");
    table
        .geometry(GeometryKind.MULTIPOLYGON, row -> row.bed().geometry())
        .text("bed_id", "Id of the bed.", row -> row.bed().id())
        .text("species", "Key of the species.", row -> row.bed().species())
        .text(
            "species_name",
            "Scientific name of the species.",
            row -> {
              Species known = species.get(row.bed().species());
              return known == null ? "" : known.scientificName();
            })
        .text(
            "texture", "The mapper's word for the texture of the bed.", row -> row.bed().texture());
    DamageColumns.addDamage(table, BedMeasure::damage);
    DamageColumns.addInterval(table, BedMeasure::damage, classKeys);
    DamageColumns.addFragmentation(table, BedMeasure::fragmentation);
    SourceColumns.add(table, row -> row.bed().ref());
    return table.build();
  }

  static TableLayout<ScarredGrass> scarredGrass() {
    return TableLayout.<ScarredGrass>named(
            "scarred_grass",
            Comparator.comparing(ScarredGrass::bedId, Ids.ORDER),
            "One row a bed that is scarred: the scarred part of its surveyed area. A bed with very"
                + " many scars has one row for each tile that it was cut in.")
        .geometry(GeometryKind.MULTIPOLYGON, ScarredGrass::geometry)
        .text("bed_id", "Id of the bed.", ScarredGrass::bedId)
        .real(
            "scarred_area_m2",
            "m²",
            "Area of the union of scar footprints in the surveyed bed, or in this tile of it.",
            ScarredGrass::areaSquareMetres)
        .build();
  }
}
