package org.meadowmark.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.meadowmark.core.assessment.comparison.MarkerReader.MarkerFile;
import org.meadowmark.core.change.comparability.Aspect;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.SurveyDefinition;

/** Compares surveys of several seasons. */
@FunctionalInterface
interface CompareGateway {

  /**
   * What to compare.
   *
   * @param surveys the surveys, complete
   * @param tables reference tables
   * @param markers which segments were marked and when, where given
   * @param despite differences to let pass
   * @param output folder to write
   * @param overwrite whether an earlier output there may be replaced
   * @param threads how many threads to use at most
   * @param options options as the user gave them, for the run record
   */
  record Request(
      List<SurveyDefinition> surveys,
      ReferenceTables tables,
      Optional<MarkerFile> markers,
      Set<Aspect> despite,
      Path output,
      boolean overwrite,
      int threads,
      Map<String, String> options) {}

  /** Compares, writes the output folder, and returns the summary for the terminal. */
  String compare(Request request, Progress progress);
}
