package org.meadowmark.core.write.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.meadowmark.core.change.history.ScarHistory;
import org.meadowmark.core.change.history.Sighting;
import org.meadowmark.core.change.match.ChangeClass;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.write.Column.Type;
import org.meadowmark.core.write.ComparedSurveys;

/** Tables of scars over all surveys. */
final class HistoryTables {
  /** What one survey says about one scar. */
  record SightingRow(String historyId, Sighting sighting) {}

  private HistoryTables() {}

  static TableLayout<ScarHistory> histories() {
    return TableLayout.<ScarHistory>named(
            "scar_histories",
            Comparator.comparing(ScarHistory::id, Ids.ORDER),
            "One row a scar over all surveys, from the first that saw it.")
        .text(
            "history_id",
            "Day of the first survey that saw it and the scar's id there.",
            ScarHistory::id)
        .column(
            "first_seen",
            Type.DATE,
            "",
            "Day of the first survey that saw it.",
            row -> row.sightings().get(0).date())
        .column(
            "last_seen",
            Type.DATE,
            "",
            "Day of the last survey that saw it.",
            row ->
                row.sightings().stream()
                    .filter(sighting -> sighting.state() == Sighting.State.SEEN)
                    .map(Sighting::date)
                    .max(Comparator.naturalOrder())
                    .orElse(null))
        .count("seen_count", "Surveys that saw it.", ScarHistory::timesSeen)
        .count(
            "survey_count",
            "Surveys from the first that saw it to the end of its history.",
            row -> row.sightings().size())
        .column(
            "reappeared",
            Type.BOOLEAN,
            "",
            "Whether it was seen again after a survey that looked and did not see it.",
            ScarHistory::reappeared)
        .text(
            "split_from",
            "History that it was a part of before.",
            row -> row.splitFrom().orElse(""))
        .text(
            "merged_into",
            "History that it is a part of since.",
            row -> row.mergedInto().orElse(""))
        .build();
  }

  static TableLayout<SightingRow> sightings() {
    return TableLayout.<SightingRow>named(
            "scar_sightings",
            Comparator.comparing(SightingRow::historyId, Ids.ORDER)
                .thenComparing(row -> row.sighting().date()),
            "One row for each scar history and each survey from its first on.")
        .text("history_id", "Id of the history.", SightingRow::historyId)
        .column("date", Type.DATE, "", "Day of the survey.", row -> row.sighting().date())
        .text(
            "state",
            "seen, not seen, or not comparable where the survey did not look.",
            row -> row.sighting().state().key())
        .text(
            "scar_id", "Id of the scar in that survey.", row -> row.sighting().scarId().orElse(""))
        .optionalReal(
            "scar_length_m",
            "m",
            "Length there; half the perimeter of a polygon.",
            row -> row.sighting().lengthMetres())
        .optionalReal("width_m", "m", "Width of a line there.", row -> row.sighting().widthMetres())
        .text(
            "change",
            "What became of it since the survey before.",
            row -> row.sighting().change().map(ChangeClass::key).orElse(""))
        .build();
  }

  static List<SightingRow> sightingRows(ComparedSurveys compared) {
    List<SightingRow> rows = new ArrayList<>();
    for (ScarHistory history : compared.histories()) {
      history.sightings().forEach(one -> rows.add(new SightingRow(history.id(), one)));
    }
    return rows;
  }
}
