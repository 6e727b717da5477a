package org.meadowmark.core.write.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.Fragmentation;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.model.Ids;

/**
 * A part of the survey that pieces of grass are reported for.
 *
 * @param place 0 the whole survey, then areas, then what lies outside them, then beds
 * @param name what kind of part it is, in words
 * @param id id of the management area or bed, or empty
 * @param areaName name of the management area, or empty
 * @param pieces its pieces
 */
record Scope(int place, String name, String id, String areaName, Fragmentation pieces) {
  static final Comparator<Scope> ORDER =
      Comparator.comparingInt(Scope::place).thenComparing(Scope::id, Ids.ORDER);

  private static final int BED_PLACE = 3;

  boolean isBed() {
    return place == BED_PLACE;
  }

  /** Every part of a survey. */
  static List<Scope> of(Measurement measurement) {
    List<Scope> scopes = new ArrayList<>();
    for (AreaMeasure area : measurement.areas()) {
      int place =
          switch (area.kind()) {
            case WHOLE_SURVEY -> 0;
            case MANAGEMENT_AREA -> 1;
            case OUTSIDE_MANAGEMENT_AREAS -> 2;
          };
      scopes.add(
          new Scope(
              place,
              AreaTables.scope(area.kind()),
              AreaTables.id(area),
              area.area().isPresent() ? area.label() : "",
              area.fragmentation()));
    }
    measurement
        .beds()
        .forEach(
            bed ->
                scopes.add(new Scope(BED_PLACE, "bed", bed.bed().id(), "", bed.fragmentation())));
    return scopes;
  }

  /** Columns that name the part. */
  static <T> void addTo(TableLayout.Builder<T> table, Function<T, Scope> scope) {
    table
        .text(
            "scope",
            "whole survey, management area, outside (beds outside every management area) or bed.",
            row -> scope.apply(row).name())
        .text("id", "Id of the management area or bed.", row -> scope.apply(row).id())
        .text("name", "Name of the management area.", row -> scope.apply(row).areaName());
  }
}
