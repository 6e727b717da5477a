package org.meadowmark.cli;

import java.nio.file.Path;
import java.util.Map;
import org.meadowmark.core.assessment.Assessment;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.SurveyDefinition;

/** Runs a whole assessment part by part. */
@FunctionalInterface
interface PartsGateway {

  /**
   * What to assess.
   *
   * @param survey the survey, complete
   * @param tables reference tables
   * @param inParts how large parts may be, and where temporary files go
   * @param output folder to write
   * @param overwrite whether an earlier output there may be replaced
   * @param threads how many threads to use at most
   * @param options options as the user gave them, for the run record
   */
  record Request(
      SurveyDefinition survey,
      ReferenceTables tables,
      Assessment.InParts inParts,
      Path output,
      boolean overwrite,
      int threads,
      Map<String, String> options) {}

  /** Assesses, writes the output folder, and tells what it came to. */
  Assessment.Done assess(Request request, Progress progress);
}
