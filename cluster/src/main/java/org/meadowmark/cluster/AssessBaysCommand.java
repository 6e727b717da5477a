package org.meadowmark.cluster;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.meadowmark.cluster.bay.BaysAssessment;
import org.meadowmark.cluster.bay.Grids;
import org.meadowmark.cluster.bay.SurveySpec;
import org.meadowmark.cluster.output.BayTotals;
import org.meadowmark.cluster.output.ClusterFolder;
import org.meadowmark.cluster.output.TableFiles;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.partition.PartSize;
import org.meadowmark.core.project.AnalysisGrid;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.survey.SurveyDraft;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Assesses all bays of a survey. */
@Command(
    name = "assess",
    sortOptions = false,
    description =
        "Measures damage, patches and gaps of every bay of a survey whose layers are GeoParquet,"
            + " and writes the tables as GeoParquet and Parquet, with a column that names the bay.")
final class AssessBaysCommand implements Callable<Integer> {
  @Mixin private SurveyChoice survey;

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "DIR",
      description = "Folder to make, a path or an address.")
  private String output;

  @Option(
      names = "--bay-column",
      paramLabel = "NAME",
      description =
          "Column that names the bay of a scar or bed. A layer of another kind without it counts"
              + " for every bay. Without this option all is one bay.")
  private String bayColumn = "";

  @Option(
      names = "--part-scars",
      paramLabel = "N",
      description = "Most scars of a part, unless a group has more. Default: ${DEFAULT-VALUE}.")
  private int partScars = PartSize.DEFAULT.scars();

  @Option(
      names = "--part-vertices",
      paramLabel = "N",
      description =
          "Most vertices of the beds of a part, unless a group has more. Default:"
              + " ${DEFAULT-VALUE}.")
  private int partVertices = PartSize.DEFAULT.bedVertices();

  @Option(names = "--overwrite", description = "Replace the output of an earlier run.")
  private boolean overwrite;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    SurveyDraft draft = survey.draft();
    ReferenceTables tables = SurveySpec.tables();
    SurveyDefinition definition = draft.define(ParametersTable.bundled(), tables);
    SurveySpec survey = new SurveySpec(draft, definition);
    PartSize size = new PartSize(partScars, partVertices);
    try (ClusterSession session = ClusterSession.open(definition.name(), this.survey.master());
        ClusterFolder folder =
            new ClusterFolder(output, overwrite, session.spark().sessionState().newHadoopConf());
        BaysAssessment assessment = new BaysAssessment(session.spark(), survey, bayColumn, size)) {
      BaysAssessment.Outcome outcome = assessment.assess();
      List<Row> totals = write(session.spark(), outcome, folder, definition.parameters(), tables);
      folder.write(ClusterFolder.RECORD, record(definition, outcome));
      folder.commit();
      print(outcome, totals);
    }
    return 0;
  }

  private static List<Row> write(
      SparkSession spark,
      BaysAssessment.Outcome outcome,
      ClusterFolder folder,
      Parameters parameters,
      ReferenceTables tables) {
    Map<String, AnalysisGrid> grids = new TreeMap<>(Ids.ORDER);
    outcome.bays().forEach((name, bay) -> grids.put(name, Grids.of(bay.grid())));
    new TableFiles(outcome.rows(), grids, folder).write(parameters, tables);
    List<Row> totals = BayTotals.rows(TableFiles.wholeBays(outcome.rows(), parameters, tables));
    spark
        .createDataFrame(totals, BayTotals.schema())
        .coalesce(1)
        .write()
        .parquet(folder.inside(BayTotals.NAME + ".parquet"));
    return totals;
  }

  private String record(SurveyDefinition definition, BaysAssessment.Outcome outcome) {
    ObjectNode record = new ObjectMapper().createObjectNode();
    record.put("survey", definition.name());
    ArrayNode layers = record.putArray("layers");
    for (LayerSource layer : definition.layers()) {
      layers.addObject().put("role", layer.role().key()).put("file", layer.fileLabel());
    }
    record.put("bay_column", bayColumn);
    ObjectNode settings = record.putObject("set");
    survey.settings().forEach(settings::put);
    record.put("part_scars", partScars).put("part_vertices", partVertices);
    record.put("parts", outcome.parts()).put("largest_part_scars", outcome.largestPartScars());
    ArrayNode bays = record.putArray("bays");
    outcome
        .bays()
        .forEach(
            (name, bay) ->
                bays.addObject()
                    .put("bay", name)
                    .put("analysis_grid", bay.grid())
                    .put("scars", bay.scars()));
    return record.toPrettyString() + "\n";
  }

  private void print(BaysAssessment.Outcome outcome, List<Row> totals) {
    PrintWriter out = spec.commandLine().getOut();
    Row all = totals.get(totals.size() - 1);
    out.printf(
        Locale.ROOT,
        "%d bay(s), %d part(s): %d scars in %d beds, %.0f m2 of %.0f m2 surveyed grass scarred.%n",
        outcome.bays().size(),
        outcome.parts(),
        all.get(BayTotals.schema().fieldIndex("scar_count")),
        all.get(BayTotals.schema().fieldIndex("bed_count")),
        all.get(BayTotals.schema().fieldIndex("scarred_area_m2")),
        all.get(BayTotals.schema().fieldIndex("surveyed_area_m2")));
    out.println(
        "\"No scar seen\" is not \"no scar\": figures rest on what was mapped. Findings on the"
            + " input are in findings.parquet.");
    out.println("Results are in " + output);
    out.flush();
  }
}
