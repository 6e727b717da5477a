package org.meadowmark.cluster.bay;

import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.spark.TaskContext;
import org.apache.spark.api.java.function.FlatMapGroupsFunction;
import org.apache.spark.sql.Row;
import org.apache.spark.util.TaskCompletionListener;
import org.meadowmark.cluster.geoparquet.RowBytes;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.PartEvidence;
import org.meadowmark.core.measure.PartMerger;
import org.meadowmark.core.store.DiskRows;
import org.meadowmark.core.store.RowStore;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.table.ResultTables;

/**
 * Puts the parts of one bay together and makes the rows of its tables. The row with the facts of
 * the bay comes first, so that parts can be taken one by one.
 */
final class BayMerger implements FlatMapGroupsFunction<String, Row, Row> {
  private static final long serialVersionUID = 1L;

  private final SurveySpec survey;

  BayMerger(SurveySpec survey) {
    this.survey = survey;
  }

  @Override
  public Iterator<Row> call(String bay, Iterator<Row> rows) {
    Row first = rows.next();
    if (!first.<String>getAs(Stage.KIND).equals(Stage.FACTS)) {
      throw new IllegalStateException("parts of a bay that was not loaded: " + bay);
    }
    BayFacts facts = RowBytes.read(BayFacts.class, first.getAs(Stage.BYTES));
    RowStore store = DiskRows.in(Path.of(System.getProperty("java.io.tmpdir")));
    TaskContext.get().addTaskCompletionListener((TaskCompletionListener) task -> store.close());
    PartMerger merger =
        new PartMerger(
            facts.managementAreas(),
            Grids.scale(facts.grid(), survey.parameters()),
            survey.parameters(),
            SurveySpec.tables(),
            facts.scarCount(),
            facts.tiled(),
            store);
    rows.forEachRemaining(
        part -> merger.add(PartEvidence.fromBytes(part.<byte[]>getAs(Stage.BYTES))));
    Measurement measured = merger.merge();
    List<ResultTable> tables =
        ResultTables.measured(measured, survey.parameters(), SurveySpec.tables());
    return IntStream.range(0, tables.size())
        .boxed()
        .flatMap(number -> BayLoader.rows(bay, Stage.MEASURED, number, tables.get(number)))
        .iterator();
  }
}
