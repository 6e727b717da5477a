package org.meadowmark.cluster.bay;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.apache.spark.api.java.function.FlatMapGroupsFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Row;
import org.meadowmark.cluster.geoparquet.RowBytes;
import org.meadowmark.core.assessment.LoadedSurvey;
import org.meadowmark.core.assessment.SurveyLoader;
import org.meadowmark.core.measure.InteractionReach;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.partition.PartPacker;
import org.meadowmark.core.partition.PartSize;
import org.meadowmark.core.partition.SurveyGrouper;
import org.meadowmark.core.partition.SurveyGroups;
import org.meadowmark.core.partition.SurveyPart;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.table.ResultTables;

/**
 * Checks and projects one bay, groups its beds and scars, and packs the groups into parts.
 *
 * <p>The bay is in the memory of one task meanwhile.
 */
final class BayLoader implements FlatMapGroupsFunction<String, Row, Row> {
  private static final long serialVersionUID = 1L;

  private final SurveySpec survey;
  private final ArrayList<LayerHead> heads;
  private final Broadcast<ArrayList<ArrayList<byte[]>>> ofEveryBay;
  private final int mostScars;
  private final int mostVertices;

  BayLoader(
      SurveySpec survey,
      List<LayerHead> heads,
      Broadcast<ArrayList<ArrayList<byte[]>>> ofEveryBay,
      PartSize size) {
    this.survey = survey;
    this.heads = new ArrayList<>(heads);
    this.ofEveryBay = ofEveryBay;
    this.mostScars = size.scars();
    this.mostVertices = size.bedVertices();
  }

  @Override
  public Iterator<Row> call(String bay, Iterator<Row> features) {
    List<List<byte[]>> rows = new ArrayList<>();
    ofEveryBay.value().forEach(layer -> rows.add(new ArrayList<>(layer)));
    features.forEachRemaining(row -> rows.get(row.getInt(2)).add(row.<byte[]>getAs(Stage.BYTES)));
    SurveyDefinition definition = survey.definition();
    LoadedSurvey loaded =
        new SurveyLoader(
                definition,
                SurveySpec.tables(),
                Progress.NONE,
                new BayRowsReader(definition.layers(), heads, rows))
            .load();
    rows.clear();
    return Stream.of(checks(bay, loaded), errors(bay, loaded), parts(bay, loaded.survey()))
        .flatMap(s -> s)
        .iterator();
  }

  private static Stream<Row> checks(String bay, LoadedSurvey loaded) {
    List<ResultTable> tables = ResultTables.checks(loaded.counts(), loaded.findings());
    return IntStream.range(0, tables.size())
        .boxed()
        .flatMap(number -> rows(bay, Stage.CHECKED, number, tables.get(number)));
  }

  private static Stream<Row> errors(String bay, LoadedSurvey loaded) {
    return loaded.findings().stream()
        .filter(finding -> finding.level() == Finding.Level.ERROR)
        .map(
            finding ->
                Stage.row(
                    bay, Stage.ERROR, 0, 0, finding.message().getBytes(StandardCharsets.UTF_8)));
  }

  private Stream<Row> parts(String bay, Optional<MetricSurvey> loaded) {
    if (loaded.isEmpty()) {
      return Stream.empty();
    }
    MetricSurvey whole = loaded.get();
    SurveyGroups groups =
        new SurveyGrouper(
                new InteractionReach(survey.parameters(), SurveySpec.tables(), whole.scale()))
            .group(whole.beds(), whole.scars());
    List<SurveyPart> parts =
        PartPacker.pack(groups, whole.beds(), whole.scars(), new PartSize(mostScars, mostVertices));
    BayFacts facts =
        new BayFacts(
            whole.gridLabel(), whole.managementAreas(), whole.scars().size(), groups.tiled());
    Row first =
        Stage.row(bay, Stage.FACTS, 0, facts.scarCount(), RowBytes.of(facts, BayFacts.class));
    return Stream.concat(
        Stream.of(first),
        IntStream.range(0, parts.size())
            .mapToObj(
                number -> {
                  SurveyPart part = parts.get(number);
                  PartInput input = PartInput.of(part, whole, groups.tiled());
                  return Stage.row(
                      bay,
                      Stage.PART,
                      number,
                      part.scars().length,
                      RowBytes.of(input, PartInput.class));
                }));
  }

  /** Rows of a table in its order. */
  static Stream<Row> rows(String bay, String kind, int number, ResultTable table) {
    long[] place = {0};
    return StreamSupport.stream(table.rows().spliterator(), false)
        .map(
            row ->
                Stage.row(
                    bay,
                    kind,
                    number,
                    place[0]++,
                    RowBytes.of(TableRow.of(table, row), TableRow.class)));
  }
}
