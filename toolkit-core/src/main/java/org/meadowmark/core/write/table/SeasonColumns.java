package org.meadowmark.core.write.table;

import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.meadowmark.core.change.Interval;
import org.meadowmark.core.change.Scope;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.write.Column.Type;

/** Columns that say between which surveys and where a row of a comparison is. */
final class SeasonColumns {
  static final Comparator<Season> SEASONS =
      Comparator.comparing(Season::start).thenComparing(Season::end);
  static final Comparator<Scope> SCOPES =
      Comparator.comparing(Scope::kind).thenComparing(Scope::areaId, Ids.ORDER);

  private SeasonColumns() {}

  static <T> TableLayout.Builder<T> addSeason(
      TableLayout.Builder<T> table, Function<T, Season> season) {
    return table
        .column(
            "from_date",
            Type.DATE,
            "",
            "Day of the earlier survey.",
            row -> season.apply(row).start())
        .column(
            "to_date", Type.DATE, "", "Day of the later survey.", row -> season.apply(row).end())
        .real(
            "season_years",
            "year",
            "Time between them, in years of 365.25 days.",
            row -> season.apply(row).years());
  }

  static <T> TableLayout.Builder<T> addScope(
      TableLayout.Builder<T> table, Function<T, Scope> scope) {
    return table
        .text(
            "scope",
            "management_area, outside_management_areas or whole_survey.",
            row -> scope.apply(row).kind().name().toLowerCase(Locale.ROOT))
        .text("area_id", "Id of the management area.", row -> scope.apply(row).areaId())
        .text("area", "Name for people.", row -> scope.apply(row).label());
  }

  static OptionalDouble low(Optional<Interval> interval) {
    return interval.isPresent() ? OptionalDouble.of(interval.get().low()) : OptionalDouble.empty();
  }

  static OptionalDouble high(Optional<Interval> interval) {
    return interval.isPresent() ? OptionalDouble.of(interval.get().high()) : OptionalDouble.empty();
  }

  /** A ratio as percent of change: 0.4 is −60. */
  static OptionalDouble change(OptionalDouble ratio) {
    return ratio.isPresent() ? OptionalDouble.of(ratio.getAsDouble() - 1) : OptionalDouble.empty();
  }
}
