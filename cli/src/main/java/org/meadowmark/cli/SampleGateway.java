package org.meadowmark.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.survey.LayerSource;

/** Makes an invented survey. */
@FunctionalInterface
interface SampleGateway {

  /**
   * What to make.
   *
   * @param seed start of the random draws
   * @param scars how many scars
   * @param beds beds to put the scars on; empty invents an estuary
   * @param output folder to write
   * @param overwrite whether an earlier output there may be replaced
   */
  record Request(
      long seed, int scars, Optional<LayerSource> beds, Path output, boolean overwrite) {}

  /** Makes the survey, writes its folder, and returns a summary for the terminal. */
  String make(Request request, Progress progress);
}
