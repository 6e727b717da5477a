package org.meadowmark.cluster;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.apache.hadoop.conf.Configuration;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.meadowmark.cluster.assign.BayPolygons;
import org.meadowmark.cluster.assign.OutsideFeatures;
import org.meadowmark.cluster.bay.BayTables;
import org.meadowmark.cluster.bay.BaysAssessment;
import org.meadowmark.cluster.bay.Grids;
import org.meadowmark.cluster.bay.SurveySpec;
import org.meadowmark.cluster.folder.BayFolders;
import org.meadowmark.cluster.folder.BayNames;
import org.meadowmark.cluster.output.BayTotals;
import org.meadowmark.cluster.output.ClusterFolder;
import org.meadowmark.cluster.output.TableFiles;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.partition.PartSize;
import org.meadowmark.core.project.AnalysisGrid;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.survey.SurveyDraft;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.record.FileDigest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Assesses all bays of a survey. */
@Command(
    name = "assess",
    sortOptions = false,
    description =
        "Assesses every bay of a survey whose layers are GeoParquet, and writes the tables as"
            + " GeoParquet and Parquet, with a column that names the bay.")
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
      names = "--bays",
      paramLabel = "LAYER",
      description =
          "Polygons of bays, GeoParquet, a path or an address: scars and beds go by their place,"
              + " other layers count for every bay. Needs --bay-name.")
  private String bayLayer = "";

  @Option(
      names = "--bay-name",
      paramLabel = "NAME",
      description = "Column of --bays with the name of each bay.")
  private String bayName = "";

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

  @Option(
      names = "--bay-folders",
      description =
          "Write for each bay also the whole folder that the assessment of one survey writes, with"
              + " report, layers, charts and sheets, below bays.")
  private boolean bayFolders;

  @Option(names = "--overwrite", description = "Replace the output of an earlier run.")
  private boolean overwrite;

  @Spec private CommandSpec command;

  @Override
  public Integer call() throws IOException {
    Instant started = Instant.now();
    if (bayLayer.isEmpty() != bayName.isEmpty() || !bayLayer.isEmpty() && !bayColumn.isEmpty()) {
      throw new ParameterException(
          command.commandLine(), "--bays and --bay-name go together, and without --bay-column");
    }
    SurveyDraft draft = survey.draft();
    SurveyDefinition definition = draft.define(ParametersTable.bundled(), SurveySpec.tables());
    SurveySpec spec = new SurveySpec(draft, definition, surveyFile(definition));
    PartSize size = new PartSize(partScars, partVertices);
    try (ClusterSession session = ClusterSession.open(definition.name(), survey.master())) {
      Configuration configuration = session.spark().sessionState().newHadoopConf();
      try (ClusterFolder folder = new ClusterFolder(output, overwrite, configuration);
          BaysAssessment assessment =
              new BaysAssessment(
                  session.spark(),
                  spec,
                  bayColumn,
                  polygons(session.spark()),
                  size,
                  folders(folder, configuration, started))) {
        BaysAssessment.Outcome outcome = assessment.assess();
        List<Row> totals =
            write(session.spark(), outcome, folder, BayTables.layouts(definition.parameters()));
        Map<String, String> names = takeFolders(outcome, folder);
        folder.write(ClusterFolder.RECORD, record(definition, outcome, names));
        folder.commit();
        print(outcome, totals);
      }
    }
    return 0;
  }

  private Optional<BayPolygons> polygons(SparkSession spark) {
    return bayLayer.isEmpty()
        ? Optional.empty()
        : Optional.of(BayPolygons.read(spark, bayLayer, bayName));
  }

  private static FileDigest surveyFile(SurveyDefinition definition) throws IOException {
    Path file = definition.file().orElseThrow();
    return FileDigest.of(String.valueOf(file.getFileName()), file);
  }

  private Optional<BayFolders> folders(
      ClusterFolder folder, Configuration configuration, Instant started) {
    if (!bayFolders) {
      return Optional.empty();
    }
    Map<String, String> options = new LinkedHashMap<>();
    options.put("SURVEY", survey.file().toString());
    options.put("--output", output);
    options.put("--bay-column", bayColumn);
    options.put("--bays", bayLayer);
    options.put("--bay-name", bayName);
    survey.settings().forEach((name, value) -> options.put("--set " + name, value));
    options.put("--part-scars", Integer.toString(partScars));
    options.put("--part-vertices", Integer.toString(partVertices));
    String stated = Main.class.getPackage().getImplementationVersion();
    return Optional.of(
        new BayFolders(
            folder.tries(),
            configuration,
            options,
            stated == null ? "unknown version" : stated,
            started));
  }

  private static Map<String, String> takeFolders(
      BaysAssessment.Outcome outcome, ClusterFolder folder) {
    Map<String, String> names = new TreeMap<>(Ids.ORDER);
    BayNames.of(outcome.folders().keySet())
        .forEach((bay, name) -> names.put(bay, BayFolders.FOLDER + "/" + name));
    outcome.folders().forEach((bay, place) -> folder.take(place, names.get(bay)));
    return names;
  }

  private static List<Row> write(
      SparkSession spark,
      BaysAssessment.Outcome outcome,
      ClusterFolder folder,
      List<ResultTable> layouts) {
    Map<String, AnalysisGrid> grids = new TreeMap<>(Ids.ORDER);
    outcome.bays().forEach((name, bay) -> grids.put(name, Grids.of(bay.grid())));
    new TableFiles(outcome.rows(), grids, folder).write(layouts);
    List<Row> totals = BayTotals.of(outcome.rows(), outcome.bays().keySet(), layouts);
    spark
        .createDataFrame(totals, BayTotals.schema())
        .coalesce(1)
        .write()
        .parquet(folder.inside(BayTotals.NAME + ".parquet"));
    outcome
        .outside()
        .ifPresent(rows -> rows.write().parquet(folder.inside(OutsideFeatures.NAME + ".parquet")));
    return totals;
  }

  private String record(
      SurveyDefinition definition, BaysAssessment.Outcome outcome, Map<String, String> folders) {
    ObjectNode record = new ObjectMapper().createObjectNode();
    record.put("survey", definition.name());
    ArrayNode layers = record.putArray("layers");
    for (LayerSource layer : definition.layers()) {
      layers.addObject().put("role", layer.role().key()).put("file", layer.fileLabel());
    }
    record.put("bay_column", bayColumn).put("bays_from", bayLayer).put("bay_name", bayName);
    record.put("near_bed_pairs", outcome.nearBeds());
    outcome.outside().ifPresent(rows -> record.put("features_in_no_bay", rows.count()));
    ObjectNode settings = record.putObject("set");
    survey.settings().forEach(settings::put);
    record.put("part_scars", partScars).put("part_vertices", partVertices);
    record.put("parts", outcome.parts()).put("largest_part_scars", outcome.largestPartScars());
    ArrayNode bays = record.putArray("bays");
    outcome
        .bays()
        .forEach(
            (name, bay) -> {
              ObjectNode each =
                  bays.addObject()
                      .put("bay", name)
                      .put("analysis_grid", bay.grid())
                      .put("scars", bay.scars());
              if (folders.containsKey(name)) {
                each.put("folder", folders.get(name));
              }
            });
    return record.toPrettyString() + "\n";
  }

  private void print(BaysAssessment.Outcome outcome, List<Row> totals) {
    PrintWriter out = command.commandLine().getOut();
    Row all = totals.get(totals.size() - 1);
    out.printf(
        Locale.ROOT,
        "%d bay(s), %d part(s): %d scars in %d beds, %.0f m2 of %.0f m2 surveyed grass scarred;"
            + " %d channel segments, %d zone(s) proposed.%n",
        outcome.bays().size(),
        outcome.parts(),
        all.get(BayTotals.schema().fieldIndex("scar_count")),
        all.get(BayTotals.schema().fieldIndex("bed_count")),
        all.get(BayTotals.schema().fieldIndex("scarred_area_m2")),
        all.get(BayTotals.schema().fieldIndex("surveyed_area_m2")),
        all.get(BayTotals.schema().fieldIndex("segment_count")),
        all.get(BayTotals.schema().fieldIndex("zone_count")));
    if (outcome.nearBeds() > 0) {
      out.printf(
          Locale.ROOT,
          "%d pair(s) of beds of different bays are within the largest crossing distance of each"
              + " other; bays are measured apart, so they are not joined.%n",
          outcome.nearBeds());
    }
    outcome
        .outside()
        .map(Dataset::count)
        .filter(count -> count > 0)
        .ifPresent(
            count ->
                out.printf(
                    Locale.ROOT,
                    "%d scar(s) and bed(s) are in no bay and not assessed: they are listed in"
                        + " %s.parquet.%n",
                    count,
                    OutsideFeatures.NAME));
    out.println(
        "\"No scar seen\" is not \"no scar\": figures rest on what was mapped. Findings on the"
            + " input are in findings.parquet.");
    out.println("Results are in " + output);
    out.flush();
  }
}
