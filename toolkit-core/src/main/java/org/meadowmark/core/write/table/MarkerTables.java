package org.meadowmark.core.write.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.locationtech.jts.geom.LineString;
import org.meadowmark.core.change.effect.MarkedSegment;
import org.meadowmark.core.change.effect.MarkerEffect;
import org.meadowmark.core.change.effect.PermutationTest;
import org.meadowmark.core.change.effect.PowerForecast;
import org.meadowmark.core.change.effect.SeasonTest;
import org.meadowmark.core.change.effect.SegmentRole;
import org.meadowmark.core.change.rates.SegmentRate;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.write.Column.Type;
import org.meadowmark.core.write.ComparedSurveys;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** Tables of the effect of markers. */
final class MarkerTables {
  /** Part of a segment in the comparison. */
  record RoleRow(SegmentRole role, Optional<MarkedSegment> mark, LineString shape) {}

  private MarkerTables() {}

  static TableLayout<RoleRow> roles() {
    return TableLayout.<RoleRow>named(
            "marker_segments",
            Comparator.comparing(row -> row.role().segmentId(), Ids.ORDER),
            "One row a channel segment: what it is in judging the markers, and why. Empty without"
                + " markers.")
        .geometry(GeometryKind.LINESTRING, RoleRow::shape)
        .text("segment_id", "Id of the segment.", row -> row.role().segmentId())
        .text(
            "part",
            "marked, control, beside (a marked one) or left out.",
            row -> row.role().part().label())
        .text("reason", "Why.", row -> row.role().reason())
        .column(
            "placed",
            Type.DATE,
            "",
            "Day from which a marker stood.",
            row -> row.mark().map(MarkedSegment::placed).orElse(null))
        .text(
            "device",
            "What was placed, in the user's words.",
            row -> row.mark().map(MarkedSegment::device).orElse(""))
        .optionalReal(
            "rate_before",
            "1",
            "Rate of new scars before the first marker, drawn towards the mean, in m per unit of"
                + " effect_exposure (ha of bed or km of channel) and year.",
            row -> row.role().rateBefore())
        .build();
  }

  static List<RoleRow> roleRows(ComparedSurveys compared) {
    Map<String, LineString> shapes = new HashMap<>();
    for (SegmentRate rate : compared.segmentRates()) {
      shapes.put(rate.segment().id(), rate.segment().geometry());
    }
    Map<String, MarkedSegment> marks = new HashMap<>();
    compared.marks().forEach(mark -> marks.put(mark.segmentId(), mark));
    List<RoleRow> rows = new ArrayList<>();
    for (SegmentRole role : compared.effect().map(MarkerEffect::roles).orElse(List.of())) {
      rows.add(
          new RoleRow(
              role,
              Optional.ofNullable(marks.get(role.segmentId())),
              shapes.get(role.segmentId())));
    }
    return rows;
  }

