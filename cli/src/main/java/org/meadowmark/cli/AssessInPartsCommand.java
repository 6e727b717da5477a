package org.meadowmark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import org.meadowmark.core.assessment.Assessment;
import org.meadowmark.core.model.OutputExistsException;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.partition.PartSize;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.SurveyDefinition;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Runs whole assessments of large surveys, one part after the other. */
@Command(
    name = "assess-in-parts",
    customSynopsis = "meadowmark assess-in-parts [SURVEY]... [OPTION]... --output=DIR",
    description = {
      "Assesses a survey too large to be measured in one go, or several surveys one after the"
          + " other.",
      "",
      "Groups beds and scars that depend on each other, measures some groups at a time and puts the"
          + " figures together. Results are those of 'assess'; scars and rows wait in temporary"
          + " files. Of several surveys each gets a folder of its own in the output, with"
          + " totals.csv beside them; one that fails is reported and the others go on."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  A large survey:",
      "    meadowmark assess-in-parts whole-coast --output results",
      "  Several bays:",
      "    meadowmark assess-in-parts heron-sound quillmere-sound --output results"
    })
final class AssessInPartsCommand implements Callable<Integer> {
  @Mixin private SurveyOptions survey;

  @Parameters(
      index = "1..*",
      arity = "0..*",
      paramLabel = "SURVEY",
      hidden = true,
      description = "More surveys.")
  private List<Path> more = new ArrayList<>();

  @Option(
      names = "--part-scars",
      paramLabel = "N",
      description =
          "Most scars of a part, unless one group has more. Default: ${DEFAULT-VALUE}. Results do"
              + " not depend on it, memory does.")
  private int partScars = PartSize.DEFAULT.scars();

  @Option(
      names = "--temporary-files",
      paramLabel = "DIR",
      description = "Folder for temporary files. Default: that of the system.")
  private Path temporaryFiles = Path.of(System.getProperty("java.io.tmpdir"));

  @Mixin private OutputOption output;

  @Option(names = "--overwrite", description = "Replace the output of an earlier run.")
  private boolean overwrite;

  @Mixin private ThreadOption threads;
  @Mixin private MessageOptions messages;
  @Spec private CommandSpec spec;

  private final PartsGateway gateway;

  AssessInPartsCommand(PartsGateway gateway) {
    this.gateway = gateway;
  }

  @Override
  public Integer call() throws IOException {
    if (partScars < 1) {
      throw new ParameterException(
          spec.commandLine(),
          "Invalid value for option '--part-scars': " + partScars + " is less than 1");
    }
    if (!Files.isDirectory(temporaryFiles)) {
      throw new ParameterException(
          spec.commandLine(),
          "Invalid value for option '--temporary-files': " + temporaryFiles + " is no folder");
    }
    return more.isEmpty() ? one() : several();
  }

  private int one() {
    SurveyOptions.Survey given = survey.read();
    Assessment.Done done = assess(given.definition(), given.tables(), output.folder());
    spec.commandLine().getOut().println(done.summary().stripTrailing());
    messages.say("Results are in " + output.folder());
    return ExitCode.OK.value();
  }

  private Assessment.Done assess(SurveyDefinition definition, ReferenceTables tables, Path folder) {
    Progress progress = messages.progress();
    try {
      return gateway.assess(
          new PartsGateway.Request(
              definition,
              tables,
              new Assessment.InParts(
                  new PartSize(partScars, PartSize.DEFAULT.bedVertices()), temporaryFiles),
              folder,
              overwrite,
              threads.threads(),
              GivenOptions.of(spec.commandLine().getParseResult())),
          progress);
    } finally {
      progress.end();
    }
  }

  private int several() throws IOException {
    if (survey.holdForOneSurvey()) {
      throw new ParameterException(
          spec.commandLine(),
          "Options of layers, --name and --date hold for one survey only; put them in the survey"
              + " files");
    }
    List<Path> places = new ArrayList<>();
    survey.place().ifPresent(places::add);
    places.addAll(more);
    Path folder = output.folder();
    if (Files.exists(folder.resolve(SurveyTotals.FILE_NAME)) && !overwrite) {
      throw new OutputExistsException(
          folder + ": already exists; name another folder, or replace it with --overwrite");
    }
    ReferenceTables tables = survey.referenceTables();
    SurveyTotals totals = new SurveyTotals();
    Set<String> names = new HashSet<>();
    ExitCode code = ExitCode.OK;
    for (Path place : places) {
      String name = ownName(place, names);
      try {
        Assessment.Done done = assess(survey.earlier(place), tables, folder.resolve(name));
        totals.add(name, done);
        messages.say(name + ": done, results are in " + folder.resolve(name));
      } catch (RuntimeException e) {
        ExitCode failure = ErrorReport.codeOf(e);
        code = code == ExitCode.OK ? failure : code;
        String message = ErrorReport.oneLine(e.getMessage());
        totals.addFailure(name, message);
        spec.commandLine().getErr().println("error: " + name + ": " + message);
        if (MessageOptions.verbose(spec.commandLine())) {
          e.printStackTrace(spec.commandLine().getErr());
        }
        spec.commandLine().getErr().flush();
      }
    }
    totals.writeInto(folder);
    spec.commandLine().getOut().print(totals.text());
    messages.say("Totals are in " + folder.resolve(SurveyTotals.FILE_NAME));
    return code.value();
  }

  /** Name of the folder that a survey is in, with a number where another has the same. */
  private static String ownName(Path place, Set<String> taken) {
    Path whole = place.toAbsolutePath().normalize();
    Path named = Files.isRegularFile(whole) ? whole.getParent() : whole;
    String name =
        named == null || named.getFileName() == null ? "survey" : named.getFileName().toString();
    String unique = name;
    for (int n = 2; !taken.add(unique); n++) {
      unique = name + "-" + n;
    }
    return unique;
  }
}
