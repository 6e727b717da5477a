package org.meadowmark.core.write.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.meadowmark.core.change.Scope;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.change.bed.BedChange;
import org.meadowmark.core.change.bed.GrassChange;
import org.meadowmark.core.change.bed.SeasonBedChange;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.write.ComparedSurveys;

/** Tables of grass gained and lost between bed layers. */
final class GrassTables {
  /** Grass of an area or of the whole. */
  record GrassRow(Season season, Scope scope, GrassChange change) {}

  /** Grass of a bed. */
  record BedRow(Season season, BedChange bed) {}

  private GrassTables() {}

  static TableLayout<GrassRow> grass() {
    TableLayout.Builder<GrassRow> table =
        TableLayout.named(
            "grass_changes",
            Comparator.comparing(GrassRow::season, SeasonColumns.SEASONS)
                .thenComparing(GrassRow::scope, SeasonColumns.SCOPES),
            "One row for each season and management area, then the whole: grass that the bed layers"
                + " gained and lost inside both surveyed areas.");
    SeasonColumns.addSeason(table, GrassRow::season);
    SeasonColumns.addScope(table, GrassRow::scope);
    addChange(table, GrassRow::change);
    return table.build();
  }

  static TableLayout<BedRow> beds() {
    TableLayout.Builder<BedRow> table =
        TableLayout.named(
            "bed_changes",
            Comparator.comparing(BedRow::season, SeasonColumns.SEASONS)
                .thenComparing(row -> !row.bed().isEarlier())
                .thenComparing(row -> row.bed().bedId(), Ids.ORDER),
            "One row for each season and bed of its two surveys: an earlier bed has its losses, a"
                + " later one its gains.");
    SeasonColumns.addSeason(table, BedRow::season)
        .text(
            "survey",
            "Which of the two surveys mapped the bed: earlier or later.",
            row -> row.bed().isEarlier() ? "earlier" : "later")
        .text("bed_id", "Id of the bed in that survey.", row -> row.bed().bedId())
        .real("bed_area_m2", "m²", "Whole bed.", row -> row.bed().areaSquareMetres())
        .real(
            "not_comparable_m2",
            "m²",
            "Part of it outside one of the two surveyed areas.",
            row -> row.bed().notComparableSquareMetres());
    addChange(table, row -> row.bed().change());
    return table.build();
  }

  private static <T> void addChange(TableLayout.Builder<T> table, Function<T, GrassChange> change) {
    table
        .real(
            "earlier_m2",
            "m²",
            "Grass of the earlier survey.",
            row -> change.apply(row).earlierSquareMetres())
        .real(
            "later_m2",
            "m²",
            "Grass of the later survey.",
            row -> change.apply(row).laterSquareMetres())
        .real(
            "lost_to_scars_m2",
            "m²",
            "Lost on footprints of the later survey's scars.",
            row -> change.apply(row).lostToScarsSquareMetres())
        .real(
            "lost_otherwise_m2",
            "m²",
            "Lost elsewhere, in pieces wider than the combined positional accuracy.",
            row -> change.apply(row).lostOtherwiseSquareMetres())
        .real(
            "lost_within_accuracy_m2",
            "m²",
            "Lost elsewhere, in slivers narrower than that.",
            row -> change.apply(row).lostWithinAccuracySquareMetres())
        .real(
            "gained_m2",
            "m²",
            "Gained in pieces wider than that.",
            row -> change.apply(row).gainedClearlySquareMetres())
        .real(
            "gained_within_accuracy_m2",
            "m²",
            "Gained in slivers narrower than that.",
            row -> change.apply(row).gainedWithinAccuracySquareMetres());
  }

  static List<GrassRow> grassRows(ComparedSurveys compared) {
    List<GrassRow> rows = new ArrayList<>();
    for (SeasonBedChange season : compared.bedChanges()) {
      Season between = new Season(season.earlierDate(), season.laterDate());
      season
          .areas()
          .forEach(
              area ->
                  rows.add(
                      new GrassRow(
                          between,
                          new Scope(Kind.MANAGEMENT_AREA, area.areaId(), area.name()),
                          area.change())));
      rows.add(new GrassRow(between, Scope.WHOLE, season.whole()));
    }
    return rows;
  }

  static List<BedRow> bedRows(ComparedSurveys compared) {
    List<BedRow> rows = new ArrayList<>();
    for (SeasonBedChange season : compared.bedChanges()) {
      Season between = new Season(season.earlierDate(), season.laterDate());
      season.beds().forEach(bed -> rows.add(new BedRow(between, bed)));
    }
    return rows;
  }
}
