package org.meadowmark.cluster.bay;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.apache.spark.sql.Row;
import org.meadowmark.cluster.geoparquet.RowBytes;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Column;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.table.ResultTables;

/**
 * The result tables of bays. All bays have the same columns: one that is made for each cause of
 * scar is there for every cause, without a value in bays where no segment has a scar of it.
 */
public final class BayTables {
  private BayTables() {}

  /** The tables of all bays, without rows. */
  public static List<ResultTable> layouts(Parameters parameters) {
    return ResultTables.withoutRows(parameters, SurveySpec.tables());
  }

  /** Rows of all tables of a bay, each table in its order. */
  static Stream<Row> rows(String bay, AssessedSurvey assessed) {
    List<ResultTable> layouts = layouts(assessed.definition().parameters());
    List<ResultTable> tables = ResultTables.of(assessed);
    return IntStream.range(0, tables.size())
        .boxed()
        .flatMap(number -> rows(bay, number, tables.get(number), layouts.get(number)));
  }

  private static Stream<Row> rows(String bay, int number, ResultTable table, ResultTable layout) {
    int[] places = places(table, layout);
    long[] place = {0};
    return StreamSupport.stream(table.rows().spliterator(), false)
        .map(
            row ->
                Stage.row(
                    bay,
                    Stage.RESULT,
                    number,
                    place[0]++,
                    RowBytes.of(TableRow.of(table, row, places), TableRow.class)));
  }

  private static int[] places(ResultTable table, ResultTable layout) {
    List<String> names = layout.columns().stream().map(Column::name).toList();
    return table.columns().stream()
        .mapToInt(
            column -> {
              int place = names.indexOf(column.name());
              if (place < 0 || !table.name().equals(layout.name())) {
                throw new IllegalStateException(
                    table.name() + "." + column.name() + " is not in the tables of all bays");
              }
              return place;
            })
        .toArray();
  }
}
