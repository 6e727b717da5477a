package org.meadowmark.cluster;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.meadowmark.cluster.geoparquet.LayerConverter;
import org.meadowmark.cluster.output.ClusterFolder;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.project.DepthGrid;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.SurveyDraft;
import org.meadowmark.core.survey.SurveyFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Converts the layers of a survey to GeoParquet. */
@Command(
    name = "convert",
    sortOptions = false,
    description =
        "Writes every layer of a survey as GeoParquet, features as they are in the files, with a"
            + " survey.toml that names the new layers. Grids of depth are copied.")
final class ConvertCommand implements Callable<Integer> {
  /** What belongs to the file that was converted and not to the layer. */
  private static final List<String> OF_THE_FILE =
      List.of("layer", "crs", "wkt_column", "x_column", "y_column");

  @Mixin private SurveyChoice survey;

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "DIR",
      description = "Folder to make on this machine.")
  private String output;

  @Option(names = "--overwrite", description = "Replace the output of an earlier run.")
  private boolean overwrite;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    SurveyDraft draft = survey.draft();
    try (ClusterSession session = ClusterSession.open("conversion", survey.master());
        ClusterFolder folder =
            new ClusterFolder(output, overwrite, session.spark().sessionState().newHadoopConf())) {
      LayerConverter converter = new LayerConverter(session.spark());
      List<String> names = new ArrayList<>();
      ObjectNode record = new TomlMapper().createObjectNode();
      Map<LayerRole, Integer> numbers = new TreeMap<>();
      for (LayerSource layer : draft.layers()) {
        int number = numbers.merge(layer.role(), 1, Integer::sum);
        String name = layer.role().key() + (number == 1 ? "" : "-" + number);
        if (layer.role() == LayerRole.DEPTH && DepthGrid.isGrid(layer)) {
          names.add(copyGrid(layer.file(), folder));
        } else {
          names.add(name + ".parquet");
          LayerConverter.Converted converted =
              converter.convert(layer, folder.inside(name + ".parquet"));
          record.put(name, converted.features());
          say(layer, converted);
        }
      }
      folder.write(SurveyFile.NAME, surveyFile(names));
      folder.write(ClusterFolder.RECORD, record.toPrettyString() + "\n");
      folder.commit();
    }
    spec.commandLine().getOut().println("Layers are in " + output);
    spec.commandLine().getOut().flush();
    return 0;
  }

  private void say(LayerSource layer, LayerConverter.Converted converted) {
    PrintWriter err = spec.commandLine().getErr();
    converted.findings().forEach(finding -> err.println(finding.message()));
    err.println(layer.fileLabel() + ": " + converted.features() + " feature(s) converted");
    err.flush();
  }

  private static String copyGrid(Path grid, ClusterFolder folder) throws IOException {
    String name = grid.getFileName().toString();
    String base = name.substring(0, name.lastIndexOf('.'));
    Path target = Path.of(new org.apache.hadoop.fs.Path(folder.path()).toUri().getPath());
    Files.createDirectories(target);
    try (Stream<Path> beside = Files.list(grid.toAbsolutePath().getParent())) {
      for (Path file : beside.toList()) {
        if (file.getFileName().toString().startsWith(base + ".")) {
          Files.copy(file, target.resolve(file.getFileName().toString()));
        }
      }
    } catch (IOException e) {
      throw new OutputFailedException(grid + ": cannot be copied (" + e.getMessage() + ")", e);
    }
    return name;
  }

  /** The survey file with other places of the layers. */
  private String surveyFile(List<String> names) throws IOException {
    Path file =
        Files.isDirectory(survey.file()) ? survey.file().resolve(SurveyFile.NAME) : survey.file();
    TomlMapper toml = new TomlMapper();
    JsonNode root = toml.readTree(Files.readString(file));
    int next = 0;
    for (LayerRole role : LayerRole.values()) {
      JsonNode layers = root.path("layers").path(role.key());
      List<JsonNode> each = new ArrayList<>();
      if (layers.isArray()) {
        layers.forEach(each::add);
      } else if (layers.isObject()) {
        each.add(layers);
      }
      for (JsonNode layer : each) {
        ObjectNode table = (ObjectNode) layer;
        String name = names.get(next++);
        table.put("file", name);
        if (name.endsWith(".parquet")) {
          table.remove(OF_THE_FILE);
        }
      }
    }
    return toml.writeValueAsString(root);
  }
}
