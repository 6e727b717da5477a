package org.meadowmark.core.api;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.meadowmark.core.assessment.Assessment;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.Setting;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.survey.SurveyDraft;
import org.meadowmark.core.survey.SurveyFile;

/**
 * A survey on disk, ready to be assessed with the reference tables that come with the toolkit.
 *
 * <p>Immutable and safe for several threads. Nothing is read before {@link #assess} or {@link
 * #assessInto} is called, and everything anew at each call; neither prints. Parallel work runs in
 * the fork join pool of the calling thread, or in the common pool; results do not depend on it. An
 * assessment takes seconds for some thousand scars and holds the survey in memory.
 */
public final class SurveyFolder {
  private final Path path;
  private final Map<String, String> parameters;

  private SurveyFolder(Path path, Map<String, String> parameters) {
    this.path = path;
    this.parameters = parameters;
  }

  /**
   * Names a survey.
   *
   * @param path a folder that holds a {@code survey.toml}, or such a file
   * @return the survey, with the parameters of its file
   */
  public static SurveyFolder at(Path path) {
    return new SurveyFolder(Objects.requireNonNull(path, "path"), Map.of());
  }

  /**
   * The same survey with another value of a parameter, instead of its file's or the default.
   *
   * @param name a parameter of {@code shared/parameters.csv}, such as {@code ground_scale}
   * @param value the value as in that table; it is checked when the survey is assessed
   * @return a new survey; this one stays as it is
   */
  public SurveyFolder withParameter(String name, String value) {
    Map<String, String> more = new TreeMap<>(parameters);
    more.put(Objects.requireNonNull(name, "name"), Objects.requireNonNull(value, "value"));
    return new SurveyFolder(path, Map.copyOf(more));
  }

  /**
   * Reads, checks, projects, measures and ranks, and writes nothing.
   *
   * @return the leading figures
   * @throws org.meadowmark.core.model.SurveyInputException if a layer cannot be used at all
   * @throws org.meadowmark.core.model.MeadowmarkException if the survey file cannot be read, or it
   *     or a parameter holds what is not allowed
   */
  public SurveyResults assess() {
    return SurveyResults.of(assessment().assess());
  }

  /**
   * Assesses and writes the output folder that the command {@code assess} writes: layers, tables,
   * report, sheets and the record of the run. All of it appears or nothing.
   *
   * @param folder folder to write
   * @param overwrite whether an earlier output there may be replaced
   * @return the summary in words, for a person
   * @throws org.meadowmark.core.model.OutputExistsException if there is an output and it may not be
   *     replaced
   * @throws org.meadowmark.core.model.OutputFailedException if the folder cannot be written
   * @throws org.meadowmark.core.model.SurveyInputException if a layer cannot be used at all
   * @throws org.meadowmark.core.model.MeadowmarkException if the survey file cannot be read, or it
   *     or a parameter holds what is not allowed
   */
  public String assessInto(Path folder, boolean overwrite) {
    return assessment().assessInto(folder, overwrite);
  }

  private Assessment assessment() {
    ReferenceTables tables = ReferenceTablesReader.bundled();
    SurveyDraft draft = SurveyFile.draft(path);
    List<String> names = new ArrayList<>(parameters.keySet());
    names.sort(null);
    for (String name : names) {
      draft =
          draft.withSetting(new Setting(name, List.of(parameters.get(name)), "parameter " + name));
    }
    SurveyDefinition definition = draft.define(ParametersTable.bundled(), tables);
    return new Assessment(definition, tables, parameters, version(), Progress.NONE);
  }

  private static String version() {
    String stated = SurveyFolder.class.getPackage().getImplementationVersion();
    return stated == null ? "unknown version" : stated;
  }
}
