package org.meadowmark.core.write.report;

import java.util.List;
import java.util.Map;

/**
 * What the template shows. {@code css}, {@code script}, {@code library} and {@code data} are made
 * here and stand as they are; everything else is escaped.
 */
record ReportView(
    Map<String, String> t,
    String policy,
    String css,
    String library,
    String script,
    String data,
    String title,
    String surveyLine,
    List<Answer> answers,
    List<KeyFigure> figures,
    List<Table> tables,
    List<String> simplified,
    List<ReportChart> charts,
    boolean hasFindings,
    List<FindingRow> findings,
    List<LayerRow> layers,
    List<String> conventions,
    List<String> cautions,
    List<String> gaps,
    List<String> grid,
    String libraryText,
    String licence,
    String made) {

  /** A question with its answer; {@code target} is the part of the page that tells more. */
  record Answer(
      String reader,
      String question,
      String answer,
      List<String> more,
      String target,
      String link) {}

  record KeyFigure(String value, String label) {}

  /** The first rows of a layer, for paper and for pages without scripts. */
  record Table(String title, String rest, String file, List<Heading> headings, List<Row> rows) {}

  record Heading(String label, boolean number) {}

  record Row(List<Cell> cells) {}

  record Cell(String value, boolean number, boolean brief) {}

  record FindingRow(String what, String count, String level, String treatment) {}

  record LayerRow(
      String role, String file, String read, String used, String repaired, String skipped) {}
}
