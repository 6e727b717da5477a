package org.meadowmark.core.write.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.AssessedSurvey;

/**
 * The record of a run: what was read, with which choices, what came of it, and how long it took.
 *
 * @param assessed results, for counts, findings and the analysis grid
 * @param facts how the run went
 * @param inputs files read
 * @param outputs files written, without the record itself
 */
public record RunRecord(
    AssessedSurvey assessed, RunFacts facts, List<FileDigest> inputs, List<FileDigest> outputs) {

  /** Name of the record in an output folder. */
  public static final String FILE_NAME = "run-record.json";

  static final String PROGRAM = "Meadowmark";

  /**
   * Keeps copies of the lists that cannot be changed.
   *
   * @param assessed results, for counts, findings and the analysis grid
   * @param facts how the run went
   * @param inputs files read
   * @param outputs files written, without the record itself
   * @throws NullPointerException if a list, or anything in it, is null
   */
  public RunRecord {
    inputs = List.copyOf(inputs);
    outputs = List.copyOf(outputs);
  }

  /** {@return the record as JSON, keys always in the same order} */
  public String toJson() {
    SurveyDefinition definition = assessed.definition();
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("program", PROGRAM).put("version", facts.versions().tool());
    ObjectNode survey = root.putObject("survey");
    survey.put("name", definition.name());
    survey.put("date", definition.date().map(Object::toString).orElse(null));
    ObjectNode options = root.putObject("options");
    facts.options().forEach(options::put);
    root.set("parameters", ParameterValues.of(definition.parameters()));
    ObjectNode grid = root.putObject("analysis_grid");
    grid.put("crs", assessed.survey().gridLabel());
    grid.put("corrected_to_ground", definition.parameters().groundScale());
    grid.put("wkt", assessed.survey().gridWkt());
    RunJson.putFiles(root.putArray("inputs"), inputs);
    LayerCountJson.putAll(root.putArray("layers"), assessed.counts());
    RunJson.putFindings(root.putArray("findings"), assessed.findings());
    putAttribution(root.putObject("scar_attribution"));
    putUncertainty(root.putObject("uncertainty"), definition.parameters());
    RunJson.putFiles(root.putArray("outputs"), outputs);
    RunJson.putRun(root.putObject("run"), facts);
    return JsonText.of(root);
  }

  /**
   * The outputs listed by the run record of a folder.
   *
   * @param folder a folder, which may hold anything
   * @return file names relative to the folder; empty if the folder has no record of this program
   * @throws IOException if the folder cannot be read
   */
  public static Optional<List<String>> outputsListedIn(Path folder) throws IOException {
    Path file = folder.resolve(FILE_NAME);
    if (!Files.isRegularFile(file)) {
      return Optional.empty();
    }
    JsonNode root;
    try {
      root = new ObjectMapper().readTree(Files.readString(file, StandardCharsets.UTF_8));
    } catch (JsonProcessingException | CharacterCodingException e) {
      return Optional.empty();
    }
    if (root == null || !PROGRAM.equals(root.path("program").asText()) || !root.has("outputs")) {
      return Optional.empty();
    }
    List<String> names = new ArrayList<>();
    root.path("outputs").forEach(output -> names.add(output.path("file").asText()));
    return Optional.of(names);
  }

  private void putAttribution(ObjectNode node) {
    ChannelRanking ranking = assessed.ranking();
    node.put("scar_length_m", ranking.scarLengthMetres())
        .put("attributed_m", ranking.attributedMetres())
        .put("out_of_reach_m", ranking.outOfReachMetres())
        .put("blocked_m", ranking.blockedMetres())
        .put("polygon_scars", ranking.polygonScarCount());
  }

  private static void putUncertainty(ObjectNode node, Parameters parameters) {
    node.put("draws", parameters.uncertaintyDraws()).put("seed", parameters.seed());
    node.put("width_drawn", parameters.uncertaintyDraws() > 0);
    node.put(
        "position_drawn", parameters.uncertaintyDraws() > 0 && parameters.position().isPresent());
    parameters
        .position()
        .ifPresentOrElse(
            accuracy -> node.put("position_accuracy_95_m", accuracy.accuracy95Metres()),
            () -> node.putNull("position_accuracy_95_m"));
  }
}
