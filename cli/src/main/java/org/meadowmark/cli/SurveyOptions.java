package org.meadowmark.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.reference.TableLibrary;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.Setting;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.survey.SurveyDraft;
import org.meadowmark.core.survey.SurveyFile;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The survey that a command works on: a survey file, and options that stand above it. */
final class SurveyOptions {
  @Parameters(
      arity = "0..1",
      paramLabel = "SURVEY",
      description =
          "Survey file, or a folder that holds a " + SurveyFile.NAME + ". Options stand above it.")
  private Path survey;

  @Option(
      names = "--set",
      paramLabel = "NAME=VALUE",
      description =
          "Value of a parameter. 'meadowmark tables parameters' lists them. A list is written with"
              + " commas.")
  private Map<String, String> settings = new LinkedHashMap<>();

  @Option(
      names = "--analysis-crs",
      paramLabel = "CODE",
      description =
          "Projected reference system to measure in, such as EPSG:32617. Default: the best UTM"
              + " zone.")
  private String analysisCrs;

  @Option(names = "--name", paramLabel = "TEXT", description = "Name of the survey for reports.")
  private String name;

  @Option(
      names = "--date",
      paramLabel = "YYYY-MM-DD",
      converter = DateConverter.class,
      description = "Date of the survey, such as 2026-06-14.")
  private LocalDate date;

  @Mixin private TablesOption tables;

  @ArgGroup(validate = false, heading = "%nLayers and how to read them:%n")
  private LayerOptions layers = new LayerOptions();

  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  /**
   * A complete survey and the tables that go with it.
   *
   * @param definition the survey
   * @param tables reference tables
   */
  record Survey(SurveyDefinition definition, ReferenceTables tables) {}

  /**
   * Puts the survey together.
   *
   * @throws ParameterException if an option is wrong
   * @throws MeadowmarkException if the survey file or a table is wrong
   */
  Survey read() {
    TableLibrary library = tables.library();
    ParametersTable parameters = ParametersTable.read(library);
    ReferenceTables reference = ReferenceTablesReader.read(library);
    if (survey == null) {
      SurveyDraft draft = withOptions(SurveyDraft.EMPTY, parameters);
      if (draft.layers().isEmpty()) {
        throw new ParameterException(
            spec.commandLine(),
            "No survey given: name a survey file or folder, or --scars and --beds");
      }
      return new Survey(usage(() -> draft.define(parameters, reference)), reference);
    }
    SurveyDraft draft = withOptions(SurveyFile.draft(survey), parameters);
    return new Survey(draft.define(parameters, reference), reference);
  }

  /** Reference tables that were given. */
  ReferenceTables referenceTables() {
    return ReferenceTablesReader.read(tables.library());
  }

  /**
   * Another survey: its file, with the parameters that were given.
   *
   * @throws MeadowmarkException if the file is wrong
   */
  SurveyDefinition earlier(Path file) {
    TableLibrary library = tables.library();
    SurveyDraft draft = SurveyFile.draft(file);
    for (Setting setting : settings()) {
      draft = draft.withSetting(setting);
    }
    return draft.define(ParametersTable.read(library), ReferenceTablesReader.read(library));
  }

  /** Whether something was given that can hold for one survey only. */
  boolean holdForOneSurvey() {
    return name != null || date != null || !layers.areAbsent();
  }

  /** The survey file or folder that was given. */
  Optional<Path> place() {
    return Optional.ofNullable(survey);
  }

  private SurveyDraft withOptions(SurveyDraft file, ParametersTable parameters) {
    List<Setting> given = settings();
    usage(() -> parameters.parameters(given));
    SurveyDraft draft = usage(() -> layers.over(file));
    if (name != null) {
      draft = draft.withName(name);
    }
    if (date != null) {
      draft = draft.withDate(date);
    }
    for (Setting setting : given) {
      draft = draft.withSetting(setting);
    }
    return draft;
  }

  private List<Setting> settings() {
    List<Setting> given = new ArrayList<>();
    settings.forEach((key, value) -> given.add(new Setting(key, List.of(value), "--set " + key)));
    if (analysisCrs != null) {
      given.add(new Setting("analysis_crs", List.of(analysisCrs), "--analysis-crs"));
    }
    return given;
  }

  private <T> T usage(Supplier<T> step) {
    try {
      return step.get();
    } catch (MeadowmarkException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage(), e);
    }
  }
}
