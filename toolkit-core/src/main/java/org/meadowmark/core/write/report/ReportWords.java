package org.meadowmark.core.write.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Figures;
import org.meadowmark.core.write.Phrases;
import org.meadowmark.core.write.proposal.GridPlaces;
import org.meadowmark.core.write.record.FindingCounts;

/** Puts the results of a run into the words of the page. */
final class ReportWords {
  /** Rows of a table on paper. */
  static final int PAPER_ROWS = 15;

  /** Columns of a table on paper. */
  private static final int PAPER_COLUMNS = 9;

  /** Texts up to this long stay on one line. */
  private static final int BRIEF = 16;

  private static final double MILLION = 1e6;

  private final AssessedSurvey assessed;
  private final Phrases text;
  private final ReportMap map;

  ReportWords(AssessedSurvey assessed, Phrases text, ReportMap map) {
    this.assessed = assessed;
    this.text = text;
    this.map = map;
  }

  String title() {
    return text.get("title", assessed.definition().name());
  }

  String surveyLine() {
    return assessed
        .definition()
        .date()
        .map(date -> text.get("surveyLine", date.toString()))
        .orElseGet(() -> text.get("surveyLineUndated"));
  }

  List<ReportView.Answer> answers() {
    return answers(assessed, text);
  }

  /** What each reader asks, with the answer of the survey. */
  static List<ReportView.Answer> answers(AssessedSurvey assessed, Phrases text) {
    Answers answers = new Answers(assessed, text);
    return List.of(
        new ReportView.Answer(
            text.get("reader.analyst"),
            text.get("question.analyst"),
            answers.damage(),
            answers.unknown().stream().toList(),
            "beds",
            text.get("link.analyst")),
        new ReportView.Answer(
            text.get("reader.advocate"),
            text.get("question.advocate"),
            answers.channels(),
            List.of(),
            assessed.zones().zones().isEmpty() ? "segments" : "zones",
            text.get("link.advocate")),
        new ReportView.Answer(
            text.get("reader.manager"),
            text.get("question.manager"),
            answers.repairs(),
            List.of(),
            "repairs",
            text.get("link.manager")));
  }

  List<ReportView.KeyFigure> figures() {
    Damage damage = assessed.measurement().whole().damage();
    var pieces = assessed.measurement().whole().fragmentation();
    return List.of(
        new ReportView.KeyFigure(
            damage.surveyedSquareMetres() > 0
                ? Figures.area(damage.scarredSquareMetres())
                : text.get("unknown"),
            text.get("figure.scarred")),
        new ReportView.KeyFigure(
            damage.share().isPresent() ? Figures.percent(damage.share()) : text.get("unknown"),
            text.get("figure.share")),
        new ReportView.KeyFigure(Figures.count(damage.scarCount()), text.get("figure.scars")),
        new ReportView.KeyFigure(
            Figures.count(pieces.before().patchCount())
                + " → "
                + Figures.count(pieces.after().patchCount()),
            text.get("figure.patches")),
        new ReportView.KeyFigure(
            Figures.area(Math.max(0, damage.grassSquareMetres() - damage.surveyedSquareMetres())),
            text.get("figure.unknown")));
  }

  List<ReportView.Table> tables() {
    return Stream.of("areas", "beds", "segments", "zones", "marks", "repairs", "scars")
        .flatMap(key -> map.layers().stream().filter(layer -> layer.key().equals(key)))
        .filter(layer -> layer.total() > 0)
        .map(this::table)
        .toList();
  }

  private ReportView.Table table(MapLayer layer) {
    List<ReportColumn> columns =
        layer.columns().subList(0, Math.min(PAPER_COLUMNS, layer.columns().size()));
    int rows = Math.min(PAPER_ROWS, layer.geometries().size());
    return new ReportView.Table(
        text.get("layer." + layer.key()),
        text.get(
            layer.total() > rows ? "table.first" : "table.all",
            Figures.count(rows),
            Figures.count(layer.total()),
            text.get("order." + layer.key())),
        text.get("file." + layer.key()),
        columns.stream()
            .map(column -> new ReportView.Heading(column.heading(), column.isNumeric()))
            .toList(),
        IntStream.range(0, rows)
            .mapToObj(
                row ->
                    new ReportView.Row(columns.stream().map(column -> cell(column, row)).toList()))
            .toList());
  }

  private static ReportView.Cell cell(ReportColumn column, int row) {
    String value = column.shown(row);
    return new ReportView.Cell(
        value, column.isNumeric(), !column.isNumeric() && value.length() <= BRIEF);
  }

