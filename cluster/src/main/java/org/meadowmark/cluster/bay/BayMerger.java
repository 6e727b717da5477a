package org.meadowmark.cluster.bay;

import java.nio.file.Path;
import java.util.ArrayList;
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

/** Puts the parts of one bay together and makes the rows of its tables. */
final class BayMerger implements FlatMapGroupsFunction<String, Row, Row> {
  private static final long serialVersionUID = 1L;

  private final SurveySpec survey;

  BayMerger(SurveySpec survey) {
    this.survey = survey;
  }

  @Override
  public Iterator<Row> call(String bay, Iterator<Row> rows) {
    BayFacts facts = null;
    List<byte[]> parts = new ArrayList<>();
    while (rows.hasNext()) {
      Row row = rows.next();
      byte[] bytes = row.getAs(Stage.BYTES);
      if (row.<String>getAs(Stage.KIND).equals(Stage.FACTS)) {
        facts = RowBytes.read(BayFacts.class, bytes);
      } else {
        parts.add(bytes);
      }
    }
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
    for (int i = 0; i < parts.size(); i++) {
      // Each is needed once, and together they take more memory than what is kept of them.
      merger.add(PartEvidence.fromBytes(parts.set(i, null)));
    }
    Measurement measured = merger.merge();
    List<ResultTable> tables =
        ResultTables.measured(measured, survey.parameters(), SurveySpec.tables());
    return IntStream.range(0, tables.size())
        .boxed()
        .flatMap(number -> BayLoader.rows(bay, Stage.MEASURED, number, tables.get(number)))
        .iterator();
  }
}
