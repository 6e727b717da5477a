package org.meadowmark.core.write.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.change.MeasuredSeason;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.change.SeasonPair;
import org.meadowmark.core.change.comparability.SurveyDifference;
import org.meadowmark.core.change.match.ScarChange;
import org.meadowmark.core.change.match.ScarLink;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.Column.Type;
import org.meadowmark.core.write.ComparedSurveys;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/** Tables of the surveys that were compared, of their scars, and of what was found wrong. */
final class SurveyTables {
  /** A survey. */
  record SurveyRow(SurveyDefinition definition, MeasuredSeason season) {
    Damage damage() {
      return season.measurement().whole().damage();
    }
  }

  /** A scar of one of the two surveys of a season. */
  record ScarRow(Season season, boolean isLater, ScarChange change, String cause, Geometry shape) {}

  /** A pair of scars that are the same. */
  record LinkRow(Season season, ScarLink link) {}

  /** Something found wrong in a survey or in the file of markers. */
  record FindingRow(String survey, int place, Finding finding) {}

  private SurveyTables() {}

  static TableLayout<SurveyRow> surveys() {
    return TableLayout.<SurveyRow>named(
            "surveys",
            Comparator.comparing(row -> row.season().date()),
            "One row a survey, in order of time; damage by the last survey's parameters.")
        .column("date", Type.DATE, "", "Day of the survey.", row -> row.season().date())
        .text("survey", "Name of the survey.", row -> row.definition().name())
        .text(
            "method",
            "How it was made, in the surveyor's words.",
            row -> row.definition().facts().method().orElse(""))
        .optionalReal(
            "effort_hours",
            "h",
            "Hours of looking, where stated.",
            row -> row.definition().facts().effortHours())
        .optionalReal(
            "secchi_depth_m",
            "m",
            "Depth at which a Secchi disc went out of sight, where stated.",
            row -> row.definition().facts().secchiDepthMetres())
        .optionalReal(
            "pixel_size_m",
            "m",
            "Ground size of a pixel of the imagery, where stated.",
            row -> row.definition().parameters().pixelSizeMetres())
        .optionalReal(
            "position_rmse_m",
            "m",
            "Radial root mean square error of positions, where stated.",
            row ->
                row.definition().parameters().position().stream()
                    .mapToDouble(accuracy -> accuracy.radialRmseMetres())
                    .findFirst())
        .real(
            "surveyed_area_m2",
            "m²",
            "Bed inside the surveyed area.",
            row -> row.damage().surveyedSquareMetres())
        .count("scar_count", "Scars that touch it.", row -> row.damage().scarCount())
        .real(
            "scar_length_m",
            "m",
            "Length of scar lines in it.",
            row -> row.damage().scarLengthMetres())
        .real(
            "scarred_area_m2",
            "m²",
            "Scarred area of it, overlaps counted once.",
            row -> row.damage().scarredSquareMetres())
        .percent("scarred_pct", "Scarred part of it.", row -> row.damage().share())
        .build();
  }

  static List<SurveyRow> surveyRows(ComparedSurveys compared) {
    List<SurveyRow> rows = new ArrayList<>();
    for (int i = 0; i < compared.seasons().size(); i++) {
      rows.add(new SurveyRow(compared.surveys().get(i).definition(), compared.seasons().get(i)));
    }
    return rows;
  }

  static TableLayout<SurveyDifference> differences() {
    return SeasonColumns.addSeason(
            TableLayout.<SurveyDifference>named(
                "survey_differences",
                Comparator.comparing(SurveyDifference::season, SeasonColumns.SEASONS)
                    .thenComparing(SurveyDifference::aspect),
                "One row for each pair of surveys and each thing they may differ in."),
            SurveyDifference::season)
        .text("aspect", "In what, as --despite names it.", row -> row.aspect().key())
        .text(
            "judgement",
            "alike, different, not stated, or unsafe: refused unless told.",
            row -> row.judgement().label())
        .text("earlier", "The earlier survey's value.", SurveyDifference::earlier)
        .text("later", "The later survey's value.", SurveyDifference::later)
        .text("meaning", "What follows.", SurveyDifference::words)
        .build();
  }

