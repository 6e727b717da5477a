package org.meadowmark.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.meadowmark.core.model.Progress;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Runs a whole assessment. */
@Command(
    name = "assess",
    customSynopsis = "meadowmark assess [SURVEY] [OPTION]... --output=DIR",
    description = {
      "Measures the damage of a survey and ranks its channel segments.",
      "",
      "Reads the layers, lists and repairs what is wrong with them, measures scars, beds and"
          + " management areas, cuts channels into segments and ranks these by scarring. Writes a"
          + " folder with a GeoPackage, a CSV file a table, pictures and a record of the run, and"
          + " prints a summary. Only scars and beds are needed."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  A survey folder:",
      "    meadowmark assess heron-sound --output results",
      "  No survey file, widths in feet:",
      "    meadowmark assess --scars scars.gpkg#lines --beds beds.shp \\",
      "      --attribute scars.width=WIDTH_FT --width-unit scars=ft --output results",
      "  Another set of distances than the survey file's:",
      "    meadowmark assess heron-sound --set crossing_distances_m=5,10,40 --output results"
    })
final class AssessCommand implements Callable<Integer> {
  @Mixin private SurveyOptions survey;

  @Option(
      names = "--earlier",
      paramLabel = "SURVEY",
      description =
          "Earlier survey of the same place, to tell where the ground is scarred again. May be given"
              + " several times. --set counts for it too.")
  private List<Path> earlier = new ArrayList<>();

  @Mixin private OutputOption output;

  @Option(names = "--overwrite", description = "Replace the output of an earlier run.")
  private boolean overwrite;

  @Mixin private ThreadOption threads;
  @Mixin private MessageOptions messages;
  @Spec private CommandSpec spec;

  private final AssessGateway gateway;

  AssessCommand(AssessGateway gateway) {
    this.gateway = gateway;
  }

  @Override
  public Integer call() {
    SurveyOptions.Survey given = survey.read();
    Progress progress = messages.progress();
    String summary;
    try {
      summary =
          gateway.assess(
              new AssessGateway.Request(
                  given.definition(),
                  earlier.stream().map(survey::earlier).toList(),
                  given.tables(),
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
}
