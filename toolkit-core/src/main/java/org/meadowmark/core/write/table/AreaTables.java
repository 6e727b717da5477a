package org.meadowmark.core.write.table;

import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.AreaMeasure.GrassClass;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.measure.AreaMeasure.SeverityGrass;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** Tables with rows by management area, then the beds outside them, then the whole survey. */
final class AreaTables {
  /** Management areas by id, then the two summary lines. */
  static final Comparator<AreaMeasure> ORDER =
      Comparator.comparing(AreaMeasure::kind).thenComparing(AreaTables::id, Ids.ORDER);

  record ClassRow(AreaMeasure area, GrassClass grass) {}

  record SeverityRow(AreaMeasure area, int place, SeverityGrass grass) {}

  private AreaTables() {}

  static TableLayout<AreaMeasure> areas(List<String> classKeys) {
    TableLayout.Builder<AreaMeasure> table =
        TableLayout.named(
            "areas",
            ORDER,
            "One row a management area, then one for the beds outside every management area and"
                + " one for the whole survey, which have no geometry.");
    table.optionalGeometry(GeometryKind.MULTIPOLYGON, row -> row.area().map(MapArea::geometry));
    addArea(table, Function.identity());
    table.count("bed_count", "Beds that have grass in the area.", AreaMeasure::bedCount);
    DamageColumns.addDamage(table, AreaMeasure::damage);
    DamageColumns.addInterval(table, AreaMeasure::damage, classKeys);
    DamageColumns.addFragmentation(table, AreaMeasure::fragmentation);
    return table.build();
  }

  static TableLayout<ClassRow> classes() {
    TableLayout.Builder<ClassRow> table =
        TableLayout.named(
            "area_classes",
            Comparator.comparing(ClassRow::area, ORDER)
                .thenComparing(row -> row.grass().species())
                .thenComparing(row -> row.grass().texture()),
            "One row for each area, species and texture that occurs in it.");
    addArea(table, ClassRow::area);
    return table
        .text("species", "Key of the species.", row -> row.grass().species())
        .text(
            "texture",
            "The mapper's word for the texture of the beds.",
            row -> row.grass().texture())
        .real("grass_area_m2", "m²", "Mapped bed area.", row -> row.grass().grassSquareMetres())
        .real(
            "scarred_area_m2",
            "m²",
            "Scarred area; where part of the grass was not surveyed, scars there are not in it.",
            row -> row.grass().scarredSquareMetres())
        .build();
  }

  static List<ClassRow> classRows(List<AreaMeasure> areas) {
    return areas.stream()
        .flatMap(area -> area.byClass().stream().map(grass -> new ClassRow(area, grass)))
        .toList();
  }

  static TableLayout<SeverityRow> severity() {
    TableLayout.Builder<SeverityRow> table =
        TableLayout.named(
            "area_severity",
            Comparator.comparing(SeverityRow::area, ORDER).thenComparing(SeverityRow::place),
            "One row for each area and severity class of the beds in it.");
    addArea(table, SeverityRow::area);
    return table
        .text(
            "severity_class",
            "Severity class of the beds as wholes; unknown is grass that was not surveyed.",
            row -> row.grass().severityKey())
        .text(
            "severity_denominator",
            "What the scarred area of a bed was divided by for its class: bed or scar-group.",
            row -> row.area().damage().severityDenominator())
        .real(
            "grass_area_m2",
            "m²",
            "Mapped bed area of the class inside the area.",
            row -> row.grass().grassSquareMetres())
        .build();
  }

  static List<SeverityRow> severityRows(List<AreaMeasure> areas, List<String> classOrder) {
    return areas.stream()
        .flatMap(
            area ->
                area.bySeverity().stream()
                    .map(
                        grass -> {
                          int place = classOrder.indexOf(grass.severityKey());
                          return new SeverityRow(
                              area, place < 0 ? classOrder.size() : place, grass);
                        }))
        .toList();
  }

  static String id(AreaMeasure area) {
    return area.area().map(MapArea::id).orElse("");
  }

  /** Words for what a line of results is about. */
  static String scope(Kind kind) {
    return switch (kind) {
      case MANAGEMENT_AREA -> "management area";
      case OUTSIDE_MANAGEMENT_AREAS -> "outside";
      case WHOLE_SURVEY -> "whole survey";
    };
  }

  private static <T> void addArea(TableLayout.Builder<T> table, Function<T, AreaMeasure> area) {
    table
        .text(
            "scope",
            "management area, outside (beds outside every management area) or whole survey.",
            row -> scope(area.apply(row).kind()))
        .text(
            "area_id",
            "Id of the management area; no value on the two summary lines.",
            row -> id(area.apply(row)))
        .text(
            "area_name",
            "Name of the management area, its id where it has none, or the summary in words.",
            row -> area.apply(row).label());
  }
}