  /** What the map simplifies and leaves out, a sentence a layer. */
  List<String> simplified() {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < map.layers().size(); i++) {
      MapLayer layer = map.layers().get(i);
      if (layer.total() == 0) {
        continue;
      }
      GeometryCode code = map.codes().get(i);
      String name = text.get("layer." + layer.key());
      String count =
          layer.leftOut() > 0
              ? text.get(
                  "simplified.thinned",
                  name,
                  Figures.count(layer.geometries().size()),
                  Figures.count(layer.total()),
                  text.get("order." + layer.key()),
                  text.get("file." + layer.key()))
              : text.get("simplified.all", name, Figures.count(layer.total()));
      boolean exact = code.keptVertices() >= code.vertices();
      lines.add(
          count
              + (layer.form() == MapLayer.Form.POINT || exact
                  ? "."
                  : text.get(
                      "simplified.lines",
                      Figures.chosenLength(code.toleranceMetres()),
                      Figures.count(code.keptVertices()),
                      Figures.count(code.vertices()))));
    }
    return lines;
  }

  List<ReportView.FindingRow> findings() {
    return FindingCounts.of(assessed.findings()).stream()
        .map(
            count ->
                new ReportView.FindingRow(
                    count.code().title(),
                    Figures.count(count.count()),
                    count.level().name().toLowerCase(Locale.ROOT),
                    count.treatment().name().toLowerCase(Locale.ROOT)))
        .toList();
  }

  List<ReportView.LayerRow> inputs() {
    return assessed.counts().stream()
        .map(
            count ->
                new ReportView.LayerRow(
                    count.role().key().replace('_', ' '),
                    count.file(),
                    Figures.count(count.read()),
                    Figures.count(count.used()),
                    Figures.count(count.repaired()),
                    Figures.count(count.skipped())))
        .toList();
  }

  List<String> conventions() {
    Parameters parameters = assessed.definition().parameters();
    List<String> lines = new ArrayList<>();
    lines.add(text.get("convention.ground"));
    lines.add(
        text.get(
            switch (parameters.severityDenominator()) {
              case BED -> "convention.severityBed";
              case SCAR_GROUP -> "convention.severityGroup";
            },
            assessed.references().severityClasses().stream()
                .map(ReportWords::limits)
                .collect(Collectors.joining(", "))));
    lines.add(text.get("convention.unknown"));
    lines.add(text.get("convention.interval", Long.toString(parameters.seed())));
    lines.add(text.get("convention.patch", Figures.number(parameters.minimumPatchSquareMetres())));
    lines.add(text.get("convention.rate", Figures.chosenLength(parameters.channelReachMetres())));
    lines.add(text.get("convention.score"));
    assessed.repairs().assumptions().forEach(lines::add);
    return lines;
  }

  private static String limits(SeverityClass severity) {
    return severity.label() + " " + SeverityLimits.of(severity);
  }

  /** What the results lack. */
  List<String> gaps() {
    return Stream.concat(
            assessed.repairs().gaps().stream(),
            assessed.zones().zones().stream()
                .filter(zone -> !zone.dataGaps().isEmpty())
                .map(zone -> text.get("gap.zone", zone.id(), String.join("; ", zone.dataGaps()))))
        .toList();
  }

  List<String> cautions() {
    return Stream.concat(
            assessed.zones().cautions().stream(),
            Stream.of("caution.seen", "caution.boat", "caution.sign", "caution.dive", "caution.map")
                .map(text::get))
        .toList();
  }

  /** The reference system and what it does to lengths. */
  List<String> grid() {
    Optional<GridPlaces> places = GridPlaces.of(assessed.survey().gridWkt());
    Envelope extent = map.extent();
    Coordinate middle = extent.centre();
    double factor = assessed.survey().scale().lengthFactor(middle.x, middle.y);
    List<String> lines = new ArrayList<>();
    lines.add(
        places
            .map(known -> text.get("grid.known", assessed.survey().gridLabel(), known.datum()))
            .orElseGet(() -> text.get("grid.unknown", assessed.survey().gridLabel())));
    lines.add(
        text.get(
            "grid.scale",
            String.format(Locale.ROOT, "%.6f", factor),
            String.format(Locale.ROOT, "%+.0f", (factor - 1) * MILLION).replace('-', '−')));
    lines.add(
        text.get(
            "grid.extent",
            Figures.length(extent.getWidth() / factor),
            Figures.length(extent.getHeight() / factor)));
    return lines;
  }
}
