package org.meadowmark.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.SurveyDraft;
import org.meadowmark.core.survey.SurveyDraft.Place;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Makes an invented survey. */
@Command(
    name = "make-sample",
    customSynopsis = "meadowmark make-sample [OPTION]... --output=DIR",
    description = {
      "Makes an invented survey to try things on.",
      "",
      "Draws an estuary with channels, beds, depths and scars, and writes them as a survey folder"
          + " that 'assess' reads; or puts invented scars on beds of yours. The same seed and"
          + " options always make the same survey."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  meadowmark make-sample --output sample",
      "  meadowmark make-sample --seed 7 --scars 100000 --on-beds beds.gpkg#beds --output big"
    })
final class MakeSampleCommand implements Callable<Integer> {
  private static final String ON_BEDS = "--on-beds";

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Start of the random draws, a whole number. Default: ${DEFAULT-VALUE}.")
  private long seed;

  @Option(
      names = "--scars",
      paramLabel = "N",
      defaultValue = "3000",
      description = "Scars to make. Default: ${DEFAULT-VALUE}.")
  private int scars;

  @Option(
      names = ON_BEDS,
      paramLabel = "FILE[#LAYER]",
      converter = LayerPlace.class,
      description = "Beds to put the scars on, instead of an invented estuary.")
  private Place beds;

  @Option(
      names = "--crs",
      paramLabel = "CODE",
      description = "Reference system of those beds, where the file does not say it.")
  private String crs;

  @Mixin private OutputOptions output;
  @Mixin private MessageOptions messages;
  @Spec private CommandSpec spec;

  private final SampleGateway gateway;

  MakeSampleCommand(SampleGateway gateway) {
    this.gateway = gateway;
  }

  @Override
  public Integer call() {
    if (scars < 1) {
      throw new ParameterException(
          spec.commandLine(), "Invalid value for option '--scars': " + scars + " is less than 1");
    }
    String summary =
        gateway.make(
            new SampleGateway.Request(seed, scars, bedLayer(), output.folder(), output.overwrite()),
            messages.progress());
    spec.commandLine().getOut().println(summary.stripTrailing());
    messages.say("The survey is in " + output.folder());
    return ExitCode.OK.value();
  }

  private Optional<LayerSource> bedLayer() {
    if (beds == null) {
      if (crs != null) {
        throw new ParameterException(
            spec.commandLine(), "Option '--crs' is of use with '" + ON_BEDS + "' only");
      }
      return Optional.empty();
    }
    SurveyDraft draft = SurveyDraft.EMPTY.withPlaces(LayerRole.BEDS, List.of(beds));
    try {
      SurveyDraft complete = crs == null ? draft : draft.withCrs(LayerRole.BEDS, crs, "--crs");
      return Optional.of(complete.layers().get(0));
    } catch (MeadowmarkException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage(), e);
    }
  }
}
