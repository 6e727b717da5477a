package org.meadowmark.cli;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.function.Supplier;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.SurveyDraft;
import org.meadowmark.core.survey.SurveyDraft.Place;
import org.meadowmark.samples.EstuarySettings;
import org.meadowmark.samples.ScarSettings;
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
      "Draws an estuary with channels, beds, depths and scars, and writes a survey folder a season"
          + " that 'assess' reads, and a folder 'truth' with what was drawn; or puts invented scars"
          + " and channels on beds of yours. The same seed and options always make the same survey."
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
      description = "Start of the random draws, a whole number. Default: that of the sample.")
  private Long seed;

  @Option(
      names = "--scars",
      paramLabel = "N",
      description = "Scars to make. Default: as many as the sample has.")
  private Integer scars;

  @Option(
      names = "--beds",
      paramLabel = "N",
      description = "Beds of an invented estuary at most. Default: as many as the sample has.")
  private Integer beds;

  @Option(
      names = ON_BEDS,
      paramLabel = "FILE[#LAYER]",
      converter = LayerPlace.class,
      description = "Beds to put the scars on, instead of an invented estuary.")
  private Place onBeds;

  @Option(
      names = "--crs",
      paramLabel = "CODE",
      description = "Reference system of those beds, where the file does not say it.")
  private String crs;

  @Mixin private OutputOption output;
  @Mixin private MessageOptions messages;
  @Spec private CommandSpec spec;

  private final SampleGateway gateway;

  MakeSampleCommand(SampleGateway gateway) {
    this.gateway = gateway;
  }

  @Override
  public Integer call() {
    Supplier<String> work = onBeds == null ? estuary() : scarsOnBeds();
    spec.commandLine().getOut().println(work.get().stripTrailing());
    messages.say("The sample is in " + output.folder());
    return ExitCode.OK.value();
  }

  private Supplier<String> estuary() {
    if (crs != null) {
      throw usage("Option '--crs' is of use with '" + ON_BEDS + "' only", null);
    }
    EstuarySettings sample = EstuarySettings.SAMPLE;
    EstuarySettings settings =
        checked(
            () ->
                sample
                    .withSeed(seed == null ? sample.seed() : seed)
                    .withSize(
                        scars == null ? sample.scars() : scars,
                        beds == null ? sample.beds() : beds));
    return () ->
        withProgress(progress -> gateway.inventEstuary(settings, output.folder(), progress));
  }

  private Supplier<String> scarsOnBeds() {
    if (beds != null) {
      throw usage("Option '--beds' is of no use with '" + ON_BEDS + "'", null);
    }
    EstuarySettings sample = EstuarySettings.SAMPLE;
    ScarSettings settings =
        checked(
            () ->
                ScarSettings.of(
                    seed == null ? sample.seed() : seed, scars == null ? sample.scars() : scars));
    LayerSource layer = checked(this::bedLayer);
    return () ->
        withProgress(progress -> gateway.inventScars(settings, layer, output.folder(), progress));
  }

  private LayerSource bedLayer() {
    SurveyDraft draft = SurveyDraft.EMPTY.withPlaces(LayerRole.BEDS, List.of(onBeds));
    return (crs == null ? draft : draft.withCrs(LayerRole.BEDS, crs, "--crs")).layers().get(0);
  }

  private String withProgress(Function<Progress, String> work) {
    Progress progress = messages.progress();
    try {
      return work.apply(progress);
    } finally {
      progress.end();
    }
  }

  private <T> T checked(Supplier<T> make) {
    try {
      return make.get();
    } catch (IllegalArgumentException | MeadowmarkException e) {
      throw usage(e.getMessage(), e);
    }
  }

  private ParameterException usage(String message, Throwable cause) {
    return new ParameterException(spec.commandLine(), message, cause);
  }
}
