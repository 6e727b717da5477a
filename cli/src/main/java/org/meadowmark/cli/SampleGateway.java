package org.meadowmark.cli;

import java.nio.file.Path;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.samples.EstuarySettings;
import org.meadowmark.samples.ScarSettings;

/** Makes invented surveys. Both calls return a summary for the terminal. */
interface SampleGateway {

  /** Writes the surveys of an invented estuary into a folder that must not exist. */
  String inventEstuary(EstuarySettings settings, Path output, Progress progress);

  /** Writes a survey with invented scars on existing beds into a folder that must not exist. */
  String inventScars(ScarSettings settings, LayerSource beds, Path output, Progress progress);
}
