package org.meadowmark.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.meadowmark.core.assessment.comparison.MarkerReader.MarkerFile;
import org.meadowmark.core.change.comparability.Aspect;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.reference.TableLibrary;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.Setting;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.survey.SurveyDraft;
import org.meadowmark.core.survey.SurveyFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Compares surveys of several seasons. */
@Command(
    name = "compare-seasons",
    customSynopsis = "meadowmark compare-seasons SURVEY SURVEY... [OPTION]... --output=DIR",
    description = {
      "Says what changed between surveys of a place, and whether markers worked.",
      "",
      "Matches the scars of each survey with those of the next, and works out rates of new and healed"
          + " scars, the change of the grass and, from the days on which markers were placed, their"
          + " effect. Rates and changes come with intervals. Surveys need a date each; they are put in order"
          + " by it. Everything is on the grid, channels and parameters of the last survey. Surveys"
          + " that were made too differently are refused with the reason."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  Two seasons:",
      "    meadowmark compare-seasons sound-2025 sound-2026 --output change",
      "  Three seasons, and what markers did:",
      "    meadowmark compare-seasons sound-2024 sound-2025 sound-2026 --markers marks.csv \\",
      "      --output change",
      "  Although one was made in June and the other in October:",
      "    meadowmark compare-seasons june october --despite season-of-year --output change"
    })
final class CompareCommand implements Callable<Integer> {
  @Parameters(
      arity = "2..*",
      paramLabel = "SURVEY",
      description = "Survey files, or folders that hold a " + SurveyFile.NAME + ", in any order.")
  private List<Path> surveys = new ArrayList<>();

  @Option(
      names = "--markers",
      paramLabel = "FILE",
      description =
          "CSV file of markers: columns 'segment' (or a position), 'date' and, if wanted, 'device'.")
  private Path markers;

  @Option(
      names = "--markers-crs",
      paramLabel = "CODE",
      description = "Reference system of positions in that file, such as EPSG:4326.")
  private String markersCrs;

  @Option(
      names = "--despite",
      paramLabel = "DIFFERENCE",
      description =
          "Compare although the surveys differ too much in this, as the refusal names it. May be"
              + " given several times.")
  private List<String> despite = new ArrayList<>();

  @Option(
      names = "--set",
      paramLabel = "NAME=VALUE",
      description =
          "Value of a parameter, for every survey. 'meadowmark tables parameters' lists them. A list"
              + " is written with commas.")
  private Map<String, String> settings = new LinkedHashMap<>();

  @Mixin private TablesOption tables;
  @Mixin private OutputOption output;

  @Option(names = "--overwrite", description = "Replace the output of an earlier run.")
  private boolean overwrite;

  @Mixin private ThreadOption threads;
  @Mixin private MessageOptions messages;
  @Spec private CommandSpec spec;

  private final CompareGateway gateway;

  CompareCommand(CompareGateway gateway) {
    this.gateway = gateway;
  }

  @Override
  public Integer call() {
    if (markersCrs != null && markers == null) {
      throw new ParameterException(
          spec.commandLine(), "Option '--markers-crs' is of use with '--markers' only");
    }
    Set<Aspect> passed = aspects();
    TableLibrary library = tables.library();
    ParametersTable parameters = ParametersTable.read(library);
    ReferenceTables reference = ReferenceTablesReader.read(library);
    List<Setting> given = given(parameters);
    List<SurveyDefinition> definitions = new ArrayList<>();
    for (Path survey : surveys) {
      SurveyDraft draft = SurveyFile.draft(survey);
      for (Setting setting : given) {
        draft = draft.withSetting(setting);
      }
      definitions.add(draft.define(parameters, reference));
    }
    Progress progress = messages.progress();
    String summary;
    try {
      summary =
          gateway.compare(
              new CompareGateway.Request(
                  definitions,
                  reference,
                  Optional.ofNullable(markers)
                      .map(path -> new MarkerFile(path, Optional.ofNullable(markersCrs))),
                  passed,
                  output.folder(),
                  overwrite,
                  threads.threads(),
                  GivenOptions.of(spec.commandLine().getParseResult())),
              progress);
    } finally {
      progress.end();
    }
    spec.commandLine().getOut().println(summary.stripTrailing());
    messages.say("Results are in " + output.folder());
    return ExitCode.OK.value();
  }

  private Set<Aspect> aspects() {
    Set<Aspect> aspects = EnumSet.noneOf(Aspect.class);
    for (String key : despite) {
      aspects.add(
          Aspect.find(key)
              .orElseThrow(
                  () ->
                      new ParameterException(
                          spec.commandLine(),
                          "Invalid value for option '--despite': '"
                              + key
                              + "' is none of "
                              + String.join(", ", Aspect.keys()))));
    }
    return aspects;
  }

  private List<Setting> given(ParametersTable parameters) {
    List<Setting> given = new ArrayList<>();
    settings.forEach((key, value) -> given.add(new Setting(key, List.of(value), "--set " + key)));
    try {
      parameters.parameters(given);
    } catch (MeadowmarkException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage(), e);
    }
    return given;
  }
}
