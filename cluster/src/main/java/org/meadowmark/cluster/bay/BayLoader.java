package org.meadowmark.cluster.bay;

import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.spark.api.java.function.FlatMapGroupsFunction;
import org.apache.spark.sql.Row;
import org.meadowmark.cluster.geoparquet.RowBytes;
import org.meadowmark.core.assessment.LoadedSurvey;
import org.meadowmark.core.measure.InteractionReach;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.partition.PartPacker;
import org.meadowmark.core.partition.PartSize;
import org.meadowmark.core.partition.SurveyGrouper;
import org.meadowmark.core.partition.SurveyGroups;
import org.meadowmark.core.partition.SurveyPart;

/**
 * Checks and projects one bay, groups its beds and scars, and packs the groups into parts.
 *
 * <p>The bay is in the memory of one task meanwhile.
 */
final class BayLoader implements FlatMapGroupsFunction<String, Row, Row> {
  private static final long serialVersionUID = 1L;

  private final SurveySpec survey;
  private final BayReader reader;
  private final int mostScars;
  private final int mostVertices;

  BayLoader(SurveySpec survey, BayReader reader, PartSize size) {
    this.survey = survey;
    this.reader = reader;
    this.mostScars = size.scars();
    this.mostVertices = size.bedVertices();
  }

  @Override
  public Iterator<Row> call(String bay, Iterator<Row> features) {
    List<List<byte[]>> rows = reader.rowsOfEveryBay();
    features.forEachRemaining(row -> rows.get(row.getInt(2)).add(row.<byte[]>getAs(Stage.BYTES)));
    BayReader.Bay read = reader.read(bay, rows, Progress.NONE, Optional.empty());
    return Stream.concat(errors(bay, read.loaded()), parts(bay, read)).iterator();
  }

  private static Stream<Row> errors(String bay, LoadedSurvey loaded) {
    return loaded.findings().stream()
        .filter(finding -> finding.level() == Finding.Level.ERROR)
        .map(
            finding ->
                Stage.row(
                    bay, Stage.ERROR, 0, 0, finding.message().getBytes(StandardCharsets.UTF_8)));
  }

  private Stream<Row> parts(String bay, BayReader.Bay read) {
    if (read.loaded().survey().isEmpty()) {
      return Stream.empty();
    }
    MetricSurvey whole = read.loaded().survey().get();
    SurveyGroups groups =
        new SurveyGrouper(
                new InteractionReach(survey.parameters(), SurveySpec.tables(), whole.scale()))
            .group(whole.beds(), whole.scars());
    List<SurveyPart> parts =
        PartPacker.pack(groups, whole.beds(), whole.scars(), new PartSize(mostScars, mostVertices));
    BayFacts facts =
        new BayFacts(whole.gridLabel(), whole.scars().size(), groups.tiled(), read.rows());
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
}
