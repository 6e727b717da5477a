package org.meadowmark.core.write.record;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.meadowmark.core.write.ComparedSurveys;

/**
 * The record of a comparison: what was read, with which choices, what was let pass, and how long it
 * took. It stands in a file of the name {@link RunRecord#FILE_NAME}.
 *
 * @param compared results
 * @param facts how the run went
 * @param inputs files read, by survey in order of time, then those of the markers
 * @param outputs files written, without the record itself
 */
public record ComparisonRecord(
    ComparedSurveys compared,
    RunFacts facts,
    List<List<FileDigest>> inputs,
    List<FileDigest> outputs) {

  /**
   * Keeps copies of the lists that cannot be changed.
   *
   * @param compared results
   * @param facts how the run went
   * @param inputs files read, by survey in order of time, then those of the markers
   * @param outputs files written, without the record itself
   * @throws NullPointerException if a list, or anything in it, is null
   */
  public ComparisonRecord {
    inputs = List.copyOf(inputs);
    outputs = List.copyOf(outputs);
  }

  /** {@return the record as JSON, keys always in the same order} */
  public String toJson() {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("program", RunRecord.PROGRAM).put("version", facts.versions().tool());
    ObjectNode options = root.putObject("options");
    facts.options().forEach(options::put);
    root.set("parameters", ParameterValues.of(compared.parameters()));
    ObjectNode grid = root.putObject("analysis_grid");
    grid.put("crs", compared.last().mapped().gridLabel());
    grid.put("corrected_to_ground", compared.parameters().groundScale());
    ArrayNode surveys = root.putArray("surveys");
    for (int i = 0; i < compared.surveys().size(); i++) {
      ComparedSurveys.ReadSurvey survey = compared.surveys().get(i);
      ObjectNode node = surveys.addObject();
      node.put("name", survey.definition().name());
      node.put("date", survey.definition().date().orElseThrow().toString());
      RunJson.putFiles(node.putArray("inputs"), inputs.get(i));
      LayerCountJson.putAll(node.putArray("layers"), survey.counts());
      RunJson.putFindings(node.putArray("findings"), survey.findings());
    }
    ArrayNode markers = root.putArray("markers");
    inputs.stream()
        .skip(compared.surveys().size())
        .forEach(files -> RunJson.putFiles(markers, files));
    RunJson.putFindings(root.putArray("marker_findings"), compared.markerFindings());
    ArrayNode despite = root.putArray("despite");
    compared.despite().forEach(despite::add);
    ArrayNode tolerances = root.putArray("match_tolerances_m");
    compared.pairs().forEach(pair -> tolerances.add(pair.match().toleranceMetres()));
    RunJson.putFiles(root.putArray("outputs"), outputs);
    RunJson.putRun(root.putObject("run"), facts);
    return JsonText.of(root);
  }
}
