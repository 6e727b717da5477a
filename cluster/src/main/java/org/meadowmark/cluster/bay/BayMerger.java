package org.meadowmark.cluster.bay;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.spark.TaskContext;
import org.apache.spark.api.java.function.FlatMapGroupsFunction;
import org.apache.spark.sql.Row;
import org.apache.spark.util.TaskCompletionListener;
import org.meadowmark.cluster.folder.BayFolders;
import org.meadowmark.cluster.geoparquet.RowBytes;
import org.meadowmark.core.assessment.SurveyAssessor;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.PartEvidence;
import org.meadowmark.core.measure.PartMerger;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.project.DepthGrid;
import org.meadowmark.core.store.DiskRows;
import org.meadowmark.core.store.RowStore;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.record.FileDigest;
import org.meadowmark.core.write.record.InputFiles;
import org.meadowmark.core.write.record.StageMeter;

/**
 * Reads one bay again, puts its parts together, assesses it, and makes the rows of its tables and,
 * where asked, its folder.
 *
 * <p>Rows come in falling order of their kind: features, then facts, then the parts, which are
 * taken one by one.
 */
final class BayMerger implements FlatMapGroupsFunction<String, Row, Row> {
  private static final long serialVersionUID = 1L;

  private final SurveySpec survey;
  private final BayReader reader;
  private final BayFolders folders;

  /** A merger; no folders where they are null. */
  BayMerger(SurveySpec survey, BayReader reader, BayFolders folders) {
    this.survey = survey;
    this.reader = reader;
    this.folders = folders;
  }

  @Override
  public Iterator<Row> call(String name, Iterator<Row> rows) {
    RowStore store = DiskRows.in(Path.of(System.getProperty("java.io.tmpdir")));
    TaskContext.get().addTaskCompletionListener((TaskCompletionListener) task -> store.close());
    List<List<byte[]>> features = reader.rowsOfEveryBay();
    Row row = rows.next();
    while (kind(row).equals(Stage.FEATURE)) {
      features.get(row.getInt(2)).add(row.<byte[]>getAs(Stage.BYTES));
      row = rows.next();
    }
    if (!kind(row).equals(Stage.FACTS)) {
      throw new IllegalStateException("parts of a bay that was not loaded: " + name);
    }
    BayFacts facts = RowBytes.read(BayFacts.class, row.getAs(Stage.BYTES));
    StageMeter meter = new StageMeter(Progress.NONE);
    BayReader.Bay bay = reader.read(name, features, meter, Optional.of(store));
    if (!bay.rows().equals(facts.rows())) {
      throw new MeadowmarkException(
          "bay "
              + name
              + ": its layers were changed while they were read; run again when nothing writes to"
              + " them");
    }
    AssessedSurvey assessed = assess(bay, facts, rows, store, meter);
    return Stream.concat(folder(name, bay, assessed, meter), BayTables.rows(name, assessed))
        .iterator();
  }

  private static String kind(Row row) {
    return row.getAs(Stage.KIND);
  }

  private AssessedSurvey assess(
      BayReader.Bay bay, BayFacts facts, Iterator<Row> parts, RowStore store, StageMeter meter) {
    MetricSurvey whole = bay.loaded().orThrow();
    meter.begin("Putting parts together", -1);
    PartMerger merger =
        new PartMerger(
            whole.managementAreas(),
            whole.scale(),
            survey.parameters(),
            SurveySpec.tables(),
            facts.scarCount(),
            facts.tiled(),
            store);
    parts.forEachRemaining(
        part -> merger.add(PartEvidence.fromBytes(part.<byte[]>getAs(Stage.BYTES))));
    Measurement measurement = merger.merge();
    meter.end();
    return new SurveyAssessor(bay.definition(), SurveySpec.tables(), meter)
        .assess(bay.loaded(), measurement);
  }

  private Stream<Row> folder(
      String name, BayReader.Bay bay, AssessedSurvey assessed, StageMeter meter) {
    if (folders == null) {
      return Stream.empty();
    }
    List<FileDigest> inputs = new ArrayList<>(List.of(survey.file()));
    inputs.addAll(bay.rows());
    inputs.addAll(grids(bay.definition()));
    String place = folders.write(name, assessed, inputs, meter);
    return Stream.of(Stage.row(name, Stage.FOLDER, 0, 0, place.getBytes(StandardCharsets.UTF_8)));
  }

  /** Grids of depth are files on every machine. */
  private static List<FileDigest> grids(SurveyDefinition definition) {
    return InputFiles.digests(
        new SurveyDefinition(
            definition.name(),
            definition.date(),
            Optional.empty(),
            definition.layers(LayerRole.DEPTH).stream().filter(DepthGrid::isGrid).toList(),
            definition.parameters()));
  }
}