  static TableLayout<MarkerEffect> effect() {
    TableLayout.Builder<MarkerEffect> table =
        TableLayout.<MarkerEffect>named(
                "marker_effect",
                Comparator.comparing(MarkerEffect::words),
                "One row: whether the markers worked. Rates in m per unit of exposure and year.")
            .text("verdict", "What can be said.", row -> row.verdict().label())
            .text("words", "The same in a sentence or two.", MarkerEffect::words)
            .text(
                "exposure",
                "What metres are divided by: bed (ha in reach) or channel (km).",
                row -> row.settings().basis().key())
            .count(
                "marked_count",
                "Marked segments compared.",
                row -> row.rates().map(MarkerEffect.Rates::markedSegments).orElse(0))
            .count(
                "control_count",
                "Segments they were compared with.",
                row -> row.rates().map(MarkerEffect.Rates::controlSegments).orElse(0));
    addRate(table, "marked_before", "Rate beside marks before.", MarkerEffect.Rates::markedBefore);
    addRate(table, "marked_after", "Rate beside marks after.", MarkerEffect.Rates::markedAfter);
    addRate(table, "control_before", "Rate of controls before.", MarkerEffect.Rates::controlBefore);
    addRate(table, "control_after", "Rate of controls after.", MarkerEffect.Rates::controlAfter);
    return table
        .optionalReal(
            "difference",
            "1",
            "Difference in differences: mean change of marked rates less that of controls.",
            MarkerEffect::difference)
        .optionalReal(
            "difference_low",
            "1",
            "Lower limit of it, Welch's t over segments.",
            row -> SeasonColumns.low(row.differenceInterval()))
        .optionalReal(
            "difference_high",
            "1",
            "Upper limit of it.",
            row -> SeasonColumns.high(row.differenceInterval()))
        .percent(
            "effect_pct",
            "Change of the rate beside marks against that of controls, as ratio of ratios.",
            row -> SeasonColumns.change(row.ratio()))
        .percent(
            "effect_low_pct",
            "Lower limit of it, jackknife over segments.",
            row -> SeasonColumns.change(SeasonColumns.low(row.ratioInterval())))
        .percent(
            "effect_high_pct",
            "Upper limit of it.",
            row -> SeasonColumns.change(SeasonColumns.high(row.ratioInterval())))
        .optionalReal(
            "permutation_p",
            "1",
            "Two-sided p-value by other arrangements of the marks.",
            row -> value(row.permutation(), PermutationTest::pValue))
        .count(
            "arrangement_count",
            "Arrangements counted.",
            row -> row.permutation().map(PermutationTest::arrangements).orElse(0L))
        .optionalReal(
            "smallest_p",
            "1",
            "Smallest p-value that so many segments can give.",
            row -> value(row.permutation(), PermutationTest::smallestPValue))
        .optionalReal(
            "season_test_difference",
            "1",
            "Difference with seasons as the sample; no value with fewer than two before or after.",
            row -> value(row.seasonTest(), SeasonTest::difference))
        .optionalReal(
            "season_test_p",
            "1",
            "Two-sided p-value of that, Welch's t.",
            row -> row.seasonTest().map(SeasonTest::pValue).orElse(OptionalDouble.empty()))
        .percent(
            "beside_effect_pct",
            "The same change for the segments beside the marked ones: above 0 where damage may have"
                + " moved there.",
            row -> SeasonColumns.change(row.besideRatio()))
        .percent(
            "power_pct",
            "Chance that the seasons there are detect a drop by detectable_drop.",
            row -> value(row.power(), power -> power.points().get(0).power()))
        .column(
            "seasons_needed",
            Type.INTEGER,
            "1",
            "Further seasons until that chance reaches detection_power; no value where none is enough.",
            row ->
                row.power().isPresent() && row.power().get().seasonsNeeded().isPresent()
                    ? Integer.valueOf(row.power().get().seasonsNeeded().getAsInt())
                    : null)
        .percent(
            "best_power_pct",
            "Chance that no number of further seasons can pass.",
            row -> value(row.power(), PowerForecast::bestPower))
        .percent(
            "smallest_drop_pct",
            "Smallest drop that the seasons there are would detect with detection_power.",
            row -> row.power().map(PowerForecast::smallestDropNow).orElse(OptionalDouble.empty()))
        .optionalReal(
            "excess_variation",
            "1",
            "How many times as much the rates vary as scars that fall by chance.",
            row -> value(row.power(), PowerForecast::excessVariation))
        .build();
  }

  private static void addRate(
      TableLayout.Builder<MarkerEffect> table,
      String column,
      String meaning,
      Function<MarkerEffect.Rates, Double> rate) {
    table.optionalReal(column, "1", meaning, row -> value(row.rates(), rate));
  }

  private static <T> OptionalDouble value(Optional<T> owner, Function<T, Double> value) {
    return owner.map(value).map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }

  static List<MarkerEffect> effectRows(ComparedSurveys compared) {
    return compared.effect().stream().toList();
  }

  static TableLayout<PowerForecast.Point> power() {
    return TableLayout.<PowerForecast.Point>named(
            "marker_power",
            Comparator.comparing(PowerForecast.Point::furtherSeasons),
            "One row a number of further seasons: chance of detecting a drop by detectable_drop."
                + " Empty where it cannot be worked out.")
        .count(
            "further_seasons",
            "Seasons from now on, of the mean length of those there are.",
            PowerForecast.Point::furtherSeasons)
        .percent("power_pct", "Chance.", row -> OptionalDouble.of(row.power()))
        .build();
  }

  static List<PowerForecast.Point> powerRows(ComparedSurveys compared) {
    return compared
        .effect()
        .flatMap(MarkerEffect::power)
        .map(PowerForecast::points)
        .orElse(List.of());
  }
}
