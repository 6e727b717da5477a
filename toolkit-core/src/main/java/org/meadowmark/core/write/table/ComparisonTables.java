package org.meadowmark.core.write.table;

import java.util.List;
import java.util.stream.Stream;
import org.meadowmark.core.write.ComparedSurveys;
import org.meadowmark.core.write.ResultTable;

/**
 * Makes the result tables of a comparison of surveys, under the same rules as {@link ResultTables}.
 */
public final class ComparisonTables {
  private ComparisonTables() {}

  /**
   * {@return all tables, in the order of the data dictionary}
   *
   * @param compared results of a comparison; read again each time a table is written
   * @throws IllegalStateException while a table is read, if a number is not finite
   */
  public static List<ResultTable> of(ComparedSurveys compared) {
    return List.of(
        SurveyTables.surveys().table(SurveyTables.surveyRows(compared)),
        SurveyTables.differences().table(compared.differences()),
        SurveyTables.scars().table(SurveyTables.scarRows(compared)),
        SurveyTables.links().table(SurveyTables.linkRows(compared)),
        HistoryTables.histories().table(compared.histories()),
        HistoryTables.sightings().table(HistoryTables.sightingRows(compared)),
        GrassTables.grass().table(GrassTables.grassRows(compared)),
        GrassTables.beds().table(GrassTables.bedRows(compared)),
        RateTables.newScars().table(compared.newScars()),
        RateTables.healing().table(compared.healing()),
        RateTables.edgeRates(compared.parameters().recovery().unlistedScarWidthMetres())
            .table(compared.edgeRates()),
        RateTables.figureChanges().table(compared.figureChanges()),
        RateTables.segments().table(compared.segmentRates()),
        MarkerTables.roles().table(MarkerTables.roleRows(compared)),
        MarkerTables.effect().table(MarkerTables.effectRows(compared)),
        MarkerTables.power().table(MarkerTables.powerRows(compared)),
        SurveyTables.findings().table(SurveyTables.findingRows(compared)));
  }

  /** The definitions of all tables, in the same order. */
  static Stream<TableLayout<?>> layouts() {
    return Stream.of(
        SurveyTables.surveys(),
        SurveyTables.differences(),
        SurveyTables.scars(),
        SurveyTables.links(),
        HistoryTables.histories(),
        HistoryTables.sightings(),
        GrassTables.grass(),
        GrassTables.beds(),
        RateTables.newScars(),
        RateTables.healing(),
        RateTables.edgeRates(0.3),
        RateTables.figureChanges(),
        RateTables.segments(),
        MarkerTables.roles(),
        MarkerTables.effect(),
        MarkerTables.power(),
        SurveyTables.findings());
  }
}
