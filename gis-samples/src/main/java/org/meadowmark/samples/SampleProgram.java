package org.meadowmark.samples;

import java.nio.file.Path;
import java.util.Locale;
import org.meadowmark.core.model.MeadowmarkException;

/**
 * Writes a sample: {@code SampleProgram <new folder> [<seed> <scars> <beds>]}. Without numbers it
 * is the bundled sample. {@code SampleProgram first-survey <new folder>} writes the survey that the
 * tutorial starts from.
 */
public final class SampleProgram {
  private static final String FIRST_SURVEY = "first-survey";

  private SampleProgram() {}

  /** Runs the program. */
  public static void main(String[] arguments) {
    boolean isFirstSurvey = arguments.length == 2 && arguments[0].equals(FIRST_SURVEY);
    if (arguments.length != 1 && arguments.length != 4 && !isFirstSurvey) {
      System.err.println("usage: SampleProgram <new folder> [<seed> <scars> <beds>]");
      System.err.println("   or: SampleProgram " + FIRST_SURVEY + " <new folder>");
      System.exit(2);
    }
    try {
      if (isFirstSurvey) {
        FirstSurveyWriter.write(
            Path.of(arguments[1]), EstuaryGenerator.generate(EstuarySettings.SAMPLE));
      } else {
        writeSample(Path.of(arguments[0]), EstuaryGenerator.generate(settings(arguments)));
      }
    } catch (MeadowmarkException | IllegalArgumentException e) {
      System.err.println(e.getMessage());
      System.exit(1);
    }
  }

  private static EstuarySettings settings(String[] arguments) {
    if (arguments.length == 1) {
      return EstuarySettings.SAMPLE;
    }
    return EstuarySettings.SAMPLE
        .withSeed(Long.parseLong(arguments[1]))
        .withSize(Integer.parseInt(arguments[2]), Integer.parseInt(arguments[3]));
  }

  /**
   * Writes {@code season-1}, {@code season-2} and so on, and a folder {@code truth}, into a new
   * folder.
   *
   * @throws MeadowmarkException if the folder exists or cannot be written
   */
  public static void writeSample(Path folder, Estuary estuary) {
    SurveyFolderWriter.publish(
        folder,
        temporary -> {
          for (int season = 0; season < estuary.settings().seasons(); season++) {
            String name = String.format(Locale.ROOT, "season-%d", season + 1);
            SurveyFolderWriter.write(temporary.resolve(name), estuary, season);
          }
          TruthWriter.write(temporary.resolve("truth"), estuary);
        });
  }
}
