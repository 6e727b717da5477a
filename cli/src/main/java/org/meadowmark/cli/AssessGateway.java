package org.meadowmark.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.SurveyDefinition;

/** Runs a whole assessment. */
@FunctionalInterface
interface AssessGateway {

  /**
   * What to assess.
   *
   * @param survey the survey, complete
   * @param earlier earlier surveys of the place
   * @param tables reference tables
   * @param output folder to write
   * @param overwrite whether an earlier output there may be replaced
   * @param threads how many threads to use at most
   * @param options options as the user gave them, for the run record
   */
  record Request(
      SurveyDefinition survey,
      List<SurveyDefinition> earlier,
      ReferenceTables tables,
      Path output,
      boolean overwrite,
      int threads,
      Map<String, String> options) {}

  /** Assesses, writes the output folder, and returns the summary for the terminal. */
  String assess(Request request, Progress progress);
}