  static TableLayout<ScarRow> scars() {
    return SeasonColumns.addSeason(
            TableLayout.<ScarRow>named(
                    "scar_changes",
                    Comparator.comparing(ScarRow::season, SeasonColumns.SEASONS)
                        .thenComparing(ScarRow::isLater)
                        .thenComparing(row -> row.change().id(), Ids.ORDER),
                    "One row for each season and each scar of its two surveys: what became of it.")
                .geometry(GeometryKind.GEOMETRY, ScarRow::shape),
            ScarRow::season)
        .text(
            "survey",
            "Which of the two surveys mapped the scar: earlier or later.",
            row -> row.isLater() ? "later" : "earlier")
        .text("scar_id", "Id of the scar in that survey.", row -> row.change().id())
        .text("cause", "Key of the cause.", ScarRow::cause)
        .text(
            "change",
            "persisting, extended, shortened, split, merged, healed, new or not comparable.",
            row -> row.change().change().key())
        .real(
            "scar_length_m",
            "m",
            "Length of the line; of a polygon half its perimeter.",
            row -> row.change().lengthMetres())
        .real(
            "in_both_m",
            "m",
            "Part of it that the other survey has too.",
            row -> row.change().assignedMetres())
        .real(
            "in_this_only_m",
            "m",
            "Part that only this survey has: healed on an earlier scar, new on a later one.",
            row -> row.change().unassignedMetres())
        .real(
            "not_comparable_m",
            "m",
            "Part outside one of the two surveyed areas.",
            row -> row.change().notComparableMetres())
        .column(
            "crowded",
            Type.BOOLEAN,
            "",
            "Whether so many scars lie near it that only the nearest were weighed.",
            row -> row.change().crowded())
        .build();
  }

  static List<ScarRow> scarRows(ComparedSurveys compared) {
    List<ScarRow> rows = new ArrayList<>();
    for (SeasonPair pair : compared.pairs()) {
      add(pair, pair.match().earlier(), pair.earlier(), false, rows);
      add(pair, pair.match().later(), pair.later(), true, rows);
    }
    return rows;
  }

  private static void add(
      SeasonPair pair,
      List<ScarChange> changes,
      MeasuredSeason season,
      boolean isLater,
      List<ScarRow> rows) {
    Map<String, Scar> scars = new HashMap<>();
    season.mapped().scars().forEach(scar -> scars.put(scar.id(), scar));
    for (ScarChange change : changes) {
      Scar scar = scars.get(change.id());
      rows.add(new ScarRow(pair.season(), isLater, change, scar.cause(), scar.geometry()));
    }
  }

  static TableLayout<LinkRow> links() {
    return SeasonColumns.addSeason(
            TableLayout.<LinkRow>named(
                "scar_links",
                Comparator.comparing(LinkRow::season, SeasonColumns.SEASONS)
                    .thenComparing(row -> row.link().earlierId(), Ids.ORDER)
                    .thenComparing(row -> row.link().laterId(), Ids.ORDER),
                "One row for each pair of scars of two surveys that share metres."),
            LinkRow::season)
        .text("earlier_scar_id", "Scar of the earlier survey.", row -> row.link().earlierId())
        .text("later_scar_id", "Scar of the later survey.", row -> row.link().laterId())
        .real(
            "shared_earlier_m",
            "m",
            "Metres shared, measured on the earlier scar.",
            row -> row.link().earlierMetres())
        .real(
            "shared_later_m",
            "m",
            "Metres shared, measured on the later scar.",
            row -> row.link().laterMetres())
        .optionalReal(
            "distance_m",
            "m",
            "Root mean square distance between the two; no value for polygons.",
            row -> row.link().distanceMetres())
        .column(
            "telling",
            Type.BOOLEAN,
            "",
            "Whether the link is large enough to class the scars by.",
            row -> row.link().telling())
        .build();
  }

  static List<LinkRow> linkRows(ComparedSurveys compared) {
    List<LinkRow> rows = new ArrayList<>();
    for (SeasonPair pair : compared.pairs()) {
      pair.match().links().forEach(link -> rows.add(new LinkRow(pair.season(), link)));
    }
    return rows;
  }

  static TableLayout<FindingRow> findings() {
    return TableLayout.<FindingRow>named(
            "season_findings",
            Comparator.comparing(FindingRow::place)
                .thenComparing(FindingRow::finding, Finding.ORDER),
            "One row for each thing that is wrong or doubtful in a survey or in the markers.")
        .text("survey", "Name of the survey; markers for the file of markers.", FindingRow::survey)
        .text("code", "Stable code of the problem.", row -> lower(row.finding().code()))
        .text("level", "error, warning or note.", row -> lower(row.finding().level()))
        .text(
            "treatment",
            "What happened to the feature: kept, repaired, skipped or refused.",
            row -> lower(row.finding().treatment()))
        .text("file", "File the feature was read from.", row -> row.finding().where().file())
        .text("layer", "Layer in that file.", row -> row.finding().where().layer())
        .text(
            "feature_id",
            "Feature; no value where the finding is about the whole layer.",
            row -> row.finding().where().featureId())
        .text("problem", "What is wrong.", row -> row.finding().problem())
        .text("action", "What was done, or what to do.", row -> row.finding().action())
        .build();
  }

  static List<FindingRow> findingRows(ComparedSurveys compared) {
    List<FindingRow> rows = new ArrayList<>();
    for (int i = 0; i < compared.surveys().size(); i++) {
      var survey = compared.surveys().get(i);
      for (Finding finding : survey.findings()) {
        rows.add(new FindingRow(survey.definition().name(), i, finding));
      }
    }
    for (Finding finding : compared.markerFindings()) {
      rows.add(new FindingRow("markers", compared.surveys().size(), finding));
    }
    return rows;
  }

  private static String lower(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
